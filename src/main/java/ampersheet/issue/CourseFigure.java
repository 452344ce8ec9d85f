package ampersheet.issue;

import ampersheet.figure.Figure;
import ampersheet.figure.TimetableFigure;
import ampersheet.language.Language;
import ampersheet.sheet.Timetable;
import java.util.ArrayList;
import java.util.List;

/** The weeks of a course at a glance, in the course's language. */
public final class CourseFigure {
    private CourseFigure() {}

    public static Figure of(Timetable timetable) {
        return of(timetable, TimetableFigure.Names.BESIDE, "timetable");
    }

    /** The same for a narrow screen. */
    public static Figure narrow(Timetable timetable) {
        return of(timetable, TimetableFigure.Names.ABOVE, "timetable-narrow");
    }

    private static Figure of(Timetable timetable, TimetableFigure.Names names, String idPrefix) {
        Language language = timetable.course().common().language();
        List<String> weeks = new ArrayList<>();
        for (int number = 1; number <= timetable.size(); number++) {
            String week = Integer.toString(number);
            weeks.add(timetable.size() > names.few() ? week : language.say("figure.timetable.week", "week", week));
        }
        return TimetableFigure.draw(
                language.say(
                        "figure.timetable.title",
                        "course",
                        timetable.course().common().title()),
                weeks,
                timetable.skills().stream()
                        .map(skill -> new TimetableFigure.Row(skill.skill(), skill.weeks()))
                        .toList(),
                names,
                idPrefix,
                language);
    }
}
