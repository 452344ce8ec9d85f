package ampersheet.desk;

import static ampersheet.source.Told.say;

import ampersheet.diagnostic.DiagnosticException;
import ampersheet.diagnostic.Printable;
import ampersheet.issue.CourseFolder;
import ampersheet.sheet.Secret;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.Consumer;
import java.util.function.Function;
import java.util.function.LongSupplier;

/**
 * A course folder in the browser of whoever sits at this machine. It keeps nothing of its own but what is done and
 * undone while it is open: all there is stands in the files.
 */
public final class Desk implements AutoCloseable {
    /** Ports that no service has for its own, 49152 to 65535 (RFC 6335, section 6). */
    private static final int FIRST_OF_NO_SERVICE = 49_152;

    private static final int OF_NO_SERVICE = 16_384;

    private final DeskServer server;
    private final Ending ending;
    private final Gate gate;
    private final Work work;
    private final Path folder;
    private final Alone alone;

    /**
     * How the desk is to run.
     *
     * @param port 0 for the folder's own, or any that is free
     * @param nanos a clock that only goes forward
     * @param failures told of what failed where it should not, in a line
     */
    public record Settings(int port, Limits limits, LongSupplier nanos, Consumer<String> failures) {}

    private Desk(DeskServer server, Gate gate, Work work, Ending ending, Path folder, Alone alone) {
        this.ending = ending;
        this.server = server;
        this.gate = gate;
        this.work = work;
        this.folder = folder;
        this.alone = alone;
    }

    /**
     * Opens the desk over a folder, which is made if need be.
     *
     * @throws IOException if the folder cannot be made, or the port is taken
     */
    public static Desk open(Path folder, Settings settings) throws IOException {
        Files.createDirectories(folder);
        CourseFolder files = new CourseFolder(folder.toRealPath());
        DeskServer server = settings.port() == 0 ? listening(files.folder()) : DeskServer.open(settings.port());
        String session = Secret.drawn().characters() + Secret.drawn().characters();
        Gate gate = new Gate(Secret.drawn().characters() + Secret.drawn().characters(), session, server.port());
        Work work = new Work(settings.nanos());
        Alone alone = new Alone(files.folder());
        Places places = new Places(files, work, alone, settings.failures());
        server.start(gate, places, settings.limits(), settings.nanos());
        Thread warm = new Thread(places::warm, "warm");
        warm.setDaemon(true);
        warm.start();
        return new Desk(server, gate, work, places.ending, files.folder(), alone);
    }

    /**
     * Where a folder's desk was before, so that a page that is still open, with what was typed on it, finds the desk
     * that was started again.
     */
    private static DeskServer listening(Path folder) throws IOException {
        try {
            return DeskServer.open(
                    FIRST_OF_NO_SERVICE + Math.floorMod(folder.toString().hashCode(), OF_NO_SERVICE));
        } catch (IOException taken) {
            return DeskServer.open(0);
        }
    }

    /** With which a browser opens it; it holds a secret. */
    public String address() {
        return gate.address();
    }

    /** The course, from the root of the disk. */
    public Path folder() {
        return folder;
    }

    /** Whether no other desk is open over the same folder. */
    public boolean isAlone() {
        return alone.isSo();
    }

    /** Returns once somebody has ended it at one of its pages; it still has to be closed. */
    public void awaitEnd() throws InterruptedException {
        ending.await();
    }

    @Override
    public void close() throws IOException {
        try {
            server.close();
        } finally {
            work.close();
            alone.close();
        }
    }

    /** Who answers which address. */
    private static final class Places implements DeskServer.Desk {
        private static final String MADE = "/made/";

        private final OwnFiles own = new OwnFiles();
        private final Frame frame;
        private final Ending ending;
        private final Course course;
        private final Consumer<String> failures;
        private final Map<String, Function<Call, Reply>> read;
        private final Map<String, Function<Call, Reply>> change;
        private final List<String> quick = List.of(
                "/lessons",
                "/set",
                "/weeks/undo",
                "/class",
                "/give-out",
                "/give-out/progress",
                "/give-out/stop",
                "/take-in/files",
                "/take-in/decide",
                "/class/paste",
                "/parts",
                "/parts/undo",
                "/help",
                "/help/guide",
                "/end");

