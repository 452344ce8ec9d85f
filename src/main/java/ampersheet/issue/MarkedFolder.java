package ampersheet.issue;

import static ampersheet.source.Told.say;

import ampersheet.diagnostic.Diagnostic;
import ampersheet.diagnostic.Place;
import ampersheet.marking.MarkForms;
import ampersheet.marking.Marking;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;

/** The folder in which the results of marking lie. */
public final class MarkedFolder {
    private static final List<String> TABLES = List.of(
            "report.html",
            "projector.html",
            "gradebook.html",
            "send.csv",
            "marks.csv",
            "decide.csv",
            "answers.csv",
            "files.csv",
            "set-aside.csv",
            "corrections.csv",
            "changes.csv",
            "names.csv");
    private static final String FEEDBACK = "feedback";

    private MarkedFolder() {}

    /**
     * What was written.
     *
     * @param removed feedback pages of an earlier run whose seat sent nothing this time
     * @param left such pages that may be somebody else's, and stay
     */
    public record Written(Marking.Marked marked, int removed, List<Diagnostic> left) {
        public Written {
            left = List.copyOf(left);
        }
    }

    /**
     * Marks into a folder; each file is whole or not there.
     *
     * @param forms further forms of the table of marks
     * @throws ampersheet.diagnostic.DiagnosticException if something cannot be read, or must not be written over
     */
    public static Written write(Marking.Task task, Path out, List<MarkForms> forms, Output.Terms terms) {
        return write(task, out, forms, terms, (written, output) -> List.of());
    }

    /** What else is to be done with the results of an earlier run. */
    @FunctionalInterface
    public interface Afterwards {
        /** @param written by their names in the folder */
        List<Diagnostic> remove(Set<String> written, Output output);
    }

    /** The same, where more of an earlier run has to go than the pages. */
    public static Written write(
            Marking.Task task, Path out, List<MarkForms> forms, Output.Terms terms, Afterwards afterwards) {
        Set<String> written = new TreeSet<>();
        try (Output output = Output.folder(out, terms)) {
            output.require(TABLES.stream().map(out::resolve).toList());
            output.require(forms.stream().map(form -> out.resolve(form.file())).toList());
            Marking.Marked marked = Marking.mark(task, (path, text) -> {
                written.add(path);
                output.write(out.resolve(path), text);
                if (path.equals("marks.csv")) {
                    forms.forEach(form -> output.write(out.resolve(form.file()), form.of(text)));
                }
                if (path.startsWith(FEEDBACK)) {
                    terms.progress()
                            .made(
                                    say("folder.making.feedback-pages"),
                                    task.roster().seats().size());
                }
            });
            int removed = 0;
            List<Diagnostic> left = new ArrayList<>();
            for (Path page : unwritten(out, written)) {
                if (output.removeOld(page)) {
                    removed++;
                } else {
                    left.add(Diagnostic.warning(
                            Place.inFile(Output.shown(page)),
                            say("folder.feedback.foreign"),
                            "",
                            say("folder.feedback.foreign.next")));
                }
            }
            left.addAll(afterwards.remove(written, output));
            output.finish();
            return new Written(marked, removed, left);
        }
    }

    /** A page of a seat from which nothing came in this time must not be handed out by mistake. */
    private static List<Path> unwritten(Path out, Set<String> written) {
        String[] pages = out.resolve(FEEDBACK).toFile().list();
        return new TreeSet<>(pages == null ? List.of() : List.of(pages))
                .stream()
                        .filter(page -> page.matches("seat-[0-9]+\\.html") && !written.contains(FEEDBACK + "/" + page))
                        .map(page -> out.resolve(FEEDBACK).resolve(page))
                        .toList();
    }
}
