package ampersheet.sheet;

import static ampersheet.source.Told.say;

import ampersheet.diagnostic.DiagnosticException;
import ampersheet.source.Faults;
import ampersheet.source.Fields;
import ampersheet.source.Unread;
import ampersheet.source.Yaml;
import java.util.Optional;

/** Reads what of a plan stands over its sheets besides their title. */
final class HeadingReader {
    private final Fields fields;
    private final Optional<PlanReader.Beside> beside;
    private final Faults faults;

    /** @param beside where the picture lies; empty if nobody looks at it */
    HeadingReader(Fields fields, Optional<PlanReader.Beside> beside, Faults faults) {
        this.fields = fields;
        this.beside = beside;
        this.faults = faults;
    }

    /** Faults are told at their places. */
    Plan.Heading read() {
        return new Plan.Heading(
                words("school"),
                words("course"),
                words("date"),
                words("due"),
                words("instructions"),
                fields.text("logo").flatMap(this::logo));
    }

    private Optional<Logo> logo(Yaml.Scalar written) {
        Optional<String> named = FileBeside.name(written, "school.png", faults);
        if (named.isEmpty() || beside.isEmpty()) {
            return Optional.empty();
        }
        String name = named.get();
        try {
            return Optional.of(Logo.read(name, written.place(), beside.get().bytes(name, Logo.LARGEST)));
        } catch (Unread unread) {
            faults.error(
                    written.place(),
                    say("plan.logo.unread", "name", name, "reason", unread.getMessage()),
                    say("plan.logo.unread.expected"),
                    say("plan.logo.unread.next"));
        } catch (DiagnosticException unfit) {
            unfit.diagnostics()
                    .forEach(fault ->
                            faults.error(fault.place(), fault.problem(), fault.expected(), fault.nextAction()));
        }
        return Optional.empty();
    }

    /** As they are to be printed; empty where there are none. */
    private String words(String key) {
        return fields.text(key)
                .map(written -> RosterReader.printable(written.text()))
                .orElse("");
    }
}
