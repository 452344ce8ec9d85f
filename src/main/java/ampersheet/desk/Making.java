package ampersheet.desk;

import static ampersheet.source.Told.count;
import static ampersheet.source.Told.say;

import ampersheet.diagnostic.Diagnostic;
import ampersheet.diagnostic.DiagnosticException;
import ampersheet.diagnostic.Place;
import ampersheet.issue.BenchCardFile;
import ampersheet.issue.CourseFolder;
import ampersheet.issue.Exchange;
import ampersheet.issue.Handouts;
import ampersheet.issue.Issue;
import ampersheet.issue.Output;
import ampersheet.issue.PaperCount;
import ampersheet.issue.PracticeFile;
import ampersheet.issue.Progress;
import ampersheet.render.pdf.Profile;
import ampersheet.render.qti.QtiVersion;
import ampersheet.sheet.Document;
import ampersheet.sheet.ProblemSet;
import ampersheet.sheet.Roster;
import ampersheet.source.Languages;
import ampersheet.source.Told;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.TreeMap;
import java.util.concurrent.ConcurrentSkipListMap;
import java.util.stream.Stream;

/** What the forms of this place ask for, each as a task with its title. */
final class Making {
    static final int USUAL_COPIES = 12;
    static final int PRACTICE_VARIANTS = 12;
    static final int EXCHANGE_VARIANTS = 10;
    private static final int MOST_COPIES = 9_999;
    private static final int MOST_VARIANTS = 200;
    private static final int MOST_COUNTED = 50;

    private final CourseSet set;
    private final Source source;
    private final MadeThings things;
    /** The forms as they were sent last. */
    private final Map<String, Form> asked = new ConcurrentSkipListMap<>();

    /** Paper that was counted, by all on which it depends. */
    private final Map<String, List<String>> counted = Collections.synchronizedMap(new LinkedHashMap<>());

    Making(CourseSet set, Source source) {
        this.set = set;
        this.source = source;
        this.things = new MadeThings(set.course(), source);
    }

    MadeThings things() {
        return things;
    }

    /** Keeps in mind how something was asked for. */
    void asked(What what, Form form) {
        asked.put(what.form(), form);
    }

    /** What was chosen last, so that whoever counts paper first does not choose again. */
    Map<String, Object> chosen() {
        Form paper = asked.getOrDefault(What.HANDOUT.form(), Form.NONE);
        Form pages = asked.getOrDefault(What.PAGES.form(), Form.NONE);
        Form practice = asked.getOrDefault(What.PRACTICE.form(), Form.NONE);
        Form exchange = asked.getOrDefault(What.EXCHANGE.form(), Form.NONE);
        return Pages.values(
                "copies", copies(paper).orElse(USUAL_COPIES),
                "withoutNames", paper.text("who").equals("copies"),
                "profile", paper.text("profile"),
                "keys", paper.text("keys"),
                "paper", paper.text("paper"),
                "shared", paper.has("shared"),
                "noHost", paper.has("no-host"),
                "noLetters", paper.has("no-letters"),
                "homework", pages.has("homework"),
                "pdf", pages.has("pdf"),
                "drawings", pages.has("drawings"),
                "practice", variants(practice, PRACTICE_VARIANTS),
                "exchange", variants(exchange, EXCHANGE_VARIANTS),
                "version", exchange.text("version"));
    }

    /** Nothing may be written through a link out of the course. */
    void requireFolders() {
        CourseFolder.Made made = source.made();
        Path pages = made.pages();
        for (Path folder : List.of(
                set.course().files().made(),
                made.folder(),
                pages,
                pages.resolve("sheets"),
                pages.resolve("keys"),
                pages.resolve("homework"))) {
            set.course().requireFolder(folder);
        }
    }

    /** What a button asks for. */
    enum What {
        HANDOUT("pdf", "paper"),
        COUNT("count", "paper"),
        CARDS("cards", "paper"),
        PAGES("pages", "pages"),
        PRACTICE("practice", "practice"),
        EXCHANGE("exchange", "exchange");

        private final String word;
        private final String form;

        What(String word, String form) {
            this.word = word;
            this.form = form;
        }

        static Optional<What> of(String word) {
            return Stream.of(values()).filter(what -> what.word.equals(word)).findFirst();
        }

        /** By which its button is known. */
        String word() {
            return word;
        }

        /** In which it is asked for. */
        String form() {
            return form;
        }
    }

    /**
     * Something that can be begun.
     *
     * @param from what it is made from
     * @param known what would come of it, where nothing needs to be done to tell it
     */
    record Begun(What what, String title, Ingredients from, Work.Task task, Optional<List<String>> known) {}

