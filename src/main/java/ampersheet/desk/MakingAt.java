package ampersheet.desk;

import static ampersheet.source.Told.say;

import ampersheet.diagnostic.DiagnosticException;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;

/** What is made at one page: begun by its forms, told of there, and begun again. */
final class MakingAt {
    private final Page page;
    private final Source source;
    private final Making making;
    private final Frame frame;
    private final Work work;
    /** What {@link Work} tells of here, and what it told of before; both by their forms, so as to begin them again. */
    private volatile Optional<Asked> last = Optional.empty();

    private volatile Optional<Asked> lastMade = Optional.empty();

    /** @param from what it was made from */
    private record Asked(Making.What what, Ingredients from, Form form) {}

    /**
     * Where it is.
     *
     * @param place of the desk
     * @param path of the page, without the first slash
     * @param again to which its forms are sent that make something once more
     */
    record Page(String place, String path, String again) {}

    MakingAt(Page page, CourseSet set, Source source, Frame frame, Work work) {
        this.page = page;
        this.source = source;
        this.making = new Making(set, source);
        this.frame = frame;
        this.work = work;
    }

    /** What was chosen last, what lies there, what is being made or was made last, and what before. */
    Map<String, Object> values() {
        return Pages.values(
                "chosen", making.chosen(),
                "made", making.things().shown(),
                "work", told(work.standing(page.path()), last),
                "before", told(work.before(page.path()), lastMade));
    }

    /** What of the course has changed since that was made of which it is told, and what to do. */
    private Map<String, Object> told(Optional<Work.Standing> standing, Optional<Asked> asked) {
        Map<String, Object> values = GiveOutPlace.shown(standing);
        if (standing.filter(now -> now.state() == Work.State.DONE).isEmpty() || asked.isEmpty()) {
            return values;
        }
        Making.What what = asked.get().what();
        String changed = source.ingredients().toldSince(asked.get().from());
        if (!changed.isEmpty()) {
            boolean counted = what == Making.What.COUNT;
            values.put("older", say(counted ? "desk.older.count" : "desk.older", "files", changed));
            values.put("again", what.word());
            values.put("againAt", page.again());
        }
        return values;
    }

    /** Begins to make what was asked for. */
    Reply make(Call call) {
        return make(call, call.form());
    }

    /** Begins the same once more, by what stands in the course now. */
    Reply again(Call call) {
        Optional<Form> before = Stream.of(last, lastMade)
                .flatMap(Optional::stream)
                .filter(one -> one.what().word().equals(call.form().text("what")))
                .map(Asked::form)
                .findFirst();
        return before.map(form -> make(call, form)).orElseGet(() -> Reply.to("/" + page.path()));
    }

    private Reply make(Call call, Form form) {
        Optional<Making.What> what = Making.What.of(form.text("what"));
        if (what.isEmpty()) {
            return Reply.unknown();
        }
        making.asked(what.get(), form);
        try {
            making.requireFolders();
            Making.Begun begun = making.begun(what.get(), form);
            if (begun.known().isPresent()) {
                return frame.goOn("/" + page.path(), begun.known().get());
            }
            boolean first = what.get() == Making.What.COUNT
                    ? work.beginAside(begun.title(), page.path(), begun.task())
                    : work.begin(begun.title(), page.path(), begun.task());
            if (first) {
                last = Optional.of(new Asked(what.get(), begun.from(), form));
                lastMade = what.get() == Making.What.COUNT ? lastMade : last;
            }
            return frame.begun(first, "/" + page.path());
        } catch (DiagnosticException unfit) {
            return frame.unfit(call, page.place(), say("desk.make.unfit"), unfit);
        }
    }
}
