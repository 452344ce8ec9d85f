package ampersheet.render.pdf;

import ampersheet.figure.Figure;
import ampersheet.formula.MathMl;
import ampersheet.language.Language;
import ampersheet.render.GivensWithFigures;
import ampersheet.render.Markup;
import ampersheet.render.ProseMarkup;
import ampersheet.render.Slots;
import ampersheet.render.Wording;
import ampersheet.sheet.Document;
import ampersheet.sheet.Document.Assumption;
import ampersheet.sheet.Document.Assumptions;
import ampersheet.sheet.Document.Block;
import ampersheet.sheet.Document.BlockVisitor;
import ampersheet.sheet.Document.Caution;
import ampersheet.sheet.Document.FigureBlock;
import ampersheet.sheet.Document.GivenLine;
import ampersheet.sheet.Document.Givens;
import ampersheet.sheet.Document.Heading;
import ampersheet.sheet.Document.KeyTable;
import ampersheet.sheet.Document.Listing;
import ampersheet.sheet.Document.LogoBlock;
import ampersheet.sheet.Document.PreferredValues;
import ampersheet.sheet.Document.ProblemBlock;
import ampersheet.sheet.Document.Prose;
import ampersheet.sheet.Document.Question;
import ampersheet.sheet.Document.ReferenceTable;
import ampersheet.sheet.Document.Steps;
import ampersheet.sheet.Document.Table;
import java.util.ArrayList;
import java.util.List;

/** A document as the XHTML that is laid out for paper. Nothing in it refers to anything outside. */
final class PrintMarkup implements BlockVisitor {
    /** Prefix of the ids by which a problem's place on the pages is found. */
    static final String PROBLEM_ID = "problem-";
    /** Class of what comes before a problem's questions: the words and the figure. */
    static final String OPENING = "opening";

    /** Attribute of the paragraph of a caution: its heading. */
    static final String CAUTION = "data-caution";

    private final Document document;
    private final Language language;
    private final Profile profile;
    private final Markup markup = new Markup();
    private final MathBoxes math = new MathBoxes(markup);
    private final PrintSteps working;
    private final PrintTables tables;
    private final List<OnPaper> drawings = new ArrayList<>();
    private int headingLevel = 2;
    /** Whether what is being written stands in a column. */
    private boolean narrow;

    /** Markup, and the drawings that it refers to by their number. */
    record Print(String xhtml, List<OnPaper> drawings) {
        Print {
            drawings = List.copyOf(drawings);
        }

        /** All that is to be set, markup included. */
        String letters() {
            StringBuilder letters = new StringBuilder(xhtml);
            drawings.forEach(drawing -> letters.append('\n').append(drawing.letters()));
            return letters.toString();
        }
    }

    private PrintMarkup(Document document, Profile profile) {
        this.document = document;
        this.language = document.language();
        this.profile = profile;
        this.working = new PrintSteps(markup, math, profile, document.paper(), language);
        this.tables = new PrintTables(markup, math, profile, document.paper(), language);
    }

    /** Before it is known where pages begin. */
    static Print of(Document document, Profile profile) {
        PrintMarkup page = new PrintMarkup(document, profile);
        page.page(PrintStyle.of(document, profile));
        return new Print(page.markup.toString(), page.drawings);
    }

    /** Problems as cards, several to a page. */
    static Print cards(Document document, Profile profile, String style, List<List<CardMarkup>> pages) {
        PrintMarkup print = new PrintMarkup(document, profile);
        print.head(style);
        CardPages cards = new CardPages(print, print.markup, document);
        for (int i = 0; i < pages.size(); i++) {
            cards.write(pages.get(i), i == 0 ? "page" : "page more");
        }
        print.markup.close("body").close("html").newline();
        return new Print(print.markup.toString(), print.drawings);
    }

    /** In one box: it is seen as well as several, and saves paper. */
    void cautions(List<? extends Block> cautions) {
        if (!cautions.isEmpty()) {
            markup.open("div", "class", "caution").newline();
            for (Block block : cautions) {
                Caution caution = (Caution) block;
                markup.open("p", CAUTION, Wording.sentence(caution.heading()))
                        .element("span", "⚠", "class", "sign")
                        .text("\u00a0")
                        .open("strong")
                        .line(language.say("print.caution", "heading", Wording.sentence(caution.heading())))
                        .close("strong")
                        .text(" ")
                        .line(caution.text())
                        .close("p")
                        .newline();
            }
            markup.close("div").newline();
        }
    }

