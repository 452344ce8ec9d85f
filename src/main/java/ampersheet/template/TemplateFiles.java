package ampersheet.template;

import ampersheet.language.Language;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Where template files come from: the program's own jar, or a folder of the author's. */
public interface TemplateFiles {
    /** The file with a template's data. */
    String PROBLEM = "problem.yaml";
    /** The file with the limits of the trade, beside the families. */
    String LIMITS = "limits.yaml";

    /** The file with a template's texts in a language other than English. */
    static String problem(Language language) {
        return "problem." + language.code() + ".yaml";
    }

    /** Names {@code family/name} of every folder with a {@code problem.yaml}, sorted. */
    List<String> names();

    /** Plain names of the files in a template's folder, sorted; empty if there is no such template. */
    List<String> files(String template);

    /**
     * Text of a file of a template, with plain line feeds and without a byte order mark.
     *
     * @param file a plain file name; one with a slash or {@code ..} is refused
     * @throws IllegalArgumentException if the template is not {@code family/name} or the file is not a plain name
     * @throws ampersheet.diagnostic.DiagnosticException if the file is too large, is not UTF-8, leaves the folder or
     *     cannot be read
     */
    Optional<String> text(String template, String file);

    /** How places in the file are named in diagnostics. */
    String shown(String template, String file);

    /**
     * Whether each build has checked them as they lie here, in every way: then samples are not worked again only to
     * look for faults. Every problem that is drawn is proven and refused all the same.
     */
    default boolean areChecked() {
        return false;
    }

    /**
     * Text of the file of limits beside these templates; empty if there is none.
     *
     * @throws ampersheet.diagnostic.DiagnosticException as for a file of a template
     */
    default Optional<String> limits() {
        return Optional.empty();
    }

    /** How places in the file of limits are named in diagnostics. */
    default String shownLimits() {
        return LIMITS;
    }

    /**
     * The templates in the program's jar, or beside its classes while it is being developed.
     *
     * @throws ampersheet.diagnostic.DiagnosticException if the program was packed without them
     */
    static TemplateFiles builtIn() {
        return BuiltInFiles.here();
    }

    /**
     * Templates below a folder, laid out {@code family/name/problem.yaml}.
     *
     * @throws ampersheet.diagnostic.DiagnosticException if there is no such folder
     */
    static TemplateFiles in(Path folder) {
        return FolderFiles.of(folder, folder.toString());
    }

    /**
     * Templates that somebody holds in memory, as they came out of an archive.
     *
     * @param texts by path, {@code family/name/problem.yaml}; of other paths only {@link #LIMITS} is looked at
     * @param shownRoot what stands before the path in diagnostics
     */
    static TemplateFiles held(Map<String, String> texts, String shownRoot) {
        return new HeldFiles(texts, shownRoot);
    }

    /** Whether a name is {@code family/name}: lower-case letters, digits and single hyphens. */
    static boolean isTemplate(String name) {
        return FileNames.isTemplate(name);
    }
}
