package ampersheet.desk;

import static ampersheet.source.Told.say;

import ampersheet.diagnostic.DiagnosticException;
import ampersheet.issue.CourseFolder;
import ampersheet.render.pdf.ExtraFont;
import ampersheet.sheet.CoursePlan;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.IntStream;

/** What is handed out: made in the background, each file whole or not there. */
final class GiveOutPlace {
    private static final Pattern MADE = Pattern.compile("(?<![\\w/])made/(?:week-[0-9]+/)?[\\w.-]+\\.(?:pdf|html)\\b");
    private static final String PLACE = "give-out";
    private static final String HERE = "/" + PLACE;
    /** For the script of the page that saw it run: what else stands there is of before. */
    private static final String ENDED = "work-ended";

    private final CourseSet set;
    private final Frame frame;
    private final Work work;
    private final MakingAt making;

    GiveOutPlace(CourseSet set, Frame frame, Work work) {
        this.set = set;
        this.frame = frame;
        this.work = work;
        this.making = new MakingAt(new MakingAt.Page(PLACE, PLACE, HERE + "/again"), set, set.source(), frame, work);
    }

    Reply show(Call call) {
        CourseFolder files = set.course().files();
        Map<String, Object> values = Pages.values(
                "hasPlan", set.course().isThere(CourseFolder.PLAN),
                "untitled", set.isUntitled(),
                "hasClass", set.course().isThere(CourseFolder.CLASS),
                "keeping", PartsPlace.keeping(set),
                "hasFont", set.course().isThere(CourseFolder.FONT),
                "largest", Limits.USUAL.bodyBytes() >> 20,
                "learners", set.learners(),
                "weeks", weeksMade(files),
                "madePath", files.made().toString());
        values.putAll(making.values());
        return frame.page(Reply.FINE, call, PLACE, PLACE, values);
    }

    /** Weeks of which something was made. */
    private List<Integer> weeksMade(CourseFolder files) {
        return IntStream.rangeClosed(1, CoursePlan.MOST_WEEKS)
                .filter(week -> set.course().isFolder(files.ofWeek(week).folder()))
                .boxed()
                .toList();
    }

    static Map<String, Object> shown(Optional<Work.Standing> standing) {
        if (standing.isEmpty()) {
            return Pages.values("is", false);
        }
        Work.Standing now = standing.get();
        return Pages.values(
                "is", true,
                "title", now.title(),
                "place", now.place(),
                "state", now.state().name().toLowerCase(Locale.ROOT),
                "of", now.of(),
                "made", now.made(),
                "all", now.all(),
                "seconds", now.seconds(),
                "left", now.secondsLeft(),
                "aside", now.givesWay(),
                "told", now.told(),
                "open", named(now.told()),
                "faults", Frame.told(now.faults()));
    }

    /** Files that are told of and can be opened. */
    private static List<Map<String, Object>> named(List<String> told) {
        return told.stream()
                .flatMap(one -> MADE.matcher(one).results().map(MatchResult::group))
                .distinct()
                .map(MadeThings::link)
                .toList();
    }

    /** How far it is, for the script of any page. */
    Reply progress(Call call) {
        Optional<Work.Standing> standing = work.standing();
        if (call.part()) {
            Reply part = frame.part("work-part", Pages.values("work", shown(standing)));
            boolean runs = standing.filter(Work.Standing::isRunning).isPresent();
            return runs ? part : part.with("HX-Trigger-After-Swap", ENDED);
        }
        return Reply.to(standing.map(now -> "/" + now.place()).orElse(HERE));
    }

    Reply stop() {
        work.stop();
        return frame.goOn(
                work.standing().map(now -> "/" + now.place()).orElse(HERE), List.of(say("desk.work.stopping")));
    }

    Reply make(Call call) {
        return making.make(call);
    }

    Reply again(Call call) {
        return making.again(call);
    }

    /** Keeps a font in the course, if it is one. */
    Reply takeFont(Call call) {
        try {
            if (call.uploads().isEmpty()) {
                return frame.goOn(HERE, List.of(say("desk.file.unchosen")));
            }
            byte[] bytes = call.uploads().get(0).bytes();
            new ExtraFont(say("desk.file.sent"), bytes);
            set.course().writeBytes(CourseFolder.FONT, bytes);
            return frame.goOn(HERE, List.of(say("desk.font.kept")));
        } catch (DiagnosticException unfit) {
            return frame.unfit(call, PLACE, say("desk.font.unfit"), unfit);
        }
    }

    Reply removeFont() {
        set.course().removeFile(CourseFolder.FONT);
        return frame.goOn(HERE, List.of(say("desk.font.removed")));
    }
}
