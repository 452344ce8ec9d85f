package ampersheet.sheet;

import java.util.ArrayList;
import java.util.List;

/** The numbers of one sheet, in the order shown. Whose it is, is not kept. */
public record ArchivedSheet(SheetId id, List<ArchivedProblem> problems) {
    public ArchivedSheet {
        problems = List.copyOf(problems);
    }

    /** @param places of its problems in the plan's list, as {@link ProblemSet#places} tells them */
    public static ArchivedSheet of(Sheet sheet, List<Integer> places) {
        List<ArchivedProblem> problems = new ArrayList<>();
        for (int i = 0; i < sheet.problems().size(); i++) {
            problems.add(ArchivedProblem.of(sheet.problems().get(i), places.get(i)));
        }
        return new ArchivedSheet(sheet.id(), problems);
    }

    boolean hasNumbersOf(ArchivedSheet other) {
        if (problems.size() != other.problems.size()) {
            return false;
        }
        for (int i = 0; i < problems.size(); i++) {
            if (!problems.get(i).hasNumbersOf(other.problems.get(i))) {
                return false;
            }
        }
        return true;
    }
}
