package ampersheet.command;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import ampersheet.issue.Issue;
import ampersheet.issue.SeedFile;
import ampersheet.issue.WrittenFiles;
import ampersheet.sheet.ArchivedClass;
import ampersheet.sheet.Plan;
import ampersheet.sheet.PlanReader;
import ampersheet.sheet.RosterReader;
import ampersheet.sheet.SmallLibrary;
import java.io.BufferedReader;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.PrintStream;
import java.io.StringReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import java.util.zip.ZipEntry;
import java.util.zip.ZipInputStream;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.cos.COSDocument;
import org.apache.pdfbox.cos.COSObjectKey;
import org.apache.pdfbox.cos.COSStream;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A plan that names no seed: its keys must not follow from what is printed. */
class DrawnSeedTest {
    private static final String PLAN = "title: Lanterns\nproblems: [{template: current-limiting/indicator}]\n";
    private static final String CLASS = "seat,name\n1,Ada\n2,Bo\n";

    @TempDir
    private Path folder;

    private Path plan;
    private Path roster;

    private record Run(int exitCode, String out, String err) {}

    @BeforeEach
    void write() throws IOException {
        plan = Files.writeString(folder.resolve("plan.yaml"), PLAN);
        roster = Files.writeString(folder.resolve("class.csv"), CLASS);
    }

    private static Run run(String... arguments) {
        List<String> all = new ArrayList<>(List.of(arguments));
        all.addAll(List.of("--templates", SmallLibrary.FOLDER.toString()));
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        ByteArrayOutputStream err = new ByteArrayOutputStream();
        int exitCode = Main.run(
                all.toArray(new String[0]),
                new Streams(
                        new BufferedReader(new StringReader("")),
                        new PrintStream(out, true, StandardCharsets.UTF_8),
                        new PrintStream(err, true, StandardCharsets.UTF_8)));
        return new Run(exitCode, out.toString(StandardCharsets.UTF_8), err.toString(StandardCharsets.UTF_8));
    }

    private Run issue(String out, String... more) {
        List<String> all = new ArrayList<>(List.of(
                "issue",
                plan.toString(),
                "--roster",
                roster.toString(),
                "--out",
                folder.resolve(out).toString()));
        all.addAll(List.of(more));
        Run run = run(all.toArray(new String[0]));
        assertEquals(0, run.exitCode(), run.err());
        return run;
    }

    private String secret() throws IOException {
        return Files.readAllLines(folder.resolve("plan.yaml.seed")).get(2);
    }

    private Path archive(String out) throws IOException {
        try (Stream<Path> keys = Files.list(folder.resolve(out).resolve("keys"))) {
            return keys.filter(file -> file.toString().endsWith(".zip"))
                    .findFirst()
                    .orElseThrow();
        }
    }

    @Test
    void whoWritesThePlanDownFromASheetDoesNotGetTheKeys() throws IOException {
        issue("out");
        Files.createDirectories(folder.resolve("learner"));
        plan = Files.writeString(folder.resolve("learner/plan.yaml"), PLAN);
        Plan titled = PlanReader.read("plan.yaml", PLAN);
        Issue.issue(titled, RosterReader.read("class.csv", CLASS), SmallLibrary.open(), folder.resolve("guessed"), 1);
        issue("drawn-again");
        Map<String, byte[]> real = WrittenFiles.under(folder.resolve("out/keys"));
        for (String attempt : List.of("guessed", "drawn-again")) {
            WrittenFiles.under(folder.resolve(attempt).resolve("keys"))
                    .forEach((name, bytes) -> assertFalse(
                            real.containsKey(name)
                                    && new String(real.get(name), StandardCharsets.UTF_8)
                                            .equals(new String(bytes, StandardCharsets.UTF_8)),
                            attempt + " has the key " + name));
        }
        assertNotEquals(numbers(archive("out")), numbers(archive("guessed")));
    }

    private static String numbers(Path archive) throws IOException {
        String text = new String(unpacked(Files.readAllBytes(archive)).get("numbers.csv"), StandardCharsets.UTF_8);
        return text.replaceAll("(?m)^[0-9A-Z]{5}-[0-9]+-[0-9A-Z]", "ID");
    }

