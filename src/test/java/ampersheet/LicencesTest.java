package ampersheet;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.Test;

/**
 * Whatever is in the jar has its licence in it: the list of licences against the bill of materials that the build
 * writes.
 */
class LicencesTest {
    private static final String FOLDER = "/META-INF/licences/";

    /** @param name group and artifact, or group and * for all of it */
    private record Line(String name, String version, List<String> texts) {
        boolean holds(String group, String artifact, String itsVersion) {
            return version.equals(itsVersion) && (name.equals(group + ":" + artifact) || name.equals(group + ":*"));
        }
    }

    private static String text(String resource) throws IOException {
        try (InputStream in = LicencesTest.class.getResourceAsStream(resource)) {
            assertNotNull(in, resource + " is missing");
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        }
    }

    private static List<Line> lines() throws IOException {
        List<Line> lines = new ArrayList<>();
        for (String line : text(FOLDER + "INDEX.txt").split("\n")) {
            String[] words = line.trim().split("\\s+");
            if (words.length > 3 && words[0].contains(":") && !words[0].endsWith(":")) {
                lines.add(new Line(words[0], words[1], List.of(words).subList(3, words.length)));
            }
        }
        return lines;
    }

    private static JsonNode components() throws IOException {
        Assumptions.assumeTrue(
                LicencesTest.class.getResource("/META-INF/sbom/ampersheet.cdx.json") != null,
                "no bill of materials: Maven writes it, and only online");
        return new ObjectMapper()
                .readTree(text("/META-INF/sbom/ampersheet.cdx.json"))
                .get("components");
    }

    @Test
    void everyLibraryInTheJarHasItsLineAndItsTexts() throws IOException {
        List<Line> lines = lines();
        Set<String> unlisted = new TreeSet<>();
        Set<Line> used = new java.util.HashSet<>();
        for (JsonNode component : components()) {
            String group = component.get("group").asText();
            String artifact = component.get("name").asText();
            String version = component.get("version").asText();
            List<Line> its = lines.stream()
                    .filter(line -> line.holds(group, artifact, version))
                    .toList();
            used.addAll(its);
            if (its.isEmpty()) {
                unlisted.add(group + ":" + artifact + " " + version);
            }
        }
        assertEquals(Set.of(), unlisted, "in the jar and not in INDEX.txt");
        assertEquals(
                List.of(),
                lines.stream().filter(line -> !used.contains(line)).toList(),
                "in INDEX.txt and not in the jar");
    }

    @Test
    void everyTextThatIsNamedIsThere() throws IOException {
        for (Line line : lines()) {
            assertFalse(line.texts().isEmpty(), line.name());
            for (String file : line.texts()) {
                assertTrue(text(FOLDER + file).length() > 100, file);
            }
        }
        for (String font : List.of("DejaVu-LICENCE.txt", "Liberation-LICENCE.txt")) {
            assertTrue(text(FOLDER + font).length() > 1_000, font);
        }
    }

    @Test
    void theProgramsOwnLicenceIsApache2() throws IOException {
        assertTrue(text("/META-INF/LICENSE").contains("Apache License")
                && text("/META-INF/LICENSE").contains("Version 2.0"));
    }
}
