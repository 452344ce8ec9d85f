package ampersheet.page;

import ampersheet.language.Language;
import ampersheet.page.PracticeSet.Practised;
import ampersheet.page.PracticeSet.Skill;
import ampersheet.page.PracticeSet.Variant;
import ampersheet.problem.FaultyWorking;
import ampersheet.problem.Problem;
import ampersheet.render.Markup;
import ampersheet.render.Slots;
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
    private static final Delta FROM_NOTHING = new Delta("");

    private PracticePage() {}

    public static String render(PracticeSet practice) {
        Plan plan = practice.set().plan();
        return PageFrame.render(
                PageFrame.Spoken.of(plan),
                plan.language().say("page.practice.title", "title", plan.title()),
                "practice",
                body(practice),
                data(practice),
                PageFrame.Script.PRACTICE);
    }

    /** Names what a browser keeps of this set; another plan, template version or number of variants is another set. */
    static String name(PracticeSet practice) {
        SheetId id = practice.set().id(1);
        return id.set() + "-"
                + practice.skills().stream()
                        .mapToInt(skill -> skill.variants().size())
                        .sum();
    }

    private static String body(PracticeSet practice) {
        Language language = practice.set().plan().language();
        Markup page = new Markup();
        masthead(page, practice);
        skills(page, language);
        mistakes(page, language);
        page.open("main", "id", "desk", "hidden", "").newline();
        page.open(
                        "div",
                        "class",
                        "switch",
                        "id",
                        "facing",
                        "role",
                        "group",
                        "aria-label",
                        language.say("page.practice.show"))
                .newline();
        button(page, "show-example", language.say("page.practice.example"));
        button(page, "show-yours", language.say("page.practice.your-problem"));
        page.close("div").newline();
        example(page, language);
        yours(page, language);
        page.close("main").newline();
        keeping(page, language);
        lookUp(practice).write(page);
        page.open("footer").open("p", "class", "running").open("span");
        Slots.write(
                language.say("print.end", "title", Slots.mark(0)),
                page::text,
                () -> page.element("cite", practice.set().plan().title()));
        page.close("span").text(" ");
        page.element("span", language.say("page.practice.caution"));
        return page.close("p").close("footer").newline().toString();
    }

    private static void masthead(Markup page, PracticeSet practice) {
        Language language = practice.set().plan().language();
        page.open("a", "class", "skip", "id", "skip", "href", "#yours-title")
                .text(language.say("page.skip"))
                .close("a")
                .newline();
        page.open("header", "class", "masthead").newline();
        page.open("h1").line(practice.set().plan().title()).close("h1").newline();
        page.open("p", "class", "running")
                .open("span")
                .text(language.say("page.practice.practice"))
                .close("span")
                .text(" ");
        page.open("span");
        Slots.write(
                language.say("page.practice.set", "set", Slots.mark(0)),
                page::text,
                () -> page.element("b", name(practice)));
        page.close("span").close("p").newline();
        page.close("header").newline();
        page.element("p", language.say("page.practice.holds-keys"), "class", "notice")
                .newline();
        page.open("noscript")
                .element("p", language.say("page.practice.needs-script"))
                .close("noscript")
                .newline();
    }

    private static void skills(Markup page, Language language) {
        page.open("nav", "aria-label", language.say("page.practice.skills"), "hidden", "", "id", "skills")
                .newline();
        page.open("details").open("summary");
        Slots.write(
                language.say("page.practice.skills.with-tally", "tally", Slots.mark(0)),
                page::text,
                () -> page.element("span", "", "id", "tally"));
        page.close("summary").newline();
        page.open("div", "id", "skill-map")
                .open("ol", "id", "skill-list")
                .close("ol")
                .close("div")
                .newline();
        page.element("p", language.say("page.practice.map"), "class", "lead");
        page.close("details");
        LookUpDialog.button(page, "above", language);
        page.close("nav").newline();
    }

    private static void mistakes(Markup page, Language language) {
        page.open("details", "id", "mistakes-shown", "hidden", "").open("summary");
        Slots.write(
                language.say("page.practice.mistakes", "counted", Slots.mark(0)),
                page::text,
                () -> page.element("span", "", "id", "mistakes-counted"));
        page.close("summary").newline();
        page.open("ul", "id", "mistakes").close("ul");
        page.open("p", "id", "sureness", "class", "lead")
                .close("p")
                .close("details")
                .newline();
    }

    private static void example(Markup page, Language language) {
        page.open("section", "class", "example", "id", "example", "aria-labelledby", "example-title")
                .newline();
        page.element("p", "", "id", "led", "class", "told", "hidden", "").newline();
        page.open("h2", "id", "example-title", "tabindex", "-1")
                .text(language.say("page.practice.example"))
                .close("h2")
                .newline();
        page.element("p", language.say("page.practice.example.read"), "class", "lead")
                .newline();
        page.open("div", "id", "example-body").close("div").newline();
        page.open("div", "class", "buttons switch").newline();
        button(page, "to-yours", language.say("page.practice.example.to-yours"));
        page.close("div").newline();
        page.close("section").newline();
    }

    private static void yours(Markup page, Language language) {
        page.open("section", "class", "yours", "id", "yours", "aria-labelledby", "yours-title")
                .newline();
        page.open("h2", "id", "yours-title", "tabindex", "-1").close("h2").newline();
        page.open("p", "class", "running").element("span", "", "id", "tags").text(" ");
        page.element("span", "", "id", "row").close("p").newline();
        page.open("div", "id", "setting").close("div").newline();
        page.open("form", "id", "answers", "novalidate", "", "aria-labelledby", "answers-title")
                .newline();
        page.element("h3", language.say("page.practice.answers"), "id", "answers-title")
                .newline();
        page.open("div", "id", "places").close("div").newline();
        page.open("p", "id", "verdict", "role", "status").close("p").newline();
        page.open("fieldset", "id", "sure")
                .element("legend", language.say("page.practice.sure"))
                .newline();
        page.open("label")
                .single("input", "type", "radio", "name", "sure", "value", "sure")
                .text(" ")
                .element("span", language.say("page.practice.sure.sure"))
                .close("label");
        page.open("label")
                .single("input", "type", "radio", "name", "sure", "value", "unsure")
                .text(" ")
                .element("span", language.say("page.practice.sure.unsure"))
                .close("label")
                .newline();
        page.close("fieldset").newline();
        page.open("div", "class", "buttons").newline();
        page.element("button", language.say("page.practice.check"), "type", "submit", "class", "main")
                .newline();
        button(page, "hint", language.say("page.practice.hint"));
        button(page, "solve", language.say("page.practice.solution"));
        LookUpDialog.button(page, "below", language);
        page.close("div").newline();
        askedForSolution(page, language);
        page.close("form").newline();
        aside(page, language);
        page.open("div", "id", "hints", "role", "log").close("div").newline();
        page.open("section", "id", "solution", "hidden", "", "aria-labelledby", "solution-title")
                .newline();
        page.open("h3", "id", "solution-title", "tabindex", "-1")
                .text(language.say("page.practice.solution"))
                .close("h3")
                .newline();
        page.open("div", "id", "solution-body").close("div").close("section").newline();
        page.open("div", "class", "buttons onward").newline();
        button(page, "onward", language.say("page.practice.next"));
        button(page, "another", language.say("page.practice.another"));
        button(page, "later", language.say("page.practice.later"));
        button(page, "find-faulty", language.say("page.practice.find-faulty"));
        page.close("div").newline();
        calculator(page, language);
        page.close("section").newline();
    }

    /** Whether the solution is really wanted, which ends the problem. */
    private static void askedForSolution(Markup page, Language language) {
        page.open("div", "id", "solve-asked", "hidden", "", "role", "group", "aria-labelledby", "solve-question")
                .newline();
        page.element("p", language.say("page.practice.solution.asked"), "id", "solve-question")
                .newline();
        page.open("div", "class", "buttons").newline();
        button(page, "solve-yes", language.say("page.practice.solution.yes"));
        button(page, "solve-no", language.say("page.practice.solution.no"));
        page.close("div").close("div").newline();
    }

    /** The question beside a problem. */
    private static void aside(Markup page, Language language) {
        page.open("section", "id", "aside", "class", "aside", "hidden", "", "aria-labelledby", "aside-title")
                .newline();
        page.element("h3", language.say("page.practice.aside"), "id", "aside-title", "tabindex", "-1")
                .newline();
        page.element("p", "", "id", "aside-text");
        page.open("div", "class", "buttons", "id", "aside-choices", "role", "group", "aria-labelledby", "aside-text")
                .close("div")
                .newline();
        page.open("div", "id", "aside-said", "role", "status").close("div").newline();
        page.open("p", "class", "lead").text(language.say("page.practice.aside.counts-not") + " ");
        page.element("button", language.say("page.practice.aside.no-more"), "type", "button", "id", "aside-off")
                .close("p");
        page.close("section").newline();
    }

    private static void calculator(Markup page, Language language) {
        page.open("details", "id", "calculator")
                .element("summary", language.say("page.practice.calculator"))
                .newline();
        page.open("p").element("label", language.say("page.practice.calculator.line") + " ", "for", "calculated");
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
        page.element("p", language.say("page.practice.calculator.reads"), "class", "lead");
        page.close("details").newline();
    }

    /** Rules only in general form: the formula of a line at hand is a hint, and counted as one. */
    private static LookUpDialog lookUp(PracticeSet practice) {
        Plan plan = practice.set().plan();
        List<String> rules = new ArrayList<>();
        StringBuilder words = new StringBuilder();
        for (Skill skill : practice.skills()) {
            for (Practised practised : skill.templates()) {
                practised
                        .template()
                        .lines()
                        .forEach(line -> rules.add(plan.language().name(line.principle())));
                words.append(text(practised.example(), practice.set(), true, Optional.empty()));
            }
        }
        return new LookUpDialog(
                List.of(),
                LookUpTables.atHand(practice.set().templates(), plan.decimal(), plan.language()),
                WordList.rules(plan.language()).among(rules),
                WordList.words(plan.language()).in(LookUpDialog.wordsOf(words.toString())),
                plan.language(),
                plan.decimal());
    }

    private static void keeping(Markup page, Language language) {
        page.open("section", "class", "keeping", "aria-labelledby", "keeping-title", "hidden", "", "id", "keeping")
                .newline();
        page.open("h2", "id", "keeping-title")
                .text(language.say("page.practice.keeping"))
                .close("h2")
                .newline();
        support(page, language);
        asides(page, language);
        page.element("p", "", "id", "kept").newline();
        page.open("div", "class", "buttons").newline();
        button(page, "export", language.say("page.practice.save"));
        page.open("label", "class", "file").text(language.say("page.practice.load") + " ");
        page.single("input", "id", "import", "type", "file", "accept", ".txt,text/plain")
                .close("label")
                .newline();
        button(page, "clear", language.say("page.practice.erase"));
        page.close("div").newline();
        page.open("details", "id", "carried");
        page.element("summary", language.say("page.practice.text")).newline();
        page.open("p")
                .element("label", language.say("page.practice.text.copy"), "for", "record")
                .close("p");
        page.open("textarea", "id", "record", "rows", "8", "readonly", "", "spellcheck", "false")
                .close("textarea")
                .newline();
        page.open("p")
                .element("label", language.say("page.practice.text.paste"), "for", "pasted")
                .close("p");
        page.open("textarea", "id", "pasted", "rows", "4", "spellcheck", "false")
                .close("textarea")
                .newline();
        page.open("div", "class", "buttons");
        button(page, "take-over", language.say("page.practice.text.take"));
        page.close("div").close("details").newline();
        page.open("p", "id", "kept-said", "role", "status")
                .close("p")
                .close("section")
                .newline();
    }

    private static void support(Markup page, Language language) {
        page.open("p")
                .open("label", "for", "support")
                .text(language.say("page.practice.support") + " ")
                .close("label");
        page.open("select", "id", "support", "aria-describedby", "support-taken");
        for (String[] choice : new String[][] {
            {"auto", language.say("page.practice.support.auto")},
            {"full", language.say("page.practice.support.full")},
            {"faded", language.say("page.practice.support.faded")},
            {"bare", language.say("page.practice.support.bare")}
        }) {
            page.element("option", choice[1], "value", choice[0]);
        }
        page.close("select").close("p").newline();
        page.element("p", language.say("page.practice.support.by-keys"), "id", "support-taken", "class", "lead")
                .newline();
    }

    private static void asides(Markup page, Language language) {
        page.open("p").open("label", "class", "ticked").single("input", "type", "checkbox", "id", "aside-on");
        page.element("span", language.say("page.practice.aside.wanted"))
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
        Language language = set.plan().language();
        List<String> examples = new ArrayList<>();
        json.writeStartObject();
        json.writeStringField("name", language.name(skill.name()));
        json.writeArrayFieldStart("templates");
        for (Practised practised : skill.templates()) {
            ProblemTemplate template = practised.template();
            String text = text(practised.example(), set, true, Optional.empty());
            examples.add(text);
            json.writeStartObject();
            json.writeStringField("title", template.title());
            json.writeStringField(
                    "tags",
                    language.name(skill.name()) + " · "
                            + language.name(template.family().replace('-', ' ')) + " · "
                            + language.say("sheet.problem.level", "level", Integer.toString(template.level())));
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
