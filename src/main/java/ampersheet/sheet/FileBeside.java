package ampersheet.sheet;

import static ampersheet.source.Told.say;

import ampersheet.source.Faults;
import ampersheet.source.Fields;
import ampersheet.source.Yaml;
import java.util.Optional;

/** A file in the folder of a plan, as the plan names it. */
final class FileBeside {
    private FileBeside() {}

    /**
     * Its name; empty, with the fault noted, for a path.
     *
     * @param example what such a file may be called
     */
    static Optional<String> name(Yaml.Scalar written, String example, Faults faults) {
        String name = written.text();
        if (name.matches("[^./\\:\\p{Cntrl}][^/\\\\:\\p{Cntrl}]{0,100}")) {
            return Optional.of(name);
        }
        faults.error(
                written.place(),
                say("plan.file.name", "name", name),
                say("plan.file.name.expected", "example", example),
                say("plan.file.name.next"));
        return Optional.empty();
    }

    /** What a plan names at {@code parts:}. */
    static Optional<Plan.PartsList> partsList(Fields fields, Faults faults) {
        return fields.text("parts")
                .flatMap(
                        named -> name(named, "parts.csv", faults).map(name -> new Plan.PartsList(name, named.place())));
    }
}
