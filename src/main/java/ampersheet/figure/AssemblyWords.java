package ampersheet.figure;

import java.util.List;

/** Says joined tiles in words, as the drawing shows them. */
interface AssemblyWords {
    String summary();

    Figure.Table table();

    List<String> walk();
}
