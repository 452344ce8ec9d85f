package ampersheet.render.markdown;

import ampersheet.figure.Figure;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;

/** The figures of one page as files beside it, numbered as they come; or none, where the page has only their words. */
final class FigureFiles {
    private final Optional<String> name;
    private final Map<String, String> files = new LinkedHashMap<>();

    /** @param name what the names of the files begin with */
    FigureFiles(Optional<String> name) {
        this.name = name;
    }

    /** The file that now holds this figure, if there are files. */
    Optional<String> keep(Figure figure) {
        return name.map(begin -> {
            String file = begin + "-" + (files.size() + 1) + ".svg";
            files.put(file, figure.picture().file());
            return file;
        });
    }

    Map<String, String> files() {
        return Collections.unmodifiableMap(files);
    }
}
