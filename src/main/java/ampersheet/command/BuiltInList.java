package ampersheet.command;

import ampersheet.sheet.LessonList;
import ampersheet.template.KeptList;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;

/** The lists of the built-in templates that are made when the program is built. */
public final class BuiltInList {
    private static final String RESOURCE = "templates-list";

    private BuiltInList() {}

    /** @param arguments the folder of classes, to which the lists are added */
    public static void main(String[] arguments) throws IOException {
        Path classes = Path.of(arguments[0]);
        for (boolean json : new boolean[] {false, true}) {
            KeptList.keep(classes, file(json), TemplatesCommand.list(json));
        }
        KeptList.keep(
                classes,
                LessonList.FILE,
                LessonList.of(TemplateOptions.library(List.of())).text());
    }

    /** What the command prints; empty where the list was made from other files, or was not made. */
    static Optional<String> kept(boolean json) {
        return KeptList.read(file(json));
    }

    private static String file(boolean json) {
        return RESOURCE + (json ? ".json" : ".txt");
    }
}
