package ampersheet.page;

import ampersheet.page.PracticeSet.Practised;
import ampersheet.page.PracticeSet.Skill;
import ampersheet.page.PracticeSet.Variant;
import ampersheet.problem.FaultyWorking;
import ampersheet.problem.Problem;
import ampersheet.render.Markup;
import ampersheet.sheet.LookUpTables;
import ampersheet.sheet.Plan;
import ampersheet.sheet.ProblemSet;
import ampersheet.sheet.SheetId;
import ampersheet.template.ProblemTemplate;
import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

/** A practice set as one file: it holds its keys, and says so. */
public final class PracticePage {
    private static final String HOLDS_KEYS =
            "This page holds the answers to its own problems, so that it can check yours. They "
                    + "are on no sheet that is handed in. It works without a network, and nothing you type leaves "
                    + "this device.";

    private static final Delta FROM_NOTHING = new Delta("");

    private PracticePage() {}

    public static String render(PracticeSet practice) {
        Plan plan = practice.set().plan();
        return PageFrame.render(
                plan.language(),
                "Practice: " + plan.title(),
                "practice",
                body(practice),
                data(practice),
                "practice.js");
    }

    /** Names what a browser keeps of this set; another plan, template version or number of variants is another set. */
    static String name(PracticeSet practice) {
        SheetId id = practice.set().id(1);
        return id.plan() + id.templates() + "-"
                + practice.skills().stream()
                        .mapToInt(skill -> skill.variants().size())
                        .sum();
    }

    private static String body(PracticeSet practice) {
        Markup page = new Markup();
        masthead(page, practice);
        skills(page);
        mistakes(page);
        page.open("main", "id", "desk", "hidden", "").newline();
        page.open("div", "class", "switch", "id", "facing", "role", "group", "aria-label", "Show")
                .newline();
        button(page, "show-example", "Worked example");
        button(page, "show-yours", "Your problem");
        page.close("div").newline();
        example(page);
        yours(page);
        page.close("main").newline();
        keeping(page);
        lookUp(practice).write(page);
        page.open("footer").open("p", "class", "running").open("span").text("End of ");
        page.element("cite", practice.set().plan().title()).close("span").text(" ");
        page.element("span", "Extra-low voltage only. Local codes and licensed practice come before any sheet.");
        return page.close("p").close("footer").newline().toString();
    }

    private static void masthead(Markup page, PracticeSet practice) {
        page.open("a", "class", "skip", "id", "skip", "href", "#yours-title")
                .text("To the problem")
                .close("a")
                .newline();
        page.open("header", "class", "masthead").newline();
        page.open("h1").line(practice.set().plan().title()).close("h1").newline();
        page.open("p", "class", "running")
                .open("span")
                .text("Practice")
                .close("span")
                .text(" ");
        page.open("span")
                .text("Set ")
                .element("b", name(practice))
                .close("span")
                .close("p")
                .newline();
        page.close("header").newline();
        page.element("p", HOLDS_KEYS, "class", "notice").newline();
        page.open("noscript")
                .element(
                        "p",
                        "This page needs its script to show problems and to check answers; scripts are switched "
                                + "off here.")
                .close("noscript")
                .newline();
    }

    private static void skills(Markup page) {
        page.open("nav", "aria-label", "Skills", "hidden", "", "id", "skills").newline();
        page.open("details")
                .open("summary")
                .text("Skills: ")
                .element("span", "", "id", "tally")
                .close("summary")
                .newline();
        page.open("div", "id", "skill-map")
                .open("ol", "id", "skill-list")
                .close("ol")
                .close("div")
                .newline();
        page.element(
                "p",
                "The lines show what builds on what. Skills come mixed, because that is how they stay; each comes"
                        + " back after some days.",
                "class",
                "lead");
        page.close("details");
        LookUpDialog.button(page, "above");
        page.close("nav").newline();
    }

    private static void mistakes(Markup page) {
        page.open("details", "id", "mistakes-shown", "hidden", "")
                .open("summary")
                .text("Your mistakes: ");
        page.element("span", "", "id", "mistakes-counted").close("summary").newline();
        page.open("ul", "id", "mistakes").close("ul");
        page.open("p", "id", "sureness", "class", "lead")
                .close("p")
                .close("details")
                .newline();
    }

    private static void example(Markup page) {
        page.open("section", "class", "example", "id", "example", "aria-labelledby", "example-title")
                .newline();
        page.element("p", "", "id", "led", "class", "told", "hidden", "").newline();
        page.open("h2", "id", "example-title", "tabindex", "-1")
                .text("Worked example")
                .close("h2")
                .newline();
        page.element(
                        "p",
                        "A twin of your problem with other numbers. Read it line by line and say to yourself why "
                                + "each line holds.",
                        "class",
                        "lead")
                .newline();
        page.open("div", "id", "example-body").close("div").newline();
        page.open("div", "class", "buttons switch").newline();
        button(page, "to-yours", "To your problem");
        page.close("div").newline();
        page.close("section").newline();
    }

