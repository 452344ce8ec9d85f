package ampersheet.render.html;

import ampersheet.sheet.Document.Question;

/** Where a learner answers: on paper or in a page. */
interface Places {
    /**
     * A place for one value.
     *
     * @param id unique on the page
     * @param label name of the question
     * @param symbol markup of {@code R =}, or nothing
     * @param meaning what is to be found, where it does not stand beside the place; may be empty
     * @param hint the unit, where it is printed behind the place; may be empty
     */
    void place(String id, String label, String symbol, String meaning, String hint);

    /** Prompt and options of a question that is answered by choosing one. */
    void options(Question question, String id);
}