        Places(CourseFolder files, Work work, Alone alone, Consumer<String> failures) {
            this.failures = failures;
            this.course = new Course(files);
            CourseSet set = new CourseSet(course);
            this.frame = new Frame(set, alone, own);
            this.ending = new Ending(frame, work, files.folder());
            CourseWeeks timetable = new CourseWeeks(set);
            LessonsPlace lessons = new LessonsPlace(set, frame);
            SetPlace sheet = new SetPlace(set, frame);
            SetEdits edits = new SetEdits(set, sheet, frame);
            ClassPlace class_ = new ClassPlace(set, frame);
            PartsPlace parts = new PartsPlace(set, frame);
            GiveOutPlace out = new GiveOutPlace(set, frame, work);
            GivenOut given = new GivenOut(set);
            this.read = new TreeMap<>(Map.ofEntries(
                    Map.entry("/", call -> Reply.to("/lessons")),
                    Map.entry("/lessons", lessons::list),
                    Map.entry("/lesson", lessons::lesson),
                    Map.entry("/set", sheet::show),
                    Map.entry("/set/sheet", sheet::sheet),
                    Map.entry("/set/paper", sheet::paper),
                    Map.entry("/set/print", sheet::print),
                    Map.entry("/class", class_::show),
                    Map.entry("/parts", parts::show),
                    Map.entry("/give-out", out::show),
                    Map.entry("/give-out/progress", out::progress),
                    Map.entry("/help", call -> frame.page(Reply.FINE, call, "help", "help", Map.of())),
                    Map.entry("/help/guide", call -> frame.page(Reply.FINE, call, "help", "guide", Guide.page()))));
            this.change = new TreeMap<>(Map.ofEntries(
                    Map.entry("/set/start", call -> edits.start()),
                    Map.entry("/set/add", edits::add),
                    Map.entry("/set/move", edits::move),
                    Map.entry("/set/remove", edits::remove),
                    Map.entry("/set/entry", edits::entry),
                    Map.entry("/set/heading", edits::heading),
                    Map.entry("/set/logo", edits::logo),
                    Map.entry("/set/logo/remove", edits::noLogo),
                    Map.entry("/set/policy", edits::policy),
                    Map.entry("/set/text", edits::text),
                    Map.entry("/set/undo", call -> edits.undo()),
                    Map.entry("/class/paste", class_::paste),
                    Map.entry("/class/undo", call -> class_.undo()),
                    Map.entry("/parts", parts::keep),
                    Map.entry("/parts/undo", call -> parts.undo()),
                    Map.entry("/parts/use", parts::use),
                    Map.entry("/give-out/font", out::takeFont),
                    Map.entry("/give-out/font/remove", call -> out.removeFont()),
                    Map.entry("/give-out/make", out::make),
                    Map.entry("/give-out/again", out::again),
                    Map.entry("/give-out/stop", call -> out.stop()),
                    Map.entry("/end", call -> ending.end())));
            weeks(set, timetable, given, work);
            takeIn(new TakeInPlace(set, timetable, given, frame, work));
        }

        private void takeIn(TakeInPlace in) {
            read.put("/take-in", in::show);
            change.putAll(Map.of(
                    "/take-in/files", in::receive,
                    "/take-in/times", in::times,
                    "/take-in/choose", in::choose,
                    "/take-in/mark", in::mark,
                    "/take-in/decide", in::decide,
                    "/take-in/undo", call -> in.undo()));
        }

        private void weeks(CourseSet set, CourseWeeks timetable, GivenOut given, Work work) {
            WeeksPlace weeks = new WeeksPlace(set, timetable, given, frame);
            WeekPlace week = new WeekPlace(set, timetable, given, frame, work);
            read.putAll(Map.of(
                    "/weeks", weeks::show,
                    "/weeks/forecast", weeks::forecast,
                    "/weeks/week", week::show,
                    "/weeks/sheet", week::sheet,
                    "/weeks/print", week::print));
            change.putAll(Map.of(
                    "/weeks/start", weeks::start,
                    "/weeks/text", weeks::text,
                    "/weeks/undo", call -> weeks.undo(),
                    "/weeks/about", week::about,
                    "/weeks/make", week::make,
                    "/weeks/again", week::again));
        }

        /** Does what the first page needs before it is asked for. */
        void warm() {
            try {
                answer(new Call(false, "/lessons", Form.NONE, Form.NONE, List.of(), false));
            } catch (RuntimeException failure) {
                failed(failure);
            }
        }

        @Override
        public void sent() {
            ending.sent();
        }

        @Override
        public boolean computes(Call call) {
            boolean known = (call.post() ? change : read).containsKey(call.path());
            return known && !quick.contains(call.path());
        }

        @Override
        public Reply answer(Call call) {
            try {
                Function<Call, Reply> place = (call.post() ? change : read).get(call.path());
                if (place != null) {
                    return place.apply(call);
                }
                return call.post() ? Reply.unknown() : file(call.path());
            } catch (DiagnosticException unfit) {
                String place = call.path().startsWith(WeeksPlace.HERE) ? WeeksPlace.PLACE : "help";
                return frame.unfit(call, place, say("desk.unfit"), unfit);
            }
        }

        private Reply file(String path) {
            if (path.startsWith("/files/")) {
                return own.named(path.substring("/files/".length()));
            }
            if (path.startsWith(MADE)) {
                List<String> steps = Arrays.asList(path.substring(MADE.length()).split("/", -1));
                Optional<Path> made = course.made(steps);
                return made.map(this::made).orElseGet(Reply::unknown);
            }
            return Reply.unknown();
        }

        private Reply made(Path file) {
            String name = file.getFileName().toString();
            byte[] bytes = course.bytes(file);
            if (name.endsWith(".html") && !MadeThings.acts(course.shown(file))) {
                return Reply.made(bytes);
            }
            return name.endsWith(".pdf") ? Reply.shown("application/pdf", bytes) : Reply.download(name, bytes);
        }

        @Override
        public Reply failed(Throwable failure) {
            failures.accept(Printable.line(failure.toString()));
            return Reply.plain(Reply.FAILED, say("desk.failed"));
        }
    }
}
