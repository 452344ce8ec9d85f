package ampersheet.template;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

/** One template whose files a test has changed; the limits of the trade are those of the program. */
public record AlteredTemplate(String name, Map<String, String> texts) implements TemplateFiles {
    /** A built-in template, one file of which has another text. */
    public static AlteredTemplate of(String name, String file, String text) {
        TemplateFiles sound = TemplateFiles.builtIn();
        Map<String, String> texts = new TreeMap<>();
        sound.files(name).forEach(each -> texts.put(each, sound.text(name, each).orElseThrow()));
        texts.put(file, text);
        return new AlteredTemplate(name, texts);
    }

    public static String sound(String name, String file) {
        return TemplateFiles.builtIn().text(name, file).orElseThrow();
    }

    public TemplateReader.Checked check() {
        return TemplateReader.check(this, name);
    }

    @Override
    public List<String> names() {
        return List.of(name);
    }

    @Override
    public List<String> files(String template) {
        return List.copyOf(texts.keySet());
    }

    @Override
    public Optional<String> text(String template, String file) {
        return Optional.ofNullable(texts.get(file));
    }

    @Override
    public String shown(String template, String file) {
        return template + "/" + file;
    }
}
