package ampersheet.template;

import ampersheet.diagnostic.Diagnostic;
import ampersheet.diagnostic.DiagnosticException;
import ampersheet.diagnostic.Place;
import ampersheet.formula.Spelling;
import ampersheet.language.Language;
import ampersheet.source.Faults;
import ampersheet.source.Languages;
import ampersheet.source.WithinMemory;
import java.util.List;
import java.util.Optional;
import java.util.TreeSet;

/** Reads one template folder. */
public final class TemplateReader {
    private TemplateReader() {}

    /**
     * @param template present unless there is an error
     * @param diagnostics all errors and warnings, in the order of the files' text
     */
    public record Checked(Optional<ProblemTemplate> template, List<Diagnostic> diagnostics) {
        public Checked {
            diagnostics = List.copyOf(diagnostics);
        }
    }

    /**
     * @param files where the folder's files come from
     * @param name {@code family/name}
     * @throws DiagnosticException with all faults of the template at once; warnings alone are no fault
     */
    public static ProblemTemplate read(TemplateFiles files, String name) {
        return read(files, name, Languages.ENGLISH);
    }

    /** The same with its words in a language, which are in files of their own. */
    public static ProblemTemplate read(TemplateFiles files, String name, Language language) {
        Checked checked = check(files, name, language);
        return checked.template().orElseThrow(() -> new DiagnosticException(checked.diagnostics()));
    }

    /** The same, with the warnings. */
    public static Checked check(TemplateFiles files, String name) {
        return check(files, name, Languages.ENGLISH);
    }

    /** The same in a language. */
    public static Checked check(TemplateFiles files, String name, Language language) {
        return files instanceof BuiltInFiles own && own.names().contains(name)
                ? own.checked(name, language)
                : checkAnew(files, name, language);
    }

    static Checked checkAnew(TemplateFiles files, String name, Language language) {
        Optional<String> text = FileNames.isTemplate(name) ? files.text(name, TemplateFiles.PROBLEM) : Optional.empty();
        if (text.isEmpty()) {
            return new Checked(Optional.empty(), List.of(missing(files, name)));
        }
        return WithinMemory.of(
                files.shown(name, TemplateFiles.PROBLEM), () -> check(files, name, text.get(), language));
    }

    private static Checked check(TemplateFiles files, String name, String text, Language language) {
        Faults faults = new Faults();
        Optional<ProblemTemplate> template = new Reading(files, name, language, faults).read(text);
        return new Checked(faults.hasErrors() ? Optional.empty() : template, faults.inOrder());
    }

    private static Diagnostic missing(TemplateFiles files, String name) {
        TreeSet<String> names = new TreeSet<>(files.names());
        return Diagnostic.error(
                Place.inFile(name),
                "there is no template " + name,
                names.isEmpty() ? "a folder family/name with a file problem.yaml; there is none" : Spelling.list(names),
                Guess.of(name, names, "Name one of the templates."));
    }
}
