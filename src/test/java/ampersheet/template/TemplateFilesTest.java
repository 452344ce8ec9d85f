package ampersheet.template;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import ampersheet.diagnostic.DiagnosticException;
import java.io.IOException;
import java.io.OutputStream;
import java.net.URL;
import java.net.URLClassLoader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.jar.JarOutputStream;
import java.util.zip.ZipEntry;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class TemplateFilesTest {
    @TempDir
    private Path folder;

    @Test
    void builtInTemplatesAreFoundBesideTheClasses() {
        TemplateFiles files = PackedFiles.on(TemplateFiles.class.getClassLoader());
        assertInstanceOf(FolderFiles.class, files);
        assertTrue(
                files.names().contains("current-limiting/one-indicator"),
                () -> files.names().toString());
        assertEquals(
                "problem-templates/current-limiting/one-indicator/problem.yaml",
                files.shown("current-limiting/one-indicator", "problem.yaml"));
    }

    @Test
    void templatesInAJarAreTheSameAsThoseInAFolder() throws IOException {
        TemplateFiles inFolder = TemplateFiles.builtIn();
        Path jar = folder.resolve("packed.jar");
        try (OutputStream out = Files.newOutputStream(jar);
                JarOutputStream packed = new JarOutputStream(out)) {
            pack(packed, "problem-templates/README.md", "# Writing a template");
            pack(packed, "problem-templates/demo/plan.yaml", "not a template");
            pack(packed, "problem-templates/limits.yaml", inFolder.limits().orElseThrow());
            for (String name : inFolder.names()) {
                for (String file : inFolder.files(name)) {
                    pack(
                            packed,
                            "problem-templates/" + name + "/" + file,
                            inFolder.text(name, file).orElseThrow());
                }
            }
        }
        try (URLClassLoader loader = new URLClassLoader(new URL[] {jar.toUri().toURL()}, null)) {
            TemplateFiles inJar = PackedFiles.on(loader);
            assertInstanceOf(PackedFiles.class, inJar);
            assertEquals(inFolder.names(), inJar.names());
            for (String name : inFolder.names()) {
                assertEquals(inFolder.files(name), inJar.files(name));
                assertEquals(inFolder.shown(name, "problem.yaml"), inJar.shown(name, "problem.yaml"));
                assertEquals(TemplateReader.read(inFolder, name), TemplateReader.read(inJar, name));
            }
        }
    }

    private static void pack(JarOutputStream jar, String path, String text) throws IOException {
        jar.putNextEntry(new ZipEntry(path));
        jar.write(text.getBytes(StandardCharsets.UTF_8));
        jar.closeEntry();
    }

    @Test
    void aJarWithoutTemplatesIsToldAsThat() throws IOException {
        try (URLClassLoader loader = new URLClassLoader(new URL[0], null)) {
            assertThrows(DiagnosticException.class, () -> PackedFiles.on(loader));
        }
    }

    @Test
    void onlyFoldersTwoDeepWithAProblemAreTemplates() throws IOException {
        write("family/one/problem.yaml", "title: a");
        write("family/two/notes.txt", "no problem");
        write("family/problem.yaml", "title: not deep enough");
        write("family/Three/problem.yaml", "title: capital letters");
        write("family/four/deep/problem.yaml", "title: too deep");
        TemplateFiles files = TemplateFiles.in(folder);
        assertEquals(List.of("family/one"), files.names());
        assertEquals(List.of("problem.yaml"), files.files("family/one"));
        assertEquals(List.of(), files.files("family/none"));
        assertEquals(Optional.empty(), files.text("family/one", "statement.md.ftl"));
    }

    @Test
    void noNameLeadsOutOfTheFolder() throws IOException {
        write("family/one/problem.yaml", "title: a");
        Files.writeString(folder.resolve("secret.txt"), "secret");
        TemplateFiles files = TemplateFiles.in(folder);
        for (String file : List.of("../../secret.txt", "..", "/etc/passwd", "a\\b", ".hidden", "", "a/b", "a\0b")) {
            assertThrows(IllegalArgumentException.class, () -> files.text("family/one", file), file);
        }
        for (String template :
                List.of("..", "../x", "family/..", "family", "family/one/", "/family/one", "Family/one", "")) {
            assertThrows(IllegalArgumentException.class, () -> files.text(template, "problem.yaml"), template);
        }
    }

    @Test
    void aLinkThatLeadsOutOfTheFolderIsRefused() throws IOException {
        Path inside = folder.resolve("templates");
        Files.createDirectories(inside.resolve("family/one"));
        Files.writeString(folder.resolve("secret.txt"), "secret");
        try {
            Files.createSymbolicLink(inside.resolve("family/one/problem.yaml"), folder.resolve("secret.txt"));
        } catch (IOException | UnsupportedOperationException noLinks) {
            assumeTrue(false, "this file system has no symbolic links");
        }
        DiagnosticException refused = assertThrows(
                DiagnosticException.class, () -> TemplateFiles.in(inside).text("family/one", "problem.yaml"));
        assertTrue(refused.getMessage().contains("leads out of the folder"), refused.getMessage());
    }

    @Test
    void aFileThatIsTooLargeIsRefused() throws IOException {
        write("family/one/problem.yaml", "#".repeat(FileNames.MOST_BYTES + 1));
        DiagnosticException refused = assertThrows(
                DiagnosticException.class, () -> TemplateFiles.in(folder).text("family/one", "problem.yaml"));
        assertTrue(refused.getMessage().contains("larger than 200000 bytes"), refused.getMessage());
    }

    @Test
    void lineEndsAndByteOrderMarkMakeNoDifference() throws IOException {
        write("family/one/problem.yaml", "\uFEFFtitle: a\r\nlevel: 1\r");
        assertEquals(
                Optional.of("title: a\nlevel: 1\n"), TemplateFiles.in(folder).text("family/one", "problem.yaml"));
    }

    @Test
    void aMissingFolderIsToldByItsName() {
        DiagnosticException refused =
                assertThrows(DiagnosticException.class, () -> TemplateFiles.in(folder.resolve("nowhere")));
        assertTrue(refused.getMessage().contains("nowhere: error: there is no such folder"), refused.getMessage());
    }

    @Test
    void aMistypedTemplateNameIsToldWithTheNearestOne() {
        String told = assertThrows(
                        DiagnosticException.class,
                        () -> TemplateReader.read(TemplateFiles.builtIn(), "current-limiting/one-indicater"))
                .getMessage();
        assertTrue(told.contains("Did you mean current-limiting/one-indicator?"), told);
    }

    private void write(String path, String text) throws IOException {
        Path file = folder.resolve(path);
        Files.createDirectories(file.getParent());
        Files.writeString(file, text);
    }
}
