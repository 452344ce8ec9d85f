package ampersheet.page;

import ampersheet.answer.Acceptance;
import ampersheet.answer.AnswerKey;
import ampersheet.language.Language;
import ampersheet.quantity.Dimension;
import ampersheet.render.Markup;
import ampersheet.render.Slots;
import ampersheet.render.html.Fragment;
import ampersheet.sheet.Composer;
import ampersheet.sheet.Document;
import ampersheet.sheet.Document.Block;
import ampersheet.sheet.Document.PreferredValues;
import ampersheet.sheet.Document.ProblemBlock;
import ampersheet.sheet.Document.StepBlock;
import ampersheet.sheet.Document.Steps;
import ampersheet.sheet.LookUpTables;
import ampersheet.sheet.Plan;
import ampersheet.sheet.Sheet;
import ampersheet.sheet.SheetProblem;
import ampersheet.template.ProblemTemplate;
import java.util.List;

/**
 * A learner's sheet to answer in: it reads answers back, keeps drafts in the browser and saves a file for marking. Of
 * what is expected it knows only the unit of each question, to read 4.7 K as a temperature or as thousands; it cannot
 * judge.
 */
public final class HomeworkPage {
    private HomeworkPage() {}

    /** @param learner printed in the heading; may be empty */
    public static String render(Sheet sheet, String learner) {
        Document document = Composer.sheet(sheet, learner);
        return PageFrame.render(
                PageFrame.Spoken.of(sheet.plan()),
                document.title() + " · " + document.sheetId(),
                "sheet homework",
                body(sheet, document),
                data(sheet),
                PageFrame.Script.HOMEWORK);
    }

    private static String body(Sheet sheet, Document document) {
        List<Block> blocks = document.blocks();
        int first = 0;
        while (first < blocks.size() && !(blocks.get(first) instanceof ProblemBlock)) {
            first++;
        }
        Markup page = new Markup();
        masthead(page, document);
        List<Block> problems = blocks.subList(first, blocks.size());
        String markup = Fragment.of(document.holding(problems), "", 1);
        List<Block> instructors = Composer.atTheHead(sheet.plan());
        if (!instructors.isEmpty()) {
            page.trusted(Fragment.of(instructors, document.language(), "said-", 1));
        }
        lookUp(sheet, blocks.subList(instructors.size(), first), problems, markup)
                .write(page);
        list(page, sheet);
        page.open("main").newline();
        page.open("form", "id", "answers", "novalidate", "").newline();
        page.trusted(markup).close("form").newline();
        turning(page, document.language());
        handingIn(page, document.language());
        page.close("main").newline();
        footer(page, document);
        return page.toString();
    }

    private static void masthead(Markup page, Document document) {
        Language language = document.language();
        page.open("a", "class", "skip", "id", "skip", "href", "#problem-1")
                .text(language.say("page.skip"))
                .close("a")
                .newline();
        page.open("header", "class", "masthead").newline();
        page.trusted(Fragment.logo(document));
        page.open("h1").line(document.title()).close("h1").newline();
        page.open("p", "class", "running")
                .open("span", "class", "reader")
                .line(document.subtitle())
                .close("span")
                .text(" ");
        sheetId(page, document);
        page.close("p").close("header").newline();
        page.element("p", language.say("page.homework.notice"), "class", "notice")
                .newline();
        page.open("noscript")
                .element("p", language.say("page.homework.needs-script"))
                .close("noscript")
                .newline();
    }

    private static void sheetId(Markup page, Document document) {
        page.open("span", "class", "sheet-id");
        Slots.write(
                document.language().say("print.sheet", "sheet", Slots.mark(0)),
                page::text,
                () -> page.open("b").line(document.sheetId()).close("b"));
        page.close("span");
    }

    private static void footer(Markup page, Document document) {
        page.open("footer").open("p", "class", "running").open("span");
        Slots.write(
                document.language().say("print.end", "title", Slots.mark(0)),
                page::text,
                () -> page.open("cite").line(document.title()).close("cite"));
        page.close("span").text(" ");
        sheetId(page, document);
        page.close("p").close("footer").newline();
    }

    /** Rules only where the sheet itself shows some, in lines that are worked. */
    private static LookUpDialog lookUp(Sheet sheet, List<Block> head, List<Block> problems, String markup) {
        Plan plan = sheet.plan();
        List<Block> how = head.stream()
                .filter(block -> !(block instanceof PreferredValues))
                .toList();
        List<ProblemTemplate> preferring = head.size() == how.size()
                ? List.of()
                : sheet.problems().stream().map(SheetProblem::template).toList();
        List<Block> tables = LookUpTables.atHand(preferring, plan.decimal(), plan.language()).stream()
                .filter(PreferredValues.class::isInstance)
                .toList();
        return new LookUpDialog(
                how,
                tables,
                WordList.rules(plan.language()).among(rules(problems)),
                WordList.words(plan.language()).in(LookUpDialog.wordsOf(markup)),
                plan.language(),
                plan.decimal());
    }

