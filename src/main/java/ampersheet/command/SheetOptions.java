package ampersheet.command;

import ampersheet.diagnostic.DiagnosticException;
import ampersheet.sheet.Plan;
import ampersheet.sheet.PlanReader;
import ampersheet.sheet.ProblemSet;
import ampersheet.sheet.Sheet;
import ampersheet.sheet.SheetId;
import ampersheet.sheet.SheetMaker;
import java.nio.file.Path;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Which sheet is meant: its ID and the plan it was issued from. */
@Command
final class SheetOptions {
  @Option(names = "--plan", required = true, paramLabel = "PLAN", description = "The plan from which the sheet was issued.")
  private Path plan;

  @Mixin
  private PartsOption parts;

  @Mixin
  private TemplateOptions templates;

  /** @throws WrongUsage if the ID is not one of the plan */
  Sheet sheet(String typedId) {
    Plan read = PlanReader.read(InputFile.shown(plan), InputFile.read(plan, "a plan"));
    ProblemSet set = ProblemSet.of(read, templates.library(), parts.inventory());
    SheetId id;
    try {
      id = set.readId(typedId);
    } catch (DiagnosticException refused) {
      throw new WrongUsage(refused.diagnostics());
    }
    return new SheetMaker(set).sheet(id.seat());
  }
}
