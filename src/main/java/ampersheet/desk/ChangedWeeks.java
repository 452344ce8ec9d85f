package ampersheet.desk;

import static ampersheet.source.Told.count;

import ampersheet.diagnostic.DiagnosticException;
import ampersheet.sheet.ArchivedClass;
import ampersheet.sheet.ProblemSet;
import ampersheet.sheet.SheetId;
import ampersheet.source.Told;
import java.util.ArrayList;
import java.util.List;

/**
 * Weeks that were made before, and would come out otherwise now.
 *
 * @param otherwise with other problems or numbers
 * @param renamed with the same ones under other sheet IDs
 */
record ChangedWeeks(List<Integer> otherwise, List<Integer> renamed) {
    ChangedWeeks {
        otherwise = List.copyOf(otherwise);
        renamed = List.copyOf(renamed);
    }

    /** @param made all that was given out */
    static ChangedWeeks of(List<GivenOut.Sheets> made, CourseWeeks weeks) {
        List<Integer> otherwise = new ArrayList<>();
        List<Integer> renamed = new ArrayList<>();
        for (int week = 1; week <= weeks.timetable().size(); week++) {
            int number = week;
            List<GivenOut.Sheets> before =
                    made.stream().filter(one -> one.week().orElse(0) == number).toList();
            if (before.isEmpty()) {
                continue;
            }
            ProblemSet now = weeks.sheets(week);
            String code = now.id(1).set();
            if (before.stream().anyMatch(one -> one.set().equals(code))) {
                continue;
            }
            (before.stream().anyMatch(one -> hasProblemsOf(now, code, one)) ? renamed : otherwise).add(week);
        }
        return new ChangedWeeks(otherwise, renamed);
    }

    private static boolean hasProblemsOf(ProblemSet now, String code, GivenOut.Sheets before) {
        try {
            return SheetId.haveTemplatesAlike(code, before.set())
                    && now.hasProblemsOf(ArchivedClass.plan(before.archive()));
        } catch (DiagnosticException unfit) {
            return false; // whoever marks by it is told why
        }
    }

    List<String> told() {
        List<String> told = new ArrayList<>();
        tell("desk.weeks.otherwise", otherwise, told);
        tell("desk.weeks.renamed", renamed, told);
        return told;
    }

    private static void tell(String key, List<Integer> weeks, List<String> told) {
        if (!weeks.isEmpty()) {
            told.add(count(
                    key,
                    weeks.size(),
                    "weeks",
                    Told.all(weeks.stream().map(String::valueOf).toList())));
        }
    }
}