    private void page(String style) {
        head(style);
        masthead();
        int tail = profile.columns() && document.kind() == Document.Kind.SHEET
                ? tail()
                : document.blocks().size();
        write(document.blocks().subList(0, tail));
        if (tail < document.blocks().size()) {
            markup.open("div", "class", "problem narrow tail").newline();
            write(document.blocks().subList(tail, document.blocks().size()));
            markup.close("div").newline();
        }
        markup.close("body").close("html").newline();
    }

    /** Where what stands behind the last problem begins. */
    private int tail() {
        int tail = document.blocks().size();
        while (tail > 0 && !(document.blocks().get(tail - 1) instanceof ProblemBlock)) {
            tail--;
        }
        return tail == 0 ? document.blocks().size() : tail;
    }

    private void head(String style) {
        markup.open(
                        "html",
                        "xmlns",
                        "http://www.w3.org/1999/xhtml",
                        "lang",
                        document.language().code())
                .newline();
        markup.open("head").open("title").line(document.title()).close("title");
        markup.single("meta", "name", "subject", "content", document.title()).newline();
        markup.open("style").trusted(style).close("style").close("head").newline();
        markup.open("body", "class", document.kind() == Document.Kind.KEY ? "key" : "sheet")
                .newline();
    }

    private void masthead() {
        markup.open("div", "class", "masthead").newline();
        if (!document.sheetId().isEmpty() && document.kind() == Document.Kind.SHEET) {
            SheetCode code = SheetCode.of(document.sheetId());
            markup.open("div", "class", "code");
            String alt = language.say("print.qr-code", "sheet", document.sheetId());
            drawing(code, alt, code.side(), code.side());
            markup.close("div").newline();
        }
        document.logo()
                .ifPresent(block -> markup.open("div", "class", "logo")
                        .single(
                                "img",
                                "src",
                                block.address(),
                                "alt",
                                block.alt().isEmpty() ? language.say("print.logo") : block.alt(),
                                "style",
                                "width:" + block.width() + "mm;height:" + block.height() + "mm")
                        .close("div")
                        .newline());
        if (document.kind() == Document.Kind.KEY) {
            markup.element("p", language.say("print.key-notice"), "class", "key-notice")
                    .newline();
        }
        markup.open("h1").line(document.title()).close("h1").newline();
        markup.open("p", "class", "reader").line(document.subtitle());
        if (!document.sheetId().isEmpty()) {
            markup.text(" · ");
            Slots.write(
                    language.say("print.sheet", "sheet", Slots.mark(0)),
                    markup::text,
                    () -> markup.open("b").line(document.sheetId()).close("b"));
        }
        markup.close("p").newline().close("div").newline();
    }

    private void write(List<Block> blocks) {
        for (int i = 0; i < blocks.size(); ) {
            int end = GivensWithFigures.end(blocks, i);
            int boxes = i;
            while (boxes < blocks.size() && blocks.get(boxes) instanceof Caution) {
                boxes++;
            }
            if (boxes > i) {
                cautions(blocks.subList(i, boxes));
                i = boxes;
            } else if (end > i + 1) {
                givensBesideFigures(blocks.subList(i, end));
                i = end;
            } else {
                blocks.get(i).accept(this);
                i++;
            }
        }
    }

    /** The masthead has it. */
    @Override
    public void logo(LogoBlock logo) {}

    @Override
    public void prose(Prose prose) {
        markup.open("div", "class", "prose").newline();
        ProseMarkup.write(prose.markdown(), markup);
        markup.close("div").newline();
    }

    @Override
    public void givens(Givens givens) {
        givens(givens, "givens across");
    }

    @Override
    public void figure(FigureBlock block) {
        figure(block.figure(), sizes(List.of(block.figure())).get(0));
    }

    @Override
    public void caution(Caution caution) {
        cautions(List.of(caution));
    }

