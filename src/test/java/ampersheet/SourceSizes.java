package ampersheet;

import com.sun.source.tree.BinaryTree;
import com.sun.source.tree.ClassTree;
import com.sun.source.tree.CompilationUnitTree;
import com.sun.source.tree.LineMap;
import com.sun.source.tree.LiteralTree;
import com.sun.source.tree.MethodTree;
import com.sun.source.tree.Tree;
import com.sun.source.util.JavacTask;
import com.sun.source.util.SourcePositions;
import com.sun.source.util.TreeScanner;
import com.sun.source.util.Trees;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import javax.tools.JavaCompiler;
import javax.tools.StandardJavaFileManager;
import javax.tools.ToolProvider;

/**
 * How long the files and methods of the program are, and where they say {@code null}, as the compiler's own parser sees
 * them.
 */
final class SourceSizes {
    private static final Path MAIN = Path.of("src", "main", "java");

    /**
     * @param lines from the first of its declaration, without its comment, to its closing brace
     * @param parameters that are written out
     */
    record Method(String name, int lines, int parameters) {}

    /** @param name from the root package, such as {@code sheet/Composer} */
    record SourceFile(String name, int lines) {}

    private final List<SourceFile> files = new ArrayList<>();
    private final List<Method> methods = new ArrayList<>();
    private final List<String> nulls = new ArrayList<>();

    private SourceSizes() {}

    static SourceSizes ofMain() throws IOException {
        List<Path> sources;
        try (var found = Files.walk(MAIN)) {
            sources = found.filter(path -> path.toString().endsWith(".java"))
                    .sorted()
                    .toList();
        }
        SourceSizes sizes = new SourceSizes();
        for (Path source : sources) {
            sizes.files.add(
                    new SourceFile(nameOf(source), Files.readAllLines(source).size()));
        }
        JavaCompiler compiler = ToolProvider.getSystemJavaCompiler();
        try (StandardJavaFileManager manager =
                compiler.getStandardFileManager(null, Locale.ROOT, StandardCharsets.UTF_8)) {
            JavacTask task = (JavacTask) compiler.getTask(
                    null, manager, null, List.of("-proc:none"), null, manager.getJavaFileObjectsFromPaths(sources));
            SourcePositions positions = Trees.instance(task).getSourcePositions();
            for (CompilationUnitTree unit : task.parse()) {
                sizes.measure(unit, positions);
            }
        }
        return sizes;
    }

    List<SourceFile> files() {
        return files;
    }

    List<Method> methods() {
        return methods;
    }

    /** Methods with a {@code null} that is given or handed on, not only compared with; once for each. */
    List<String> nulls() {
        return nulls;
    }

    private static String nameOf(Path source) {
        String path = MAIN.resolve("ampersheet").relativize(source).toString().replace('\\', '/');
        return path.substring(0, path.length() - ".java".length());
    }

    private void measure(CompilationUnitTree unit, SourcePositions positions) {
        LineMap lines = unit.getLineMap();
        String file = nameOf(Path.of(unit.getSourceFile().getName()));
        new TreeScanner<Void, String>() {
            @Override
            public Void visitClass(ClassTree type, String within) {
                return super.visitClass(type, within + "." + type.getSimpleName());
            }

            @Override
            public Void visitMethod(MethodTree method, String within) {
                long from = lines.getLineNumber(positions.getStartPosition(unit, method));
                long to = lines.getLineNumber(positions.getEndPosition(unit, method));
                int parameters = isCompact(unit, method, positions)
                        ? 0
                        : method.getParameters().size();
                methods.add(new Method(file + within + "#" + method.getName(), (int) (to - from + 1), parameters));
                return super.visitMethod(method, within + "#" + method.getName());
            }

            @Override
            public Void visitBinary(BinaryTree comparison, String within) {
                return isNull(comparison.getRightOperand()) ? null : super.visitBinary(comparison, within);
            }

            @Override
            public Void visitLiteral(LiteralTree literal, String within) {
                if (isNull(literal)) {
                    nulls.add(file + within);
                }
                return super.visitLiteral(literal, within);
            }
        }.scan(unit, "");
    }

    private static boolean isNull(Tree tree) {
        return tree.getKind() == Tree.Kind.NULL_LITERAL;
    }

    /** A record's constructor without parameters of its own; the parser lends it those of the record. */
    private static boolean isCompact(CompilationUnitTree unit, MethodTree method, SourcePositions positions) {
        return method.getParameters().stream()
                .anyMatch(parameter ->
                        positions.getStartPosition(unit, parameter) < positions.getStartPosition(unit, method));
    }
}