    /** @throws DiagnosticException if plan, class or parts do not fit */
    Begun begun(What what, Form form) {
        return switch (what) {
            case COUNT -> counting(form);
            case HANDOUT, CARDS -> printing(what, form);
            case PAGES -> {
                Roster roster = classList();
                ProblemSet of = source.sheets();
                Issue.Besides besides = new Issue.Besides(
                        form.has("homework"),
                        form.has("pdf"),
                        form.has("drawings"),
                        form.has("pdf") ? set.font() : Optional.empty());
                yield noted(
                        what,
                        MadeThings.Thing.PAGES,
                        say("desk.make.pages"),
                        ingredients(of),
                        progress -> pages(of, roster, besides, progress));
            }
            case PRACTICE -> {
                ProblemSet of = source.whateverTheParts();
                int variants = variants(form, PRACTICE_VARIANTS);
                yield noted(
                        what,
                        MadeThings.Thing.PRACTICE,
                        say("desk.make.practice"),
                        ingredients(of).forNobodyInParticular(),
                        progress -> practice(of, variants, progress));
            }
            case EXCHANGE -> {
                ProblemSet of = source.whateverTheParts();
                yield noted(
                        what,
                        MadeThings.Thing.EXCHANGE,
                        say("desk.make.exchange"),
                        ingredients(of).forNobodyInParticular(),
                        progress -> exchange(of, form, progress));
            }
        };
    }

    private Begun printing(What what, Form form) {
        Roster roster = learnersOf(form);
        ProblemSet of = source.sheets();
        Handouts.Wish wish = wish(form, of);
        Ingredients from = ingredients(form, of);
        return what == What.CARDS
                ? noted(
                        what,
                        MadeThings.Thing.CARDS,
                        say("desk.make.cards"),
                        from,
                        progress -> cards(of, roster, wish, progress))
                : noted(
                        what,
                        MadeThings.Thing.HANDOUT,
                        say("desk.make.handout"),
                        from,
                        progress -> handout(of, roster, wish, progress));
    }

    private Begun counting(Form form) {
        Roster roster = learnersOf(form);
        ProblemSet of = source.sheets();
        Handouts.Wish wish = wish(form, of);
        Ingredients from = ingredients(form, of);
        Map<String, List<String>> fields = new TreeMap<>(form.fields());
        fields.remove("what");
        String on = from.versions() + " " + fields;
        return new Begun(
                What.COUNT,
                say("desk.make.count"),
                from,
                progress -> {
                    List<String> told = paper(of, roster, wish, progress);
                    counted.put(on, told);
                    if (counted.size() > MOST_COUNTED) {
                        counted.clear();
                    }
                    return told;
                },
                Optional.ofNullable(counted.get(on)));
    }

    /** The same, and it is noted down from what it was made. */
    private Begun noted(What what, MadeThings.Thing thing, String title, Ingredients from, Work.Task task) {
        return new Begun(
                what,
                title,
                from,
                progress -> {
                    List<String> told = new ArrayList<>(task.run(progress));
                    things.made(thing, from);
                    told.add(say(
                            "desk.made.lies", "path", thing.place(source.made()).toString()));
                    return told;
                },
                Optional.empty());
    }

    private Ingredients ingredients(Form form, ProblemSet of) {
        return isForTheClass(form) ? ingredients(of) : ingredients(of).withoutTheClass();
    }

    /** Of what was asked for as it was read, whatever was written since. */
    private Ingredients ingredients(ProblemSet of) {
        return source.ingredients().of(set.course().shown(source.file()), of);
    }

    private boolean isForTheClass(Form form) {
        boolean hasClass = set.course().isThere(CourseFolder.CLASS);
        return copies(form).isEmpty() || hasClass && !form.text("who").equals("copies");
    }

    static OptionalInt copies(Form form) {
        int copies = form.number("copies", 1, MOST_COPIES, 0);
        return copies == 0 ? OptionalInt.empty() : OptionalInt.of(copies);
    }

    static int variants(Form form, int usual) {
        return form.number("variants", 1, MOST_VARIANTS, usual);
    }

    private Roster classList() {
        return set.roster()
                .orElseThrow(() -> new DiagnosticException(Diagnostic.error(
                        Place.inFile(CourseFolder.CLASS),
                        say("desk.class.missing"),
                        say("desk.class.missing.expected"),
                        say("desk.class.missing.next"))));
    }

    private Roster learnersOf(Form form) {
        return isForTheClass(form)
                ? classList()
                : Seats.withoutNames(copies(form).orElseThrow());
    }

    private Handouts.Wish wish(Form form, ProblemSet of) {
        Document.Paper paper = form.text("paper").equals("letter")
                ? Document.Paper.LETTER
                : form.text("paper").equals("a4")
                        ? Document.Paper.A4
                        : of.plan().paper();
        boolean folded = form.text("profile").equals("booklet");
        return new Handouts.Wish(
                folded ? paper.folded() : paper,
                choice(Profile.values(), form.text("profile"), Profile.COMPACT),
                choice(Handouts.Keys.values(), form.text("keys"), Handouts.Keys.GRID),
                !form.has("no-letters"),
                !form.has("no-host"),
                form.has("shared"),
                set.font());
    }

    private static <E extends Enum<E>> E choice(E[] values, String word, E otherwise) {
        for (E value : values) {
            if (value.name().toLowerCase(Locale.ROOT).equals(word)) {
                return value;
            }
        }
        return otherwise;
    }