    @Override
    public void problem(ProblemBlock problem) {
        String id = PROBLEM_ID + problem.number();
        int opening = opening(problem.blocks());
        narrow = profile.columns()
                && document.kind() == Document.Kind.SHEET
                && (document.paper().isFolded() || fitsColumn(problem));
        working.inColumn(narrow);
        markup.open("div", "class", narrow ? "problem narrow" : "problem", "id", id)
                .newline()
                .open("div", "class", OPENING)
                .newline();
        markup.open("h2")
                .line(problem.number() + "\u2002" + problem.title())
                .close("h2")
                .newline();
        markup.open("p", "class", "tags")
                .line(String.join(" · ", problem.tags()))
                .close("p")
                .newline();
        headingLevel++;
        write(problem.blocks().subList(0, opening));
        markup.close("div").newline();
        write(problem.blocks().subList(opening, problem.blocks().size()));
        headingLevel--;
        markup.close("div").newline();
        narrow = false;
        working.inColumn(false);
    }

    private boolean fitsColumn(ProblemBlock problem) {
        List<Figure> figures = new ArrayList<>();
        for (Block block : problem.blocks()) {
            if (block instanceof Table || block instanceof ReferenceTable || block instanceof PreferredValues) {
                return false;
            } else if (block instanceof FigureBlock figure) {
                figures.add(figure.figure());
            } else if (block instanceof Steps steps && !PrintSteps.fitColumn(steps.steps())) {
                return false;
            }
        }
        return FigureSize.inColumn(figures, profile, document.paper()).isPresent();
    }

    private List<FigureSize> sizes(List<Figure> figures) {
        return narrow
                ? FigureSize.inColumn(figures, profile, document.paper())
                        .orElseGet(() -> FigureSize.of(figures, profile, document.paper()))
                : FigureSize.of(figures, profile, document.paper());
    }

    /** How many blocks there are down to the last of the givens and figures that stand before questions and steps. */
    private static int opening(List<Block> blocks) {
        int opening = 0;
        for (int i = 0; i < blocks.size(); i++) {
            Block block = blocks.get(i);
            if (block instanceof Steps || block instanceof Question || block instanceof KeyTable) {
                break;
            }
            if (block instanceof Givens || block instanceof FigureBlock) {
                opening = i + 1;
            }
        }
        return opening;
    }

    @Override
    public void heading(Heading heading) {
        heading(heading.level(), heading.text());
    }

    private void heading(int level, String text) {
        String element = "h" + Math.min(6, Math.max(headingLevel, level));
        markup.open(element).line(text).close(element).newline();
    }

    /** Nobody types it off the paper; the key on the screen has it. */
    @Override
    public void listing(Listing listing) {}

    @Override
    public void assumptions(Assumptions assumptions) {
        if (assumptions.inFull()) {
            markup.open("div", "class", "prose granted").newline();
            markup.element("p", language.say("print.taken-for-granted.list"))
                    .newline()
                    .open("ul", "class", "assumed")
                    .newline();
            for (Assumption one : assumptions.all()) {
                markup.open("li")
                        .line(Wording.sentence(one.that()))
                        .text(" ")
                        .line(one.really())
                        .close("li")
                        .newline();
            }
            markup.close("ul").close("div").newline();
        } else {
            markup.open("p", "class", "granted")
                    .line(Wording.takenForGranted(assumptions, language))
                    .close("p")
                    .newline();
        }
    }

    // Givens and figure

    /** In one piece, which no page break divides. */
    private void givensBesideFigures(List<Block> blocks) {
        List<Figure> figures = blocks.stream()
                .filter(FigureBlock.class::isInstance)
                .map(block -> ((FigureBlock) block).figure())
                .toList();
        List<FigureSize> sizes = sizes(figures);
        boolean beside = !narrow
                && profile != Profile.LARGE
                && sizes.size() == 1
                && sizes.get(0).isNarrow(profile, document.paper());
        markup.open("div", "class", beside ? "setting" : "setting stacked").newline();
        for (Block block : blocks) {
            if (block instanceof Givens givens) {
                givens(givens, beside ? "givens beside" : narrow ? "givens" : "givens across");
            }
        }
        markup.open("div", "class", "figures").newline();
        for (int i = 0; i < figures.size(); i++) {
            figure(figures.get(i), sizes.get(i));
        }
        markup.close("div").close("div").newline();
    }

