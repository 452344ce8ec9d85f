package ampersheet.render.pdf;

import ampersheet.figure.Figure;
import ampersheet.formula.Condition;
import ampersheet.formula.MathMl;
import ampersheet.formula.Notation;
import ampersheet.formula.Spoken;
import ampersheet.formula.Symbol;
import ampersheet.quantity.QuantityWriter.Printed;
import ampersheet.render.Derivation;
import ampersheet.render.GivensWithFigures;
import ampersheet.render.Markup;
import ampersheet.render.ProseMarkup;
import ampersheet.render.Wording;
import ampersheet.sheet.Document;
import ampersheet.sheet.Document.Assumption;
import ampersheet.sheet.Document.Assumptions;
import ampersheet.sheet.Document.Block;
import ampersheet.sheet.Document.BlockVisitor;
import ampersheet.sheet.Document.Caution;
import ampersheet.sheet.Document.Cell;
import ampersheet.sheet.Document.FigureBlock;
import ampersheet.sheet.Document.GivenLine;
import ampersheet.sheet.Document.Givens;
import ampersheet.sheet.Document.Heading;
import ampersheet.sheet.Document.KeyLine;
import ampersheet.sheet.Document.KeyTable;
import ampersheet.sheet.Document.MistakeLine;
import ampersheet.sheet.Document.PreferredValues;
import ampersheet.sheet.Document.ProblemBlock;
import ampersheet.sheet.Document.Prose;
import ampersheet.sheet.Document.Question;
import ampersheet.sheet.Document.ReferenceTable;
import ampersheet.sheet.Document.Series;
import ampersheet.sheet.Document.StepBlock;
import ampersheet.sheet.Document.Steps;
import ampersheet.sheet.Document.Table;
import ampersheet.sheet.Document.UnitBox;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** A document as the XHTML that is laid out for paper. Nothing in it refers to anything outside. */
final class PrintMarkup implements BlockVisitor {
  /** Prefix of the ids by which a problem's place on the pages is found. */
  static final String PROBLEM_ID = "problem-";
  /** Class of what comes before a problem's questions: the words and the figure. */
  static final String OPENING = "opening";
  private static final String MATH_SPACE = "\u00a0=\u00a0";
  /** A longer equation takes the width of the page, with its reason below instead of beside it. */
  private static final int WIDE_LINE = 34;
  /** A table with more has short entries and is set close, its halves side by side or, in large print, apart. */
  private static final int MANY_COLUMNS = 8;
  private static final int SERIES_ROW = 12;
  private static final int TWO_DIGITS = 10;
  /** Characters that stand beside the reason in one line. */
  private static final int ONE_LINE = 44;

