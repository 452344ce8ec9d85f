package ampersheet.command;

import ampersheet.answer.Acceptance;
import ampersheet.answer.AnswerKey;
import ampersheet.figure.Figure;
import ampersheet.formula.PlainText;
import ampersheet.problem.Attempt;
import ampersheet.problem.Problem;
import ampersheet.quantity.DecimalMarker;
import ampersheet.sheet.Composer;
import ampersheet.render.Wording;
import ampersheet.sheet.Document.Assumptions;
import ampersheet.sheet.Document.Block;
import ampersheet.sheet.Document.Caution;
import ampersheet.sheet.Document.FigureBlock;
import ampersheet.sheet.Document.GivenLine;
import ampersheet.sheet.Document.Givens;
import ampersheet.sheet.Document.KeyLine;
import ampersheet.sheet.Document.KeyTable;
import ampersheet.sheet.Document.MistakeLine;
import ampersheet.sheet.Document.ProblemBlock;
import ampersheet.sheet.Document.Prose;
import ampersheet.sheet.Document.StepBlock;
import ampersheet.sheet.Document.Steps;
import ampersheet.sheet.SheetProblem;
import ampersheet.template.ProblemTemplate;
import ampersheet.template.ProblemTemplate.Given;
import ampersheet.template.ProblemTemplate.QuantityGiven;
import java.util.List;
import java.util.Locale;

/** One worked problem for a terminal or for a program. */
final class WorkedText {
  private static final int WIDTH = 96;

  private final Attempt.Worked worked;
  private final Problem problem;
  private final ProblemTemplate template;
  private final SheetProblem keyed;
  private final ProblemBlock block;
  private final StringBuilder out = new StringBuilder();

  WorkedText(Attempt.Worked worked, DecimalMarker marker) {
    this.worked = worked;
    this.problem = worked.problem();
    this.template = problem.template();
    this.keyed = SheetProblem.alone(problem, marker);
    this.block = Composer.alone(problem, marker);
  }

  /** @param figures whether to describe them in words */
  String print(boolean figures) {
    line(template.title() + " (" + template.name() + ")");
    for (Block part : block.blocks()) {
      if (part instanceof Prose prose) {
        gap();
        PlainWords.of(prose.markdown()).lines().forEach(line -> paragraph("", line));
      } else if (part instanceof Givens givens) {
        givens(givens);
      } else if (part instanceof FigureBlock figure && figures) {
        figure(figure.figure());
      } else if (part instanceof Caution caution) {
        gap();
        paragraph("  ", "CAUTION: " + caution.heading() + ". " + caution.text());
      } else if (part instanceof Steps steps) {
        steps(steps);
      } else if (part instanceof KeyTable table) {
        answers(table);
      } else if (part instanceof Assumptions assumptions) {
        assumptions(assumptions);
      }
    }
    notes();
    return out.toString().stripTrailing();
  }

  private void givens(Givens givens) {
    gap();
    line("Given");
    for (GivenLine given : givens.lines()) {
      line("  " + given.symbol().map(symbol -> symbol.plain() + " = ").orElse("") + given.value() + "   "
          + given.meaning());
    }
  }

  private void figure(Figure figure) {
    gap();
    line(figure.title());
    paragraph("  ", figure.summary());
    figure.table().rows().forEach(row -> line("  - " + String.join("; ", row)));
    figure.walk().forEach(sentence -> paragraph("  ", sentence));
  }

  private void steps(Steps steps) {
    gap();
    line("Steps");
    for (StepBlock step : steps.steps()) {
      line("  " + step.number() + ". " + step.meaning() + " (" + step.principle() + ")");
      step.condition().ifPresent(condition -> line("     since " + PlainText.symbolic(condition, step.notation()) + ": "
          + PlainText.substituted(condition, step.notation())));
      line("     " + equation(step));
      paragraph("     ", step.reason());
    }
  }

  private static String equation(StepBlock step) {
    StringBuilder equation = new StringBuilder(step.symbol().plain());
    step.formula().ifPresent(formula -> {
      String letters = PlainText.symbolic(formula, step.notation());
      String numbers = PlainText.substituted(formula, step.notation());
      equation.append(" = ").append(letters);
      if (!numbers.equals(letters)) {
        equation.append(" = ").append(numbers);
      }
    });
    step.result().ifPresent(result -> {
      if (!equation.toString().endsWith("= " + result.text())) {
        equation.append(result.exact() ? " = " : " ≈ ").append(result.text());
      }
    });
    return equation.toString();
  }

