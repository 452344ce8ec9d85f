package ampersheet.template;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

/** Templates held in memory; their texts were decoded and limited in size by whoever read them. */
final class HeldFiles implements TemplateFiles {
    private final Map<String, String> texts;
    private final String shownRoot;

    HeldFiles(Map<String, String> texts, String shownRoot) {
        this.texts = new TreeMap<>(texts);
        this.shownRoot = shownRoot;
    }

    @Override
    public List<String> names() {
        List<String> names = new ArrayList<>();
        for (String path : texts.keySet()) {
            String folder = path.endsWith("/" + PROBLEM) ? path.substring(0, path.lastIndexOf('/')) : "";
            if (FileNames.isTemplate(folder)) {
                names.add(folder);
            }
        }
        return List.copyOf(names);
    }

    @Override
    public List<String> files(String template) {
        FileNames.require(template, PROBLEM);
        List<String> files = new ArrayList<>();
        for (String path : texts.keySet()) {
            if (path.startsWith(template + "/") && FileNames.isPlain(path.substring(template.length() + 1))) {
                files.add(path.substring(template.length() + 1));
            }
        }
        return List.copyOf(files);
    }

    @Override
    public Optional<String> text(String template, String file) {
        FileNames.require(template, file);
        return Optional.ofNullable(texts.get(template + "/" + file));
    }

    @Override
    public String shown(String template, String file) {
        return shownRoot + "/" + template + "/" + file;
    }

    @Override
    public Optional<String> limits() {
        return Optional.ofNullable(texts.get(LIMITS));
    }

    @Override
    public String shownLimits() {
        return shownRoot + "/" + LIMITS;
    }
}