  private final Document document;
  private final Profile profile;
  private final Markup markup = new Markup();
  private final MathBoxes math = new MathBoxes(markup);
  private final List<OnPaper> drawings = new ArrayList<>();
  private int headingLevel = 2;

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
    this.profile = profile;
  }

  /** Before it is known where pages begin. */
  static Print of(Document document, Profile profile) {
    PrintMarkup page = new PrintMarkup(document, profile);
    page.page(PrintStyle.of(document, profile));
    return new Print(page.markup.toString(), page.drawings);
  }

  /** Four problems on a page, each a card. */
  static Print cards(Document document, Profile profile, String style, Map<String, Double> points) {
    PrintMarkup page = new PrintMarkup(document, profile);
    page.head(style);
    page.cards(points);
    page.markup.close("body").close("html").newline();
    return new Print(page.markup.toString(), page.drawings);
  }

  private void cards(Map<String, Double> points) {
    List<ProblemBlock> cards = CardMarkup.cards(document);
    for (int i = 0; i < cards.size(); i++) {
      if (i % CardMarkup.PER_PAGE == 0) {
        markup.open("div", "class", i == 0 ? "four" : "four more").newline();
      }
      ProblemBlock card = cards.get(i);
      markup.open("div", "class", "card " + CardMarkup.place(i), "id", PROBLEM_ID + card.number(), "style",
          points.containsKey(card.number()) ? "font-size: " + points.get(card.number()) + "pt" : "").newline();
      markup.open("h1").line(card.number() + "\u2002" + card.title()).close("h1").newline();
      markup.open("p", "class", "tags").line(document.subtitle() + " · " + Wording.SHEET + " " + document.sheetId())
          .close("p").newline();
      cautions(card.blocks().stream().filter(Caution.class::isInstance).toList());
      for (Block block : card.blocks()) {
        if (block instanceof Caution) {
          continue;
        }
        if (block instanceof FigureBlock figure) {
          drawing(figure.figure(), FigureSize.onCard(figure.figure(), document.paper()));
        } else {
          block.accept(this);
        }
      }
      markup.close("div").newline();
      if (i % CardMarkup.PER_PAGE == CardMarkup.PER_PAGE - 1 || i == cards.size() - 1) {
        CutMarks marks = new CutMarks(document.paper());
        drawing(marks, "Marks for cutting the page into four cards", marks.width(), marks.height(), "class", "marks");
        markup.close("div").newline();
      }
    }
  }

  /** In one box: it is seen as well as several, and saves paper. */
  private void cautions(List<? extends Block> cautions) {
    if (!cautions.isEmpty()) {
      markup.open("div", "class", "caution").newline();
      for (Block block : cautions) {
        Caution caution = (Caution) block;
        markup.open("p").element("span", "⚠", "class", "sign").text("\u00a0").open("strong").text(Wording.CAUTION + ": ");
        markup.line(Wording.sentence(caution.heading())).close("strong").text(" ").line(caution.text()).close("p").newline();
      }
      markup.close("div").newline();
    }
  }

  private void page(String style) {
    head(style);
    masthead();
    write(document.blocks());
    markup.close("body").close("html").newline();
  }

  private void head(String style) {
    markup.open("html", "xmlns", "http://www.w3.org/1999/xhtml", "lang", document.language()).newline();
    markup.open("head").open("title").line(document.title()).close("title");
    markup.single("meta", "name", "subject", "content", document.title()).newline();
    markup.open("style").trusted(style).close("style").close("head").newline();
    markup.open("body", "class", document.kind() == Document.Kind.KEY ? "key" : "sheet").newline();
  }

  private void masthead() {
    markup.open("div", "class", "masthead").newline();
    if (!document.sheetId().isEmpty() && document.kind() == Document.Kind.SHEET) {
      SheetCode code = SheetCode.of(document.sheetId());
      markup.open("div", "class", "code");
      drawing(code, "QR code of the sheet ID " + document.sheetId(), code.side(), code.side());
      markup.close("div").newline();
    }
    if (document.kind() == Document.Kind.KEY) {
      markup.element("p", Wording.KEY_NOTICE, "class", "key-notice").newline();
    }
    markup.open("h1").line(document.title()).close("h1").newline();
    markup.open("p", "class", "reader").line(document.subtitle());
    if (!document.sheetId().isEmpty()) {
      markup.text(" · " + Wording.SHEET + " ").open("b").line(document.sheetId()).close("b");
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
    figure(block.figure(), FigureSize.of(List.of(block.figure()), profile, document.paper()).get(0));
  }

  @Override
  public void caution(Caution caution) {
    cautions(List.of(caution));
  }

  @Override
  public void problem(ProblemBlock problem) {
    String id = PROBLEM_ID + problem.number();
    int opening = opening(problem.blocks());
    markup.open("div", "class", "problem", "id", id).newline().open("div", "class", OPENING).newline();
    markup.open("h2").line(problem.number() + "\u2002" + problem.title()).close("h2").newline();
    markup.open("p", "class", "tags").line(String.join(" · ", problem.tags())).close("p").newline();
    headingLevel++;
    write(problem.blocks().subList(0, opening));
    markup.close("div").newline();
    write(problem.blocks().subList(opening, problem.blocks().size()));
    headingLevel--;
    markup.close("div").newline();
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

  @Override
  public void assumptions(Assumptions assumptions) {
    if (assumptions.inFull()) {
      markup.open("div", "class", "prose granted").newline();
      markup.element("p", Wording.TAKEN_FOR_GRANTED + ":").newline().open("ul", "class", "assumed").newline();
      for (Assumption one : assumptions.all()) {
        markup.open("li").line(Wording.sentence(one.that())).text(" ").line(one.really()).close("li").newline();
      }
      markup.close("ul").close("div").newline();
    } else {
      markup.open("p", "class", "granted").line(Wording.takenForGranted(assumptions)).close("p").newline();
    }
  }

  // -------------------------------------------------------------------------------------------------- givens and figure

  /** In one piece, which no page break divides. */
  private void givensBesideFigures(List<Block> blocks) {
    List<Figure> figures = blocks.stream().filter(FigureBlock.class::isInstance)
        .map(block -> ((FigureBlock) block).figure()).toList();
    List<FigureSize> sizes = FigureSize.of(figures, profile, document.paper());
    boolean narrow = profile != Profile.LARGE && sizes.size() == 1 && sizes.get(0).isNarrow(document.paper());
    markup.open("div", "class", narrow ? "setting" : "setting stacked").newline();
    for (Block block : blocks) {
      if (block instanceof Givens givens) {
        givens(givens, narrow ? "givens beside" : "givens across");
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
    heading(headingLevel, Wording.GIVEN);
    markup.open("div"); // or the tags of pieces set in a line come before that of the heading
    for (GivenLine line : givens.lines()) {
      markup.open("div", "class", "given").open("span", "class", "meaning").line(line.label()).close("span").text(" ");
      markup.open("span", "class", "value");
      line.symbol().ifPresent(symbol -> {
        math.write(MathMl.symbol(symbol));
        markup.text(MATH_SPACE);
      });
      markup.line(line.value()).close("span").close("div").newline();
    }
    markup.close("div").close("div").newline();
  }

  private void figure(Figure figure, FigureSize size) {
    markup.open("div", "class", "figure").newline();
    drawing(figure, size);
    markup.open("p", "class", "caption").element("b", Wording.FIGURE + ":").text(" ").line(figure.title()).close("p");
    markup.close("div").newline();
  }

  private void drawing(Figure figure, FigureSize size) {
    drawing(new OnPaper.Drawn(figure.picture()), inWords(figure), size.width(), size.height());
    markup.newline();
  }

  /** @param width on paper in millimetres, as the height; @param more attributes, as name and value by turns */
  private void drawing(OnPaper drawing, String alt, double width, double height, String... more) {
    List<String> attributes = new ArrayList<>(List.of("xmlns", "http://www.w3.org/2000/svg", FigureDrawer.NUMBER,
        Integer.toString(drawings.size()), "alt", alt, "style", "width:" + width + "mm;height:" + height + "mm"));
    attributes.addAll(List.of(more));
    markup.open("svg", attributes.toArray(String[]::new)).close("svg");
    drawings.add(drawing);
  }

  /** All that the drawing says, for those who cannot see it. */
  private static String inWords(Figure figure) {
    List<String> sentences = new ArrayList<>(List.of(figure.title() + ".", figure.summary()));
    List<String> head = figure.table().head();
    for (List<String> row : figure.table().rows()) {
      List<String> cells = new ArrayList<>();
      for (int i = 0; i < row.size(); i++) {
        cells.add(i == 0 || i >= head.size() ? row.get(i) : head.get(i) + " " + row.get(i));
      }
      sentences.add(String.join(", ", cells) + ".");
    }
    sentences.addAll(figure.walk());
    return Wording.oneLine(String.join(" ", sentences));
  }

  // ------------------------------------------------------------------------------------------------------- worked steps

  @Override
  public void steps(Steps steps) {
    heading(headingLevel, steps.heading().isEmpty() ? Wording.WORKED_STEPS : steps.heading());
    boolean many = !steps.steps().isEmpty() && steps.steps().get(steps.steps().size() - 1).number() >= TWO_DIGITS;
    markup.open("ol", "class", many ? "steps many" : "steps").newline();
    steps.steps().forEach(this::step);
    markup.close("ol").newline();
  }

  private void step(StepBlock step) {
    Optional<Derivation> derivation = step.result().map(result -> Derivation.of(step));
    markup.open("li", "value", Integer.toString(step.number()), "class", "step").newline();
    if (derivation.isEmpty()) {
      finding(step);
      place(step.blankId().isEmpty() ? Wording.STEP + " " + step.number() : step.blankId(), Optional.of(step.symbol()),
          step.unitBox(), "", step.check());
    } else {
      boolean beside = derivation.get().width() <= WIDE_LINE && profile != Profile.LARGE;
      markup.open("div", "class", beside ? "work beside" : "work");
      finding(step);
      step.condition().ifPresent(condition -> condition(condition, step.notation()));
      equation(step, derivation.get());
      markup.close("div").newline();
      why(step, beside);
    }
    markup.close("li").newline();
  }

  private void finding(StepBlock step) {
    markup.open("p", "class", "finding").line(Wording.capitalised(step.meaning())).close("p").newline();
  }

  private void why(StepBlock step, boolean beside) {
    markup.open("div", "class", beside ? "why beside" : "why").newline();
    if (!step.principle().isEmpty()) {
      markup.open("p", "class", "rule").line(step.principle()).close("p").newline();
    }
    if (!step.reason().isEmpty()) {
      markup.open("p", "class", "reason").line(Wording.sentence(step.reason())).close("p").newline();
    }
    markup.close("div").newline();
  }

  /** Without a fraction in one sentence; with one on two lines, or a line could begin with the punctuation after it. */
  private void condition(Condition condition, Notation notation) {
    String symbolic = MathMl.symbolic(condition, notation);
    boolean lines = symbolic.contains("<mfrac");
    markup.open("p", "class", "case").text(Wording.CASE + " ");
    math.write(symbolic);
    if (lines) {
      markup.single("br").text(Wording.CASE_HERE + " ");
    } else {
      markup.text("; " + Wording.CASE_HERE + " ");
    }
    math.write(MathMl.substituted(condition, notation));
    markup.text(lines ? "" : ".").close("p").newline();
  }

  /**
   * {@code symbol = formula = numbers put in = result}, on one line where it is short, else under each other; each part
   * with its wording as it is read aloud.
   */
  private void equation(StepBlock step, Derivation derivation) {
    Printed result = step.result().orElseThrow();
    int parts = (derivation.formula() ? 1 : 0) + (derivation.numbers() ? 1 : 0);
    boolean oneLine = parts * (derivation.width() + 3) + result.text().length() <= ONE_LINE && profile != Profile.LARGE;
    String left = MathMl.symbol(step.symbol());
    markup.open("div", "class", oneLine ? "equation" : "equation lines").newline();
    if (derivation.formula()) {
      line(left, "=", MathMl.symbolic(step.formula().orElseThrow(), step.notation()),
          Spoken.symbol(step.symbol()) + " equals " + Spoken.symbolic(step.formula().orElseThrow(), step.notation()));
      left = "";
    }
    if (derivation.numbers()) {
      line("", "=", MathMl.substituted(step.formula().orElseThrow(), step.notation()),
          "equals " + Spoken.substituted(step.formula().orElseThrow(), step.notation()));
    }
    if (derivation.result()) {
      line(left, result.exact() ? "=" : "≈", MathMl.value(result),
          (left.isEmpty() ? "" : Spoken.symbol(step.symbol()) + " ") + (result.exact() ? "equals " : "is about ")
          + Spoken.value(result));
    }
    markup.close("div").newline();
  }

  private void line(String left, String relation, String right, String spoken) {
    markup.open("span", "class", left.isEmpty() ? "line on" : "line").open("abbr", "title", spoken);
    if (!left.isEmpty()) {
      math.write(left);
      markup.text("\u00a0");
    }
    markup.text(relation + "\u00a0");
    math.write(right);
    markup.close("abbr").close("span").text(" ").newline();
  }

  // ---------------------------------------------------------------------------------------------------- answers and key

  @Override
  public void question(Question question) {
    markup.open("div", "class", "question").newline();
    markup.open("p", "class", "prompt").open("b").line(question.id()).close("b").text(" ");
    ProseMarkup.writeLine(question.prompt(), markup);
    if (!question.options().isEmpty()) {
      markup.text(" " + Wording.TICK_ONE);
    }
    markup.close("p").newline();
    if (question.options().isEmpty()) {
      place("", question.symbol(), question.unitBox(), question.unitHint(), question.check());
    } else {
      markup.open("ul", "class", "options").newline();
      for (String option : question.options()) {
        markup.open("li").element("span", "\u00a0", "class", "tick").text("\u2002").line(option).close("li").newline();
      }
      markup.close("ul").newline();
    }
    markup.close("div").newline();
  }

  /** A box for the number and, where the learner writes it, one for the unit. */
  private void place(String label, Optional<Symbol> symbol, UnitBox unitBox, String unit, String check) {
    markup.open("p", "class", "place");
    if (!label.isEmpty()) {
      markup.open("b").line(label).close("b").text(" ");
    }
    symbol.ifPresent(s -> {
      math.write(MathMl.symbol(s));
      markup.text(MATH_SPACE);
    });
    markup.element("span", "\u00a0", "class", "box number").text(" ");
    if (!unit.isEmpty()) {
      markup.open("span").line(unit).close("span");
    } else if (unitBox == UnitBox.ASKED) {
      markup.element("span", "\u00a0", "class", "box unit").text(" ").element("span", "unit", "class", "hint");
    } else if (unitBox == UnitBox.SHARE) {
      markup.element("span", Wording.SHARE_HINT, "class", "hint");
    }
    if (!check.isEmpty()) {
      markup.text("  ").open("span", "class", "check").text("check ").open("b").line(check).close("b").close("span");
    }
    markup.close("p").newline();
  }

  @Override
  public void keyTable(KeyTable table) {
    openTable(Wording.ANSWERS, List.of(Wording.QUESTION, Wording.ANSWER, Wording.ACCEPTED, Wording.SECOND_ROUTE), "plain");
    for (KeyLine line : table.lines()) {
      markup.open("tr").open("th", "scope", "row").line(line.question());
      line.symbol().ifPresent(symbol -> {
        markup.text(" ");
        math.write(MathMl.symbol(symbol));
      });
      markup.close("th").open("td").open("strong").line(line.answer()).close("strong").close("td");
      markup.open("td").line(line.accepted()).close("td").open("td").line(line.secondRoute()).close("td").close("tr").newline();
    }
    closeTable();
    for (KeyLine line : table.lines()) {
      if (!line.mistakes().isEmpty()) {
        markup.open("p", "class", "prompt").open("b").line(line.question()).close("b").text(" " + Wording.WRONG_METHODS + ":")
            .close("p").newline().open("ul", "class", "mistakes").newline();
        for (MistakeLine mistake : line.mistakes()) {
          markup.open("li").open("b").line(mistake.value()).close("b").text(" — ").line(mistake.explanation()).close("li")
              .newline();
        }
        markup.close("ul").newline();
      }
    }
  }

  @Override
  public void preferredValues(PreferredValues values) {
    openLookUp(Wording.PREFERRED_VALUES, "series");
    markup.open("tbody").newline();
    for (Series series : values.series()) {
      List<List<String>> rows = series.rows(profile == Profile.LARGE ? SERIES_ROW / 2 : SERIES_ROW);
      for (List<String> row : rows) {
        markup.open("tr");
        if (row == rows.get(0)) {
          markup.open("th", "scope", "row", "rowspan", Integer.toString(rows.size())).line(series.name()).close("th");
        }
        row.forEach(value -> markup.open("td").line(value).close("td"));
        markup.close("tr").newline();
      }
    }
    markup.close("tbody").close("table").close("div").newline();
  }

  /** Its rows side by side where the paper is wide enough for them: that takes a quarter of the lines. */
  @Override
  public void referenceTable(ReferenceTable written) {
    ReferenceTable table = profile == Profile.REGULAR ? written.turned() : written;
    openLookUp(table.caption(), "numbers");
    markup.open("thead").open("tr");
    table.head().forEach(name -> markup.open("th", "scope", "col").line(name).close("th"));
    markup.close("tr").close("thead").newline().open("tbody").newline();
    for (List<String> row : table.rows()) {
      markup.open("tr").open("th", "scope", "row").line(row.get(0)).close("th");
      row.subList(1, row.size()).forEach(value -> markup.open("td").line(value).close("td"));
      markup.close("tr").newline();
    }
    markup.close("tbody").close("table").close("div").newline();
  }

  private void openLookUp(String caption, String look) {
    markup.open("div", "class", "look-up").newline().open("table", "class", look).newline();
    markup.open("caption").line(caption).close("caption").newline();
  }

  @Override
  public void table(Table table) {
    if (table.head().size() <= MANY_COLUMNS) {
      rows(table, table.rows(), "plain");
    } else {
      int half = (table.rows().size() + 1) / 2;
      List<List<List<Cell>>> halves = List.of(table.rows().subList(0, half), table.rows().subList(half, table.rows().size()));
      String look = profile == Profile.LARGE ? "half" : "half beside";
      markup.open("div", "class", "halves");
      for (List<List<Cell>> rows : halves) {
        markup.open("div", "class", look);
        rows(table, rows, "grid");
        markup.close("div");
      }
      markup.close("div").newline();
    }
  }

  private void rows(Table table, List<List<Cell>> rows, String look) {
    openTable(table.caption(), table.head(), look);
    for (List<Cell> row : rows) {
      markup.open("tr");
      for (int i = 0; i < row.size(); i++) {
        if (i == 0) {
          markup.open("th", "scope", "row").line(row.get(i).text()).close("th");
        } else {
          markup.open("td").line(row.get(i).text()).close("td");
        }
      }
      markup.close("tr").newline();
    }
    closeTable();
  }

  private void openTable(String caption, List<String> head, String look) {
    if (!caption.isEmpty()) {
      markup.open("p", "class", "prompt").open("b").line(caption).close("b").close("p").newline();
    }
    markup.open("table", "class", look).newline().open("thead").open("tr");
    head.forEach(name -> markup.open("th", "scope", "col").line(name).close("th"));
    markup.close("tr").close("thead").newline().open("tbody").newline();
  }

  private void closeTable() {
    markup.close("tbody").close("table").newline();
  }
}