  private void answers(KeyTable table) {
    gap();
    line("Answers");
    for (int i = 0; i < table.lines().size(); i++) {
      KeyLine key = table.lines().get(i);
      line("  " + key.symbol().map(symbol -> symbol.plain() + " = ").orElse("") + key.answer() + "   accepted: "
          + key.accepted());
      line("     second route: " + key.secondRoute() + (problem.answers().get(i).agrees() ? "" : "   THE ROUTES DISAGREE"));
      for (MistakeLine mistake : key.mistakes()) {
        paragraph("     ", "not " + mistake.value() + ": " + mistake.explanation());
      }
    }
  }

  private void assumptions(Assumptions assumptions) {
    gap();
    line(Wording.TAKEN_FOR_GRANTED);
    assumptions.all().forEach(one -> paragraph("  ", Wording.sentence(one.that()) + " " + one.really()));
  }

  private void notes() {
    if (!worked.notes().isEmpty()) {
      gap();
      line("A draw with these numbers would be refused:");
      worked.notes().forEach(note -> paragraph("  ", note.reason().sentence() + " (" + note.detail() + ")"));
    }
  }

  void write(Json json) {
    json.text("template", template.name()).text("title", template.title());
    json.objects("givens", template.givens(), this::writeGiven);
    json.objects("constants", template.constants(), (at, constant) -> at.text("name", constant.name())
        .text("meaning", constant.meaning()).number("value_si", constant.si()).text("unit", constant.unit().symbol())
        .text("text", text(constant.name())));
    List<StepBlock> steps = block.blocks().stream().filter(Steps.class::isInstance).map(Steps.class::cast).findFirst()
        .orElseThrow().steps();
    json.objects("steps", steps, this::writeStep);
    json.objects("answers", problem.answers(), this::writeAnswer);
    json.texts("cautions", problem.cautions());
    json.objects("notes", worked.notes(), (at, note) -> at.text("reason", lower(note.reason().name()))
        .text("detail", note.detail()));
  }

  private void writeGiven(Json json, Given given) {
    json.text("name", given.name()).text("meaning", given.meaning());
    if (given instanceof QuantityGiven quantity) {
      json.number("value_si", problem.givens().quantity(given.name()).value()).text("unit", quantity.unit().symbol())
          .text("text", text(given.name()));
    } else {
      json.text("word", problem.givens().words().get(given.name()));
    }
  }

  /** Values in coherent SI units; the unit is that of the printed text's quantity. */
  private void writeStep(Json json, StepBlock step) {
    String id = template.lines().get(step.number() - 1).id();
    json.text("id", id).text("meaning", step.meaning()).number("value_si", problem.values().quantity(id).value())
        .text("unit", template.line(id).unit().symbol()).text("text", step.result().orElseThrow().text())
        .text("formula", PlainText.symbolic(step.formula().orElseThrow(), step.notation()))
        .text("numbers", PlainText.substituted(step.formula().orElseThrow(), step.notation()))
        .text("principle", step.principle()).text("because", step.reason());
  }

  private void writeAnswer(Json json, Problem.Answer answer) {
    AnswerKey key = keyed.answers().get(problem.answers().indexOf(answer));
    KeyLine line = block.blocks().stream().filter(KeyTable.class::isInstance).map(KeyTable.class::cast).findFirst()
        .orElseThrow().lines().get(problem.answers().indexOf(answer));
    json.text("of", answer.of()).number("value_si", answer.value()).number("second_si", answer.second())
        .number("gap", answer.gap()).number("allowed", answer.allowed()).flag("agrees", answer.agrees())
        .text("unit", key.unit().symbol()).text("text", line.answer()).text("accepted", line.accepted())
        .text("kind", lower(key.acceptance().getClass().getSimpleName()));
    if (key.acceptance() instanceof Acceptance.Choice choice) {
      json.texts("options", choice.options().stream().map(Acceptance.Option::text).toList());
    }
    json.objects("mistakes", answer.mistakes(), (at, mistake) -> at.text("id", mistake.id())
        .number("value_si", mistake.value()).text("explanation", mistake.explanation()));
  }

  private String text(String name) {
    return Composer.printed(keyed, name);
  }

  private static String lower(String name) {
    return name.toLowerCase(Locale.ROOT).replace('_', '-');
  }

  private void gap() {
    out.append('\n');
  }

  private void line(String text) {
    out.append(text).append('\n');
  }

  private void paragraph(String indent, String text) {
    StringBuilder line = new StringBuilder(indent);
    for (String word : text.split(" ")) {
      if (line.length() > indent.length() && line.length() + 1 + word.length() > WIDTH) {
        line(line.toString());
        line.setLength(0);
        line.append(indent);
      }
      line.append(line.length() > indent.length() ? " " : "").append(word);
    }
    line(line.toString().stripTrailing());
  }
}