    private Output.Terms terms(Progress progress) {
        CourseFolder files = set.course().files();
        return new Output.Terms(
                        List.of(source.file(), files.roster(), files.parts(), files.font()), false, false, place -> {})
                .watchedBy(progress);
    }

    private List<String> paper(ProblemSet of, Roster roster, Handouts.Wish wish, Progress progress) {
        List<String> told = new ArrayList<>();
        Handouts.print(of, roster, source.made().handout(), wish, terms(progress), paper -> {
            told.add(paper.sentence(Languages.ENGLISH));
            saving(paper).ifPresent(told::add);
            if (wish.checkLetters()) {
                told.add(letters(of, roster, wish, paper));
            }
            return false;
        });
        return told;
    }

    /**
     * What the letters take: their table asks for room before the first problem. Told by the first sheet without it.
     */
    private static String letters(ProblemSet of, Roster roster, Handouts.Wish wish, PaperCount paper) {
        Roster first = Seats.withoutNames(roster.seats().subList(0, 1));
        int with = paper.least() == paper.most()
                ? paper.most()
                : Handouts.count(of, first, wish.onlySheets(true)).most();
        int without = Handouts.count(of, first, wish.onlySheets(false)).most();
        return without < with
                ? count("desk.paper.letters", without, "sides", Integer.toString(with))
                : say("desk.paper.letters.none");
    }

    /** What would take less paper, by what the form calls it. */
    private static Optional<String> saving(PaperCount paper) {
        if (paper.compact().filter(sides -> sides < paper.most()).isPresent()) {
            return Optional.of(count("desk.paper.compact", paper.compact().get()));
        }
        return paper.keys() > 2 && paper.keys() >= paper.sheets()
                ? Optional.of(say("desk.paper.grid", "sides", Integer.toString(paper.keys())))
                : Optional.empty();
    }

    private List<String> handout(ProblemSet of, Roster roster, Handouts.Wish wish, Progress progress) {
        Path out = source.made().handout();
        List<String> told = new ArrayList<>();
        Handouts.Printed printed = Handouts.print(of, roster, out, wish, terms(progress), paper -> {
            told.add(paper.sentence(Languages.ENGLISH));
            return true;
        });
        told.add(say("desk.made.print", "files", names(printed.files())));
        told.add(say("desk.made.grid", "grid", set.course().shown(printed.grid())));
        told.add(say("desk.made.archive", "archive", set.course().shown(printed.archive())));
        printed.left()
                .ifPresent(left ->
                        told.add(say("desk.made.left", "file", set.course().shown(left))));
        return told;
    }

    private String names(List<Path> files) {
        return Told.all(files.stream().map(file -> set.course().shown(file)).toList());
    }

    private List<String> cards(ProblemSet of, Roster roster, Handouts.Wish wish, Progress progress) {
        BenchCardFile.Printed printed =
                BenchCardFile.print(of, roster, source.made().cards(), wish, terms(progress));
        List<String> told = new ArrayList<>();
        told.add(count(
                "desk.made.cards",
                printed.cards(),
                "file",
                set.course().shown(source.made().cards())));
        printed.left()
                .forEach(one ->
                        told.add(say("desk.made.cards.none", "template", one.template(), "because", one.because())));
        return told;
    }

    private List<String> pages(ProblemSet of, Roster roster, Issue.Besides besides, Progress progress) {
        Issue.Issued issued = Issue.issue(
                of,
                roster,
                source.made().pages(),
                Math.max(1, Runtime.getRuntime().availableProcessors() - 1),
                besides,
                terms(progress));
        List<String> told = new ArrayList<>();
        String folder = set.course().shown(source.made().pages());
        told.add(count("desk.made.pages", issued.sheets(), "folder", folder));
        told.add(besides.homework() ? say("desk.made.pages.homework") : say("desk.made.pages.sheets"));
        if (issued.left().files() > 0) {
            told.add(count("desk.made.pages.left", issued.left().files(), "folder", folder));
        }
        return told;
    }

    private List<String> practice(ProblemSet of, int variants, Progress progress) {
        PracticeFile.Written written =
                PracticeFile.write(of, variants, source.made().practice(), terms(progress));
        return List.of(count(
                "desk.made.practice",
                written.skills(),
                "file",
                set.course().shown(source.made().practice())));
    }

    private List<String> exchange(ProblemSet of, Form form, Progress progress) {
        Exchange.Packed packed = Exchange.pack(
                of.plan(),
                set.library(),
                variants(form, EXCHANGE_VARIANTS),
                form.text("version").equals("2.1") ? QtiVersion.V2_1 : QtiVersion.V3_0,
                source.made().exchange(),
                terms(progress));
        List<String> told = new ArrayList<>();
        told.add(count(
                "desk.made.exchange",
                packed.items(),
                "file",
                set.course().shown(source.made().exchange())));
        packed.leftOut().forEach(what -> told.add(say("desk.made.exchange.left", "what", what)));
        return told;
    }
}