    @Test
    void everyRunAfterTheFirstGivesTheSameBytes() throws IOException {
        Run first = issue("out");
        assertTrue(first.err().contains("plan.yaml.seed: leave that file beside the plan"), first.err());
        Map<String, byte[]> before = WrittenFiles.under(folder.resolve("out"));
        byte[] seed = Files.readAllBytes(folder.resolve("plan.yaml.seed"));
        Run second = issue("out");
        assertEquals("", second.err(), "said once");
        assertTrue(second.out().contains("(0 files written)"), second.out());
        issue("other");
        for (String out : List.of("out", "other")) {
            Map<String, byte[]> after = WrittenFiles.under(folder.resolve(out));
            assertEquals(before.keySet(), after.keySet());
            before.forEach((name, bytes) -> assertArrayEquals(bytes, after.get(name), name));
        }
        assertArrayEquals(seed, Files.readAllBytes(folder.resolve("plan.yaml.seed")));
        assertEquals(PLAN, Files.readString(plan), "the plan itself is not touched");
    }

    @Test
    void anotherTitleStillGivesOtherNumbers() throws IOException {
        issue("out");
        String before = numbers(archive("out"));
        Files.writeString(plan, PLAN.replace("Lanterns", "Fish"));
        issue("fish");
        assertNotEquals(before, numbers(archive("fish")));
    }

    @Test
    void sheetsOfADrawnSeedAreCheckedAndMarkedByPlanOrByArchive() throws IOException {
        issue("out");
        Path archive = archive("out");
        String id = ArchivedClass.read(archive).sheets().get(1).id().toString();
        String byPlan = run("key", id, "--plan", plan.toString()).out();
        assertTrue(byPlan.contains(id), byPlan);
        assertEquals(byPlan, run("key", id, "--issued-with", archive.toString()).out());
        Run both = run("key", id, "--issued-with", archive.toString(), "--plan", plan.toString());
        assertEquals(0, both.exitCode(), both.err());
        Path linked = Files.createSymbolicLink(folder.resolve("of-tonight.yaml"), plan);
        assertEquals(byPlan, run("key", id, "--plan", linked.toString()).out(), "by whatever name");
        Files.delete(folder.resolve("plan.yaml.seed"));
        Run lost = run("key", id, "--plan", plan.toString());
        assertEquals(2, lost.exitCode());
        assertTrue(lost.err().contains("issued from another plan"), lost.err());
        assertEquals(byPlan, run("key", id, "--issued-with", archive.toString()).out(), "the archive knows all");
    }

    @Test
    void whatAVersionWithoutSuchSeedsIssuedStaysAsItIs() throws IOException {
        Path out = folder.resolve("out");
        Issue.issue(
                PlanReader.read(plan.toString(), PLAN),
                RosterReader.read("class.csv", CLASS),
                SmallLibrary.open(),
                out,
                1);
        Map<String, byte[]> before = WrittenFiles.under(out);
        String id = ArchivedClass.read(archive("out")).sheets().get(0).id().toString();
        assertEquals(
                0, run("key", id, "--plan", plan.toString()).exitCode(), "marked by the plan, which has no seed file");
        Run again = issue("out");
        assertTrue(again.err().contains("with the title as seed. They stay as they are"), again.err());
        assertEquals(before.keySet(), WrittenFiles.under(out).keySet());
        WrittenFiles.under(out).forEach((name, bytes) -> assertArrayEquals(before.get(name), bytes, name));
        assertFalse(Files.exists(folder.resolve("plan.yaml.seed")));
    }

    @Test
    void aSeedThatCannotBeKeptIsToldBeforeAnythingIsIssued() throws IOException {
        Files.createDirectories(folder.resolve("plan.yaml.seed"));
        Run run = run(
                "issue",
                plan.toString(),
                "--roster",
                roster.toString(),
                "--out",
                folder.resolve("out").toString());
        assertEquals(1, run.exitCode());
        assertTrue(run.err().contains("this is not the seed that was drawn for the plan"), run.err());
        assertFalse(Files.exists(folder.resolve("out")));
        Files.delete(folder.resolve("plan.yaml.seed"));
        for (String damaged : List.of("", "# nothing\n", "short\n", "lower0case0lower\n", "x".repeat(5_000))) {
            Files.writeString(folder.resolve("plan.yaml.seed"), damaged);
            assertEquals(
                    1,
                    run(
                                    "practice",
                                    plan.toString(),
                                    "--out",
                                    folder.resolve("p.html").toString())
                            .exitCode(),
                    damaged);
        }
    }

    @Test
    void aPlanInAFolderThatMayNotBeWrittenToGetsASeedToWriteDown() throws IOException {
        Path readOnly = Files.createDirectories(folder.resolve("read-only"));
        Path there = Files.writeString(readOnly.resolve("plan.yaml"), PLAN);
        assertTrue(readOnly.toFile().setWritable(false));
        try {
            assumeTrue(!Files.isWritable(readOnly), "whoever runs this may write everywhere");
            Run run = run(
                    "issue",
                    there.toString(),
                    "--roster",
                    roster.toString(),
                    "--out",
                    folder.resolve("out").toString());
            assertEquals(1, run.exitCode());
            assertTrue(
                    run.err().contains("Write into the plan a line that nobody can guess, such as  seed: "), run.err());
        } finally {
            assertTrue(readOnly.toFile().setWritable(true));
        }
    }

