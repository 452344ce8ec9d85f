package ampersheet.source;

import static ampersheet.source.Told.say;

import ampersheet.diagnostic.Diagnostic;
import ampersheet.diagnostic.DiagnosticException;
import ampersheet.diagnostic.Place;
import java.util.function.Supplier;

/** Work on something from outside that may be too large for the machine: then that is said, and of what. */
public final class WithinMemory {
    private WithinMemory() {}

    /**
     * Does the work.
     *
     * @param shown what is worked on, as its reader knows it
     * @throws DiagnosticException if memory runs out, or if it is nested deeper than can be followed
     */
    public static <T> T of(String shown, Supplier<T> work) {
        try {
            return work.get();
        } catch (OutOfMemoryError | StackOverflowError exhausted) {
            throw new DiagnosticException(told(shown, exhausted));
        }
    }

    /** @param exhausted an {@link OutOfMemoryError} or a {@link StackOverflowError} */
    public static Diagnostic told(String shown, VirtualMachineError exhausted) {
        if (exhausted instanceof StackOverflowError) {
            return Diagnostic.error(Place.inFile(shown), say("folder.file.deep"), "", say("folder.file.deep.next"));
        }
        return Diagnostic.error(
                Place.inFile(shown),
                say(
                        "folder.file.memory",
                        "most",
                        Long.toString(Runtime.getRuntime().maxMemory() >> 20)),
                "",
                say("folder.file.memory.next"));
    }
}