    private static void yours(Markup page) {
        page.open("section", "class", "yours", "id", "yours", "aria-labelledby", "yours-title")
                .newline();
        page.open("h2", "id", "yours-title", "tabindex", "-1").close("h2").newline();
        page.open("p", "class", "running").element("span", "", "id", "tags").text(" ");
        page.element("span", "", "id", "row").close("p").newline();
        page.open("div", "id", "setting").close("div").newline();
        page.open("form", "id", "answers", "novalidate", "", "aria-labelledby", "answers-title")
                .newline();
        page.element("h3", "Your answers", "id", "answers-title").newline();
        page.open("div", "id", "places").close("div").newline();
        page.open("p", "id", "verdict", "role", "status").close("p").newline();
        page.open("fieldset", "id", "sure")
                .element("legend", "Before you check: are you sure?")
                .newline();
        page.open("label")
                .single("input", "type", "radio", "name", "sure", "value", "sure")
                .text(" ")
                .element("span", "sure")
                .close("label");
        page.open("label")
                .single("input", "type", "radio", "name", "sure", "value", "unsure")
                .text(" ")
                .element("span", "not sure")
                .close("label")
                .newline();
        page.close("fieldset").newline();
        page.open("div", "class", "buttons").newline();
        page.element("button", "Check", "type", "submit", "class", "main").newline();
        button(page, "hint", "Next hint");
        button(page, "solve", "Worked solution");
        LookUpDialog.button(page, "below");
        page.close("div").newline();
        askedForSolution(page);
        page.close("form").newline();
        aside(page);
        page.open("div", "id", "hints", "role", "log").close("div").newline();
        page.open("section", "id", "solution", "hidden", "", "aria-labelledby", "solution-title")
                .newline();
        page.open("h3", "id", "solution-title", "tabindex", "-1")
                .text("Worked solution")
                .close("h3")
                .newline();
        page.open("div", "id", "solution-body").close("div").close("section").newline();
        page.open("div", "class", "buttons onward").newline();
        button(page, "onward", "Next problem");
        button(page, "another", "Another one like this");
        button(page, "later", "Leave it open, go on");
        button(page, "find-faulty", "Find the faulty line");
        page.close("div").newline();
        calculator(page);
        page.close("section").newline();
    }

    /** Whether the solution is really wanted, which ends the problem. */
    private static void askedForSolution(Markup page) {
        page.open("div", "id", "solve-asked", "hidden", "", "role", "group", "aria-labelledby", "solve-question")
                .newline();
        page.element(
                        "p",
                        "Once you see the solution, this problem counts as not done. A hint goes on from where you are."
                                + " Show the solution?",
                        "id",
                        "solve-question")
                .newline();
        page.open("div", "class", "buttons").newline();
        button(page, "solve-yes", "Show it");
        button(page, "solve-no", "Not yet");
        page.close("div").close("div").newline();
    }

    /** The question beside a problem. */
    private static void aside(Markup page) {
        page.open("section", "id", "aside", "class", "aside", "hidden", "", "aria-labelledby", "aside-title")
                .newline();
        page.element("h3", "Extra question", "id", "aside-title", "tabindex", "-1")
                .newline();
        page.element("p", "", "id", "aside-text");
        page.open("div", "class", "buttons", "id", "aside-choices", "role", "group", "aria-labelledby", "aside-text")
                .close("div")
                .newline();
        page.open("div", "id", "aside-said", "role", "status").close("div").newline();
        page.open("p", "class", "lead").text("It counts neither for nor against you. ");
        page.element("button", "No more extra questions", "type", "button", "id", "aside-off")
                .close("p");
        page.close("section").newline();
    }

    private static void calculator(Markup page) {
        page.open("details", "id", "calculator")
                .element("summary", "Calculator with units")
                .newline();
        page.open("p").element("label", "A line such as (12 V - 2.1 V) / 15 mA ", "for", "calculated");
        page.single(
                        "input",
                        "id",
                        "calculated",
                        "type",
                        "text",
                        "autocomplete",
                        "off",
                        "autocapitalize",
                        "off",
                        "autocorrect",
                        "off",
                        "spellcheck",
                        "false",
                        "aria-describedby",
                        "calculation")
                .close("p")
                .newline();
        page.element("p", "", "id", "calculation", "role", "status").newline();
        page.element(
                "p",
                "It reads + - * / ^, parentheses, sqrt(…), and || for resistors side by side. Such a line may also stand"
                        + " in the place of an answer: it is worked and checked, with its units. To type Ω, µ or °"
                        + " write ohm, u or deg.",
                "class",
                "lead");
        page.close("details").newline();
    }

    /** Rules only in general form: the formula of a line at hand is a hint, and counted as one. */
    private static LookUpDialog lookUp(PracticeSet practice) {
        Plan plan = practice.set().plan();
        List<String> rules = new ArrayList<>();
        StringBuilder words = new StringBuilder();
        for (Skill skill : practice.skills()) {
            for (Practised practised : skill.templates()) {
                practised.template().lines().forEach(line -> rules.add(line.principle()));
                words.append(text(practised.example(), practice.set(), true, Optional.empty()));
            }
        }
        return new LookUpDialog(
                List.of(),
                LookUpTables.atHand(practice.set().templates(), plan.decimal(), plan.language()),
                LookUpDialog.RULES.among(rules),
                LookUpDialog.WORDS.in(LookUpDialog.wordsOf(words.toString())),
                plan.language(),
                plan.decimal());
    }

