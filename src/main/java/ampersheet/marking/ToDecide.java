package ampersheet.marking;

import ampersheet.answer.AnswerKey;
import ampersheet.language.Language;
import ampersheet.language.Saying;
import ampersheet.render.LimitedMarkdown;
import ampersheet.sheet.Composer;
import ampersheet.sheet.Sheet;
import java.util.List;

/**
 * What nobody but the instructor can decide.
 *
 * @param maybe seats whose it may be, the nearest first; one where it is known
 * @param asked {@link Asked#NOTHING} where a whole hand-in is meant
 * @param typed what stands there; empty where a whole hand-in is meant
 * @param file as it is shown
 * @param why it is undecided, a sentence without its end
 * @param meanings what it may mean, or which decisions there are
 */
record ToDecide(
        List<Integer> maybe,
        String sheet,
        Asked asked,
        String typed,
        String file,
        int line,
        Saying why,
        List<Saying> meanings) {
    ToDecide {
        maybe = List.copyOf(maybe);
        meanings = List.copyOf(meanings);
    }

    /**
     * The question that is answered, so that nobody has to look for the sheet.
     *
     * @param question as the sheet calls it
     * @param template and step whose value it is, the same for every learner
     * @param words that ask for it, without marks of layout
     * @param right the right answer, as the key has it
     */
    record Asked(String question, String template, String step, String words, String right) {
        static final Asked NOTHING = new Asked("", "", "", "", "");

        static Asked of(Sheet sheet, AnswerKey key) {
            return sheet.problemWith(key.question())
                    .map(problem -> new Asked(
                            key.question(),
                            problem.template().name(),
                            key.step(),
                            LimitedMarkdown.plain(problem.prompt(key)),
                            Composer.answer(problem, key)))
                    .orElseGet(() -> new Asked(key.question(), "", key.step(), "", ""));
        }
    }

    /** Empty where a whole hand-in is meant. */
    String question() {
        return asked.question();
    }

    /** 0 where it is not known whose it is. */
    int seat() {
        return maybe.size() == 1 ? maybe.get(0) : 0;
    }

    String meaningsIn(Language language) {
        return language.either(meanings.stream().map(language::say).toList());
    }

    /** Without a line where the whole of a file is meant. */
    String told(Language language) {
        return file.isEmpty() || line == 0
                ? file
                : language.say("report.place", "file", file, "line", Integer.toString(line));
    }
}