    private static List<String> rules(List<Block> problems) {
        return problems.stream()
                .filter(ProblemBlock.class::isInstance)
                .flatMap(problem -> ((ProblemBlock) problem).blocks().stream())
                .filter(Steps.class::isInstance)
                .flatMap(steps -> ((Steps) steps).steps().stream())
                .filter(step -> step.result().isPresent())
                .map(StepBlock::principle)
                .toList();
    }

    /** All problems with how far each is; without the script, where they are. */
    private static void list(Markup page, Sheet sheet) {
        Language language = sheet.plan().language();
        page.open("nav", "id", "problems", "aria-label", language.say("page.homework.problems"))
                .open("details", "open", "");
        page.open("summary")
                .open("span", "id", "progress")
                .text(language.say("page.homework.problems.of-sheet"))
                .close("span")
                .close("summary")
                .newline();
        page.open("ol").newline();
        for (SheetProblem problem : sheet.problems()) {
            page.open("li").open("a", "href", "#problem-" + problem.number());
            page.open("b").text(Integer.toString(problem.number())).close("b").text(" ");
            page.line(problem.template().title()).close("a").text(" ");
            page.element("span", problem.places().isEmpty() ? language.say("page.homework.to-be-read") : "")
                    .close("li")
                    .newline();
        }
        page.close("ol").newline();
        page.close("details");
        LookUpDialog.button(page, "above", language);
        page.close("nav").newline();
    }

    /** To the problem before and the next one, where the one at hand ends. */
    private static void turning(Markup page, Language language) {
        page.open(
                        "nav",
                        "id",
                        "turn",
                        "class",
                        "buttons",
                        "aria-label",
                        language.say("page.homework.before-and-after"),
                        "hidden",
                        "")
                .newline();
        page.element("a", "", "id", "before", "href", "#").newline();
        page.element("a", "", "id", "next", "href", "#").newline();
        LookUpDialog.button(page, "below", language);
        page.close("nav").newline();
    }

    private static void handingIn(Markup page, Language language) {
        page.open("section", "class", "keeping", "aria-labelledby", "keeping-title", "hidden", "", "id", "keeping")
                .newline();
        page.element("h2", language.say("page.homework.handing-in"), "id", "keeping-title", "tabindex", "-1")
                .newline();
        page.open("p")
                .element("strong", "", "id", "tally")
                .text(" ")
                .element("span", "", "id", "kept")
                .close("p")
                .newline();
        page.open("ul", "id", "open-places").close("ul").newline();
        page.open("div", "class", "buttons").newline();
        page.element("button", language.say("page.homework.save"), "type", "button", "class", "main", "id", "save")
                .newline();
        page.element("button", language.say("page.homework.share"), "type", "button", "id", "share", "hidden", "")
                .newline();
        page.element("button", language.say("page.homework.copy"), "type", "button", "id", "copy")
                .newline();
        page.element("button", language.say("page.homework.clear"), "type", "button", "id", "clear")
                .newline();
        page.close("div").newline();
        page.open("p", "id", "kept-said", "role", "status").close("p").newline();
        page.element("p", language.say("page.homework.reaches")).newline();
        page.open("details")
                .element("summary", language.say("page.homework.as-text"))
                .newline();
        page.element("label", language.say("page.homework.file"), "for", "file-text")
                .newline();
        page.open("textarea", "id", "file-text", "readonly", "", "rows", "8", "spellcheck", "false")
                .close("textarea");
        page.close("details").close("section").newline();
        page.open("p", "class", "unseen", "id", "read-back", "role", "status")
                .close("p")
                .newline();
    }

    private static String data(Sheet sheet) {
        return Json.write(json -> {
            json.writeStartObject();
            json.writeStringField("sheet", sheet.id().toString());
            json.writeObjectFieldStart("units");
            for (AnswerKey place : sheet.places()) {
                if (!(place.acceptance() instanceof Acceptance.Choice)) {
                    json.writeStringField(
                            place.question(),
                            place.unit().symbol().isEmpty() ? "1" : place.unit().symbol());
                }
            }
            json.writeEndObject();
            json.writeArrayFieldStart("bare");
            for (AnswerKey place : sheet.places()) {
                boolean choice = place.acceptance() instanceof Acceptance.Choice;
                if (!choice && (place.unitPrinted() || place.unit().dimension().equals(Dimension.ONE))) {
                    json.writeString(place.question());
                }
            }
            json.writeEndArray();
            json.writeEndObject();
        });
    }
}
