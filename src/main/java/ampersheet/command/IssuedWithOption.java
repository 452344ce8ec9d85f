package ampersheet.command;

import static ampersheet.source.Told.say;

import ampersheet.diagnostic.DiagnosticException;
import ampersheet.marking.Corrections;
import ampersheet.problem.Inventory;
import ampersheet.sheet.ArchivedClass;
import ampersheet.sheet.ArchivedSheets;
import ampersheet.sheet.ClassSheets;
import ampersheet.sheet.Plan;
import ampersheet.sheet.ProblemSet;
import ampersheet.sheet.SheetMaker;
import ampersheet.template.TemplateLibrary;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** What sheets were issued with, and what has been corrected since. */
@Command
final class IssuedWithOption {
    @Option(names = "--plan", paramLabel = "PLAN", descriptionKey = "command.help.issued-from")
    private Path plan;

    @Option(names = "--issued-with", paramLabel = "ARCHIVE|DIR", descriptionKey = "command.help.issued-with")
    private List<Path> issuedWith = new ArrayList<>();

    @Mixin
    private WeekOption week;

    @Mixin
    private PartsOption parts;

    @Mixin
    private TemplateOptions templates;

    /** The sheets of the class, and by what they are marked where that is not what they were issued with. */
    record Issued(ClassSheets sheets, Optional<Corrections> corrections) {}

    /** The files that are read; folders hold templates, which are never written over. */
    List<Path> files() {
        List<Path> files = new ArrayList<>(issuedWith);
        Optional.ofNullable(plan).ifPresent(files::add);
        Optional.ofNullable(parts.file()).ifPresent(files::add);
        return files.stream().filter(Files::isRegularFile).toList();
    }

    Issued read() {
        if (plan == null && week.week().isPresent()) {
            throw new WrongUsage(
                    "--week",
                    say("command.issued-with.week"),
                    say("command.issued-with.week.expected"),
                    say("command.week.next"));
        }
        Optional<Path> archive =
                issuedWith.stream().filter(path -> !Files.isDirectory(path)).findFirst();
        if (archive.isPresent()) {
            return archived(archive.get());
        }
        if (plan == null) {
            throw new WrongUsage(
                    "--plan",
                    say("command.issued-with.plan"),
                    say("command.issued-with.plan.expected"),
                    say("command.issued-with.plan.next"));
        }
        TemplateLibrary present = templates.library();
        TemplateLibrary then = issuedWith.isEmpty() ? present : TemplateOptions.library(issuedWith);
        PlanFile from = new PlanFile(plan, week, then);
        Optional<Inventory> bins = parts.inventory(plan, from.written());
        SheetMaker sheets = new SheetMaker(ProblemSet.of(from.issued(), then, bins));
        return new Issued(sheets, issuedWith.isEmpty() ? Optional.empty() : Optional.of(new Corrections(present)));
    }

    private Plan planIssued(TemplateLibrary then) {
        return new PlanFile(plan, week, then).issued();
    }

    private Issued archived(Path archive) {
        if (issuedWith.size() > 1) {
            throw new WrongUsage(
                    "--issued-with",
                    say("command.issued-with.several", "paths", Integer.toString(issuedWith.size())),
                    say("command.issued-with.several.expected"),
                    say("command.issued-with.several.next"));
        }
        if (!Files.exists(archive)) {
            throw new WrongUsage(
                    InputFile.shown(archive),
                    say("command.issued-with.missing"),
                    say("command.issued-with.missing.expected"),
                    say("command.path.next"));
        }
        if (parts.isGiven()) {
            throw new WrongUsage(
                    "--parts", say("command.issued-with.parts"), "", say("command.issued-with.parts.next"));
        }
        TemplateLibrary present = templates.library();
        ArchivedClass issued = ArchivedClass.read(archive);
        ArchivedSheets sheets = new ArchivedSheets(issued, present);
        Optional<Plan> read = Optional.ofNullable(plan).map(named -> planIssued(present));
        try {
            read.ifPresent(sheets::requirePlan);
        } catch (DiagnosticException other) {
            throw new WrongUsage(other.diagnostics());
        }
        return new Issued(sheets, Optional.of(Corrections.orElseAsIssued(present)));
    }
}
