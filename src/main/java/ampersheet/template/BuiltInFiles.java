package ampersheet.template;

import ampersheet.language.Language;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;

/** The program's own templates. They do not change while it runs, so that each is read and checked once. */
final class BuiltInFiles implements TemplateFiles {
    private static BuiltInFiles found;

    private final TemplateFiles files;
    private final List<String> names;
    private final Map<Asked, TemplateReader.Checked> checked = new ConcurrentHashMap<>();

    private BuiltInFiles(TemplateFiles files) {
        this.files = files;
        this.names = files.names();
    }

    /** @throws ampersheet.diagnostic.DiagnosticException if the program was packed without them */
    static synchronized BuiltInFiles here() {
        if (found == null) {
            found = new BuiltInFiles(PackedFiles.on(BuiltInFiles.class.getClassLoader()));
        }
        return found;
    }

    private record Asked(String template, Language language) {}

    /** As {@link TemplateReader#check} found it, the first time. */
    TemplateReader.Checked checked(String template, Language language) {
        return checked.computeIfAbsent(
                new Asked(template, language), asked -> TemplateReader.checkAnew(files, template, language));
    }

    @Override
    public List<String> names() {
        return names;
    }

    @Override
    public List<String> files(String template) {
        return files.files(template);
    }

    @Override
    public Optional<String> text(String template, String file) {
        return files.text(template, file);
    }

    @Override
    public String shown(String template, String file) {
        return files.shown(template, file);
    }

    @Override
    public Optional<String> limits() {
        return files.limits();
    }

    @Override
    public String shownLimits() {
        return files.shownLimits();
    }
}