    @Test
    void aPlanThatDoesNotFitGetsNoSeed() throws IOException {
        Files.writeString(plan, "title: T\nproblems: [{template: a/b}]\n");
        assertEquals(
                1,
                run(
                                "issue",
                                plan.toString(),
                                "--roster",
                                roster.toString(),
                                "--out",
                                folder.resolve("out").toString())
                        .exitCode());
        assertEquals(
                1,
                run("export", plan.toString(), "--qti", folder.resolve("p.zip").toString())
                        .exitCode());
        assertEquals(
                List.of("class.csv", "plan.yaml"),
                List.copyOf(WrittenFiles.under(folder).keySet()));
    }

    @Test
    void severalCommandsThatBeginAtOnceAgreeOnOneSeed() throws IOException {
        Plan titled = PlanReader.read("plan.yaml", PLAN);
        Set<String> seeds = new TreeSet<>(IntStream.range(0, 24)
                .parallel()
                .mapToObj(i -> SeedFile.issued(titled, plan, of -> false).plan().seed())
                .toList());
        assertEquals(1, seeds.size(), seeds.toString());
        assertEquals(
                List.of("class.csv", "plan.yaml", "plan.yaml.seed"),
                List.copyOf(WrittenFiles.under(folder).keySet()));
    }

    // What is handed out

    @Test
    void nothingThatIsHandedOutCarriesTheSeed() throws IOException {
        assumeTrue(
                Issue.class.getResource("/ampersheet/browser/checker.js") != null,
                "the checker is not compiled for the browser");
        issue("out", "--homework", "--pdf");
        assertEquals(
                0,
                run(
                                "handout",
                                plan.toString(),
                                "--copies",
                                "2",
                                "--out",
                                folder.resolve("out/tonight.pdf").toString())
                        .exitCode());
        assertEquals(
                0,
                run(
                                "practice",
                                plan.toString(),
                                "--variants",
                                "2",
                                "--out",
                                folder.resolve("out/practice.html").toString())
                        .exitCode());
        Run packed = run(
                "export",
                plan.toString(),
                "--variants",
                "2",
                "--qti",
                folder.resolve("out/pool.zip").toString());
        assertEquals(0, packed.exitCode(), packed.err());
        assertEquals("", packed.err(), "all have the seed that was drawn first");
        String secret = secret();
        Map<String, byte[]> files = WrittenFiles.under(folder.resolve("out"));
        int archives = 0;
        for (Map.Entry<String, byte[]> file : files.entrySet()) {
            boolean carries = carries(file.getValue(), secret);
            boolean archive = file.getKey().contains("issued-");
            assertEquals(archive, carries, file.getKey());
            archives += archive ? 1 : 0;
        }
        assertEquals(2, archives);
    }

    private static boolean carries(byte[] bytes, String secret) throws IOException {
        if (new String(bytes, StandardCharsets.ISO_8859_1).contains(secret)) {
            return true;
        }
        if (bytes[0] == 'P' && bytes[1] == 'K') {
            return unpacked(bytes).values().stream()
                    .anyMatch(part -> new String(part, StandardCharsets.UTF_8).contains(secret));
        }
        return bytes[0] == '%' && carriesPdf(bytes, secret);
    }

    private static Map<String, byte[]> unpacked(byte[] zip) throws IOException {
        Map<String, byte[]> files = new TreeMap<>();
        try (ZipInputStream in = new ZipInputStream(new ByteArrayInputStream(zip), StandardCharsets.UTF_8)) {
            for (ZipEntry entry = in.getNextEntry(); entry != null; entry = in.getNextEntry()) {
                files.put(entry.getName(), in.readAllBytes());
            }
        }
        return files;
    }

    private static boolean carriesPdf(byte[] bytes, String secret) throws IOException {
        try (PDDocument pdf = Loader.loadPDF(bytes)) {
            COSDocument all = pdf.getDocument();
            for (COSObjectKey key : all.getXrefTable().keySet()) {
                if (all.getObjectFromPool(key).getObject() instanceof COSStream stream) {
                    try (InputStream in = stream.createInputStream()) {
                        if (new String(in.readAllBytes(), StandardCharsets.ISO_8859_1).contains(secret)) {
                            return true;
                        }
                    }
                }
            }
            return false;
        }
    }
}