    private void givens(Givens givens, String look) {
        markup.open("div", "class", look).newline();
        heading(headingLevel, language.say("print.given"));
        markup.open("div"); // or the tags of pieces set in a line come before that of the heading
        for (GivenLine line : givens.lines()) {
            markup.open("div", "class", "given")
                    .open("span", "class", "meaning")
                    .line(line.label())
                    .close("span")
                    .text(" ");
            markup.open("span", "class", "value");
            line.symbol().ifPresent(symbol -> {
                math.write(MathMl.symbol(symbol));
                markup.text(PrintSteps.EQUALS);
            });
            markup.line(line.value()).close("span").close("div").newline();
        }
        markup.close("div").close("div").newline();
    }

    private void figure(Figure figure, FigureSize size) {
        markup.open("div", "class", "figure").newline();
        drawing(figure, size);
        markup.open("p", "class", "caption")
                .element("b", language.say("print.figure"))
                .text(" ")
                .line(figure.title())
                .close("p");
        markup.close("div").newline();
    }

    void drawing(Figure figure, FigureSize size) {
        drawing(new OnPaper.Drawn(figure.picture()), inWords(figure), size.width(), size.height());
        markup.newline();
    }

    /** @param width on paper in millimetres, as the height; @param more attributes, as name and value by turns */
    void drawing(OnPaper drawing, String alt, double width, double height, String... more) {
        List<String> attributes = new ArrayList<>(List.of(
                "xmlns",
                "http://www.w3.org/2000/svg",
                FigureDrawer.NUMBER,
                Integer.toString(drawings.size()),
                "alt",
                alt,
                "style",
                "width:" + width + "mm;height:" + height + "mm"));
        attributes.addAll(List.of(more));
        markup.open("svg", attributes.toArray(String[]::new)).close("svg");
        drawings.add(drawing);
    }

    /** All that the drawing says, for those who cannot see it. */
    private String inWords(Figure figure) {
        List<String> sentences = new ArrayList<>(List.of(figure.title() + ".", figure.summary()));
        List<String> head = figure.table().head();
        for (List<String> row : figure.table().rows()) {
            List<String> cells = new ArrayList<>();
            for (int i = 0; i < row.size(); i++) {
                cells.add(
                        i == 0 || i >= head.size()
                                ? row.get(i)
                                : language.say("print.figure.cell", "column", head.get(i), "value", row.get(i)));
            }
            sentences.add(String.join(", ", cells) + ".");
        }
        sentences.addAll(figure.walk());
        return Wording.oneLine(String.join(" ", sentences));
    }

    // Worked steps

    @Override
    public void steps(Steps steps) {
        heading(headingLevel, steps.heading().isEmpty() ? language.say("print.steps") : steps.heading());
        working.write(steps.steps());
    }

    // Answers and key

    @Override
    public void question(Question question) {
        markup.open("div", "class", "question").newline();
        markup.open("p", "class", "prompt")
                .open("b")
                .line(question.id())
                .close("b")
                .text(" ");
        ProseMarkup.writeLine(question.prompt(), markup);
        if (!question.options().isEmpty()) {
            markup.text(" " + language.say("print.tick-one"));
        }
        markup.close("p").newline();
        if (question.options().isEmpty()) {
            working.place("", question.symbol(), question.unitBox(), question.unitHint(), question.check());
        } else {
            markup.open("ul", "class", "options").newline();
            for (String option : question.options()) {
                markup.open("li")
                        .element("span", "\u00a0", "class", "tick")
                        .text("\u2002")
                        .line(option)
                        .close("li")
                        .newline();
            }
            markup.close("ul").newline();
        }
        markup.close("div").newline();
    }

    @Override
    public void keyTable(KeyTable table) {
        tables.write(table);
    }

    @Override
    public void preferredValues(PreferredValues values) {
        tables.write(values);
    }

    @Override
    public void referenceTable(ReferenceTable table) {
        tables.write(table);
    }

    @Override
    public void table(Table table) {
        tables.write(table);
    }
}
