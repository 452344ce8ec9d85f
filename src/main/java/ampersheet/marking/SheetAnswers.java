package ampersheet.marking;

import ampersheet.answer.AnswerKey;
import ampersheet.diagnostic.Diagnostic;
import ampersheet.sheet.Sheet;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeSet;

/**
 * Everything that came in for one sheet, one answer for each place. What came later counts, except that a blank never
 * takes the place of an answer, and a late answer never that of one in time.
 */
final class SheetAnswers {
    private final Sheet sheet;
    private final Map<String, AnswerKey> places = new LinkedHashMap<>();
    private final List<String> lost;
    private final Map<String, Taken> taken = new LinkedHashMap<>();
    private final List<SetAside> setAside = new ArrayList<>();

    record Taken(TypedAnswer answer, FileNote file) {}

    /** @param lost questions of the sheet to which no key is at hand */
    SheetAnswers(Sheet sheet, List<String> lost, List<Inbox.Incoming> incoming) {
        this.sheet = sheet;
        this.lost = List.copyOf(lost);
        sheet.places().forEach(key -> places.put(key.question(), key));
        incoming.forEach(this::take);
    }

    Optional<Taken> at(String question) {
        return Optional.ofNullable(taken.get(question));
    }

    /** As the judge takes them. */
    Map<String, String> typed() {
        Map<String, String> typed = new LinkedHashMap<>();
        taken.forEach((question, answer) -> typed.put(question, answer.answer().text()));
        return typed;
    }

    List<SetAside> setAside() {
        return List.copyOf(setAside);
    }

    private void take(Inbox.Incoming incoming) {
        FileNote file = incoming.file();
        TreeSet<String> seen = new TreeSet<>();
        TreeSet<String> replacedFiles = new TreeSet<>();
        boolean filledSheet = false;
        TypedAnswer first = incoming.answers().get(0);
        int replaced = 0;
        int repeated = 0;
        int taking = taken.size();
        for (TypedAnswer written : incoming.answers()) {
            AnswerKey key = places.get(written.question());
            if (key == null && lost.contains(written.question())) {
                if (!written.text().isEmpty()) {
                    setAside.add(new SetAside(written, "to be marked by hand"));
                }
                continue;
            }
            if (key == null) {
                file.add(noPlace(written));
                setAside.add(new SetAside(written, "no such place on the sheet"));
                continue;
            }
            TypedAnswer answer = written.withText(withoutPrintedUnit(written, key));
            filledSheet |= answer.onSheet();
            seen.add(answer.question());
            Taken before = taken.get(answer.question());
            if (answer.text().isEmpty()
                    || before == null
                    || before.answer().text().equals(answer.text())) {
                taken.putIfAbsent(answer.question(), new Taken(answer, file));
                if (before != null && before.answer().text().isEmpty()) {
                    taken.put(answer.question(), new Taken(answer, file));
                } else if (before != null && !answer.text().isEmpty()) {
                    repeated++;
                    replacedFiles.add(before.file().shown());
                }
            } else if (before.answer().text().isEmpty()) {
                taken.put(answer.question(), new Taken(answer, file));
            } else if (file.isLate() && !before.file().isLate()) {
                setAside.add(SetAside.late(answer));
                file.add(Diagnostic.warning(
                        answer.place(),
                        answer.question() + " was answered in time before, by "
                                + before.file().shown() + "; that counts",
                        "",
                        "Nothing, unless you want the late one to count."));
            } else {
                setAside.add(SetAside.replaced(
                        before.answer(), file.shown(), answer.place().line()));
                taken.put(answer.question(), new Taken(answer, file));
                replaced++;
                replacedFiles.add(before.file().shown());
            }
        }
        if (replaced > 0) {
            file.add(Diagnostic.warning(
                    first.place(),
                    "sheet " + sheet.id() + " is answered again: "
                            + Amounts.count(replaced, "answer takes", "answers take") + " the place of what stands in "
                            + String.join(", ", replacedFiles),
                    "",
                    "Nothing, if the later one is meant; set-aside.csv keeps the earlier."));
        }
        if (replaced == 0 && repeated > 0 && taken.size() == taking) {
            file.add(Diagnostic.warning(
                    first.place(),
                    "this says of sheet " + sheet.id() + " only what stands in " + String.join(", ", replacedFiles)
                            + " already",
                    "",
                    "Nothing: it counts once."));
        }
        if (filledSheet) {
            noteMissing(file, first, seen);
        }
    }

    private void noteMissing(FileNote file, TypedAnswer first, TreeSet<String> seen) {
        List<String> missing = places.keySet().stream()
                .filter(question -> !seen.contains(question))
                .toList();
        if (!missing.isEmpty()) {
            file.add(Diagnostic.error(
                    first.place(),
                    "this sheet has lost the " + (missing.size() == 1 ? "place " : "places ")
                            + String.join(", ", missing),
                    "every place for an answer, with the name of its question in front",
                    "Look whether the answer stands elsewhere in the file, put the name in front of it, "
                            + "and mark again."));
        }
    }

    private Diagnostic noPlace(TypedAnswer answer) {
        boolean known = sheet.problemWith(answer.question()).isPresent();
        List<String> names = List.copyOf(places.keySet());
        return Diagnostic.error(
                answer.place(),
                known
                        ? "the sheet shows " + answer.question() + " worked out and has no place for an answer to it"
                        : "the sheet has no such question",
                "one of " + String.join(", ", names),
                known
                        ? "Nothing, if it was copied from the example."
                        : "Correct the name of the question and mark again.");
    }

    /** On a filled-in sheet the unit may still stand behind the place. */
    private static String withoutPrintedUnit(TypedAnswer answer, AnswerKey key) {
        String unit = key.unit().symbol();
        String text = answer.text();
        if (!answer.onSheet() || !key.unitPrinted() || unit.isEmpty() || !text.endsWith(unit)) {
            return text;
        }
        String rest = text.substring(0, text.length() - unit.length());
        return rest.isBlank() || Character.isWhitespace(rest.charAt(rest.length() - 1)) ? rest.strip() : text;
    }
}
