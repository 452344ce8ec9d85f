package ampersheet.marking;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import ampersheet.sheet.PlanReader;
import ampersheet.sheet.ProblemSet;
import ampersheet.sheet.Roster;
import ampersheet.sheet.RosterReader;
import ampersheet.sheet.SheetMaker;
import ampersheet.sheet.SmallLibrary;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class NameSpellingsTest {
    private static final NameSpellings NAMES = new NameSpellings(
            List.of("Zoë Müller-Łukasz", "Ada Lovett", "Seán O'Brien", "Jürgen Strauß", "İpek Çelik", "王小明", "Bo Min"));

    @Test
    void aNameIsFoundHoweverItIsSpelled() {
        for (String typed : List.of(
                "ZOË",
                "zoe",
                "Zoe\u0308",
                "MUELLER",
                "muller",
                "Mu\u0308ller",
                "lukasz",
                "ŁUKASZ",
                "müllerlukasz",
                "Mueller Lukasz",
                "Müller\u2010Łukasz",
                "Lovett, Ada",
                "lovett ada",
                "AdaLovett",
                "adalovett1",
                "A. Lovett",
                "A.L.",
                "L. A.",
                "A L",
                "AL",
                "LA",
                "L-o-v-e-t-t",
                "l o v e t t",
                "SEAN",
                "seán obrien",
                "O’Brien",
                "o brien",
                "OBrien",
                "strauss",
                "STRAUSS",
                "Juergen",
                "Jurgen",
                "ipek",
                "IPEK",
                "Celik",
                "王小明",
                "4.7 kΩ (Ada)",
                "by lovett: 5 V",
                "_ada_",
                "ＡＤＡ",
                "A\u00ADda")) {
            assertTrue(NAMES.in(typed, ""), typed);
        }
    }

    @Test
    void whatIsNoNameStays() {
        for (String typed : List.of(
                "4.7 kΩ", "5 V", "12 mA", "don't know", "yes", "R = 4k7", "about 3 W", "lover", "al", "a", "")) {
            assertFalse(NAMES.in(typed, ""), typed);
        }
    }

    @Test
    void aUnitThatWasReadIsNoName() {
        assertTrue(NAMES.in("5 min", ""));
        assertFalse(NAMES.in("5 min", "5 min"));
        assertTrue(NAMES.in("Bo = 5 min", "5 min"));
    }

    @TempDir
    private Path folder;

    @Test
    void noSpellingOfANameLeavesTheFileOfNames() throws IOException {
        ProblemSet set = ProblemSet.of(PlanReader.read("plan.yaml", """
        title: Lanterns
        problems:
          - {template: current-limiting/indicator}
          - {template: voltage-dividers/plain-divider}
        """), SmallLibrary.open());
        Roster roster = RosterReader.read("class.csv", "seat,name\n1,Zoë Müller\n2,Bo\n");
        Files.writeString(
                folder.resolve("zoe.csv"),
                "sheet,question,answer\n" + set.id(1) + ",q1a,Muller = 1 kΩ\n" + set.id(1) + ",q1b,5 mueller\n"
                        + set.id(1) + ",q2a,ZOE\nzoë,q2a,mu\u0308ller\n" + set.id(1) + ",Z-o-ë,1\n",
                StandardCharsets.UTF_8);
        Map<String, String> files = new TreeMap<>();
        Marking.Marked marked = Marking.mark(
                new Marking.Task(
                        folder,
                        new SheetMaker(set),
                        Optional.empty(),
                        roster,
                        Optional.empty(),
                        Optional.empty(),
                        Optional.empty(),
                        Optional.empty(),
                        OtherSheets.NONE,
                        true),
                files::put);
        assertTrue(files.remove("names.csv").contains("Zoë Müller"));
        assertTrue(files.get("answers.csv").contains("\"(a name, withheld)\",1"), files + "\n" + marked.notes());
        StringBuilder all = new StringBuilder();
        files.forEach((name, text) -> all.append(text));
        marked.notes().forEach(note -> all.append(note.print()));
        String small = java.text.Normalizer.normalize(all, java.text.Normalizer.Form.NFD)
                .toLowerCase(Locale.ROOT)
                .replace("\u0308", "");
        for (String name : List.of("muller", "mueller", "zoe", "z-o-e")) {
            int at = small.indexOf(name);
            assertEquals(-1, at, () -> small.substring(Math.max(0, at - 200), at + 100));
        }
    }
}