    private static void keeping(Markup page) {
        page.open("section", "class", "keeping", "aria-labelledby", "keeping-title", "hidden", "", "id", "keeping")
                .newline();
        page.open("h2", "id", "keeping-title")
                .text("Support and progress")
                .close("h2")
                .newline();
        support(page);
        asides(page);
        page.element("p", "", "id", "kept").newline();
        page.open("div", "class", "buttons").newline();
        button(page, "export", "Save progress as a file");
        page.open("label", "class", "file").text("Load a saved file ");
        page.single("input", "id", "import", "type", "file", "accept", ".txt,text/plain")
                .close("label")
                .newline();
        button(page, "clear", "Erase everything in this browser");
        page.close("div").newline();
        page.open("details", "id", "carried");
        page.element("summary", "Progress as text, to read or to carry to another device")
                .newline();
        page.open("p")
                .element("label", "What you did so far; copy it all.", "for", "record")
                .close("p");
        page.open("textarea", "id", "record", "rows", "8", "readonly", "", "spellcheck", "false")
                .close("textarea")
                .newline();
        page.open("p")
                .element(
                        "label",
                        "Paste here what you copied on the other device; nothing of either is lost.",
                        "for",
                        "pasted")
                .close("p");
        page.open("textarea", "id", "pasted", "rows", "4", "spellcheck", "false")
                .close("textarea")
                .newline();
        page.open("div", "class", "buttons");
        button(page, "take-over", "Take it over");
        page.close("div").close("details").newline();
        page.open("p", "id", "kept-said", "role", "status")
                .close("p")
                .close("section")
                .newline();
    }

    private static void support(Markup page) {
        page.open("p")
                .open("label", "for", "support")
                .text("How much of the working is shown ")
                .close("label");
        page.open("select", "id", "support", "aria-describedby", "support-taken");
        for (String[] choice : new String[][] {
            {"auto", "as it goes: less with every right answer, more after a slip"},
            {"full", "full: the example beside a place for every step"},
            {"faded", "faded: some steps are worked"},
            {"bare", "bare: the question only"}
        }) {
            page.element("option", choice[1], "value", choice[0]);
        }
        page.close("select").close("p").newline();
        page.element("p", "By keys: Enter takes the choice.", "id", "support-taken", "class", "lead")
                .newline();
    }

    private static void asides(Markup page) {
        page.open("p").open("label", "class", "ticked").single("input", "type", "checkbox", "id", "aside-on");
        page.element("span", "extra questions: which rule gives a line, and which way a value goes")
                .close("label")
                .close("p")
                .newline();
    }

    private static void button(Markup page, String id, String text) {
        page.element("button", text, "type", "button", "id", id).newline();
    }

    private static String data(PracticeSet practice) {
        return Json.write(json -> {
            json.writeStartObject();
            json.writeStringField("set", name(practice));
            json.writeStringField("course", practice.course(name(practice)).write());
            json.writeArrayFieldStart("skills");
            for (Skill skill : practice.skills()) {
                skill(skill, practice.set(), json);
            }
            json.writeEndArray();
            json.writeEndObject();
        });
    }

    private static void skill(Skill skill, ProblemSet set, JsonGenerator json) throws IOException {
        List<String> examples = new ArrayList<>();
        json.writeStartObject();
        json.writeStringField("name", skill.name());
        json.writeArrayFieldStart("templates");
        for (Practised practised : skill.templates()) {
            ProblemTemplate template = practised.template();
            String text = text(practised.example(), set, true, Optional.empty());
            examples.add(text);
            json.writeStartObject();
            json.writeStringField("title", template.title());
            json.writeStringField(
                    "tags",
                    skill.name() + " · " + template.family().replace('-', ' ') + " · level " + template.level());
            json.writeFieldName("example");
            FROM_NOTHING.write(text, json);
            json.writeEndObject();
        }
        json.writeEndArray();
        json.writeArrayFieldStart("variants");
        // A variant shares most with another of its template: the first is told by the example, the others by both.
        Map<Integer, Delta> bases = new TreeMap<>();
        int number = 0;
        for (Variant variant : skill.variants()) {
            Optional<FaultyWorking> faulty = Optional.ofNullable(skill.faulty().get(number++));
            String text = text(variant.problem(), set, false, faulty);
            String example = examples.get(variant.template());
            json.writeStartObject();
            json.writeNumberField("template", variant.template());
            json.writeFieldName("told");
            bases.getOrDefault(variant.template(), new Delta(example)).write(text, json);
            json.writeEndObject();
            bases.putIfAbsent(variant.template(), new Delta(example + text));
        }
        json.writeEndArray();
        json.writeEndObject();
    }

    private static String text(Problem problem, ProblemSet set, boolean example, Optional<FaultyWorking> faulty) {
        return Json.write(json -> new PracticeProblem(problem, set.plan(), example, faulty).write(json));
    }
}
