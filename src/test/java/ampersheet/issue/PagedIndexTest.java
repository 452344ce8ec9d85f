package ampersheet.issue;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import ampersheet.OnlyDeep;
import ampersheet.sheet.PlanReader;
import ampersheet.sheet.ProblemSet;
import ampersheet.sheet.Roster;
import ampersheet.sheet.SmallLibrary;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The index of a class that one page would be too long for. */
class PagedIndexTest {
    private static final Pattern LINK = Pattern.compile("href=\"((?:sheets|keys)/[^\"]+|index[^\"]*)\"");
    private static final Pattern FILE = Pattern.compile("(?m)^([^,]+),[0-9A-Z]{5}$");
    private static final int SEATS = 1_020;

    @TempDir
    private Path folder;

    private static Roster seats(int count) {
        return new Roster(IntStream.rangeClosed(1, count)
                .mapToObj(seat -> new Roster.Seat(seat, "Learner " + seat))
                .toList());
    }

    private void issue(int count) {
        ProblemSet set = ProblemSet.of(
                PlanReader.read(
                        "plan.yaml",
                        "title: Large\nseed: pages\nrepeats: allowed\nproblems:\n"
                                + "  - {template: current-limiting/indicator, given: {Vs: 12 V, Vf: 2 V}}\n"),
                SmallLibrary.open());
        Issue.issue(set, seats(count), folder, 2, new Issue.Besides(false, false), Output.Terms.NONE);
    }

    private List<String> links(String page) throws IOException {
        Matcher found = LINK.matcher(Files.readString(folder.resolve(page)));
        return found.results().map(one -> one.group(1)).toList();
    }

    @Test
    void pagesOfTheSameNamesThatSomebodyElseHasPutThereStay() throws IOException {
        Path theirs = Files.writeString(folder.resolve("index-1.html"), "<!DOCTYPE html><title>Theirs</title>");
        issue(2);
        issue(1);
        assertEquals("<!DOCTYPE html><title>Theirs</title>", Files.readString(theirs));
    }

    @Test
    @OnlyDeep
    void everySeatStandsOnOnePageToWhichTheFrontPageLeadsAndASmallerClassTakesThePagesAway() throws IOException {
        issue(SEATS);
        assertEquals(List.of("index-1.html", "index-2.html", "index-3.html"), links("index.html"));
        Set<String> linked = new TreeSet<>();
        for (String page : links("index.html")) {
            for (String link : links(page)) {
                assertTrue(Files.exists(folder.resolve(link)), link);
                assertTrue(link.startsWith("index") || linked.add(link), link + " stands twice");
            }
        }
        assertEquals(2 * SEATS, linked.size());
        assertEquals(
                List.of("index.html", "index-1.html", "index-3.html"),
                links("index-2.html").subList(0, 3));
        String front = Files.readString(folder.resolve("index.html"));
        assertTrue(front.contains("1020 sheets") && front.contains("501–1000"), front);
        assertTrue(
                Files.readString(folder.resolve("index-2.html")).matches("(?s).*>\\d+(?:, \\d+){9} and \\d+ more<.*"),
                "ten of many are named");
        assertTrue(front.contains("of 1020 learners"), "the front page tells how many share problems: " + front);
        assertTrue(Files.readString(folder.resolve("index-3.html")).contains("Seats 1001 to 1020 · page 3 of 3"));
        Set<String> told = FILE.matcher(Files.readString(folder.resolve("manifest.csv")))
                .results()
                .map(one -> one.group(1))
                .collect(Collectors.toCollection(TreeSet::new));
        assertTrue(told.containsAll(links("index.html")), "the manifest tells of the pages");
        assertEquals(4 * SEATS + 4 + 1, told.size(), "sheets and keys, pages, the archive");

        issue(12);
        assertFalse(Files.exists(folder.resolve("index-1.html")), "answers of another class must not lie about");
        assertFalse(Files.exists(folder.resolve("index-3.html")));
        assertEquals(24, links("index.html").size());
    }
}
