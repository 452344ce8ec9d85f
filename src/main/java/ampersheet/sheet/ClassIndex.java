package ampersheet.sheet;

import ampersheet.language.Language;
import ampersheet.problem.Caution;
import ampersheet.problem.Refusal;
import ampersheet.problem.Tally;
import ampersheet.sheet.Document.Block;
import ampersheet.sheet.Document.Cell;
import ampersheet.sheet.Document.Heading;
import ampersheet.sheet.Document.Kind;
import ampersheet.sheet.Document.Prose;
import ampersheet.sheet.Document.Table;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.SortedSet;
import java.util.TreeSet;

/** The instructor's page of a class: who has which sheet, all answers at a glance, and what was refused on the way. */
public final class ClassIndex {
    private ClassIndex() {}

    /**
     * One learner's line.
     *
     * @param links to what the learner has, and to the key
     * @param problems what the line says of each problem, in the order of the sheet
     * @param cautions ids of the boxes on the sheet
     */
    public record Line(
            Roster.Seat seat, SheetId id, List<Link> links, List<ProblemAnswers> problems, List<String> cautions) {
        public Line {
            links = List.copyOf(links);
            problems = List.copyOf(problems);
            cautions = List.copyOf(cautions);
        }
    }

    /** @param head of its column; @param href relative to the index */
    public record Link(String head, String text, String href) {}

    /** @param answers as a right answer is written, by the name of its question */
    public record ProblemAnswers(Map<String, String> answers) {
        public ProblemAnswers {
            answers = Collections.unmodifiableMap(new LinkedHashMap<>(answers));
        }
    }

    /** @param links of the same columns for every learner */
    public static Line line(Roster.Seat seat, Sheet sheet, List<Link> links) {
        List<ProblemAnswers> problems = new ArrayList<>();
        SortedSet<String> cautions = new TreeSet<>();
        for (SheetProblem problem : sheet.problems()) {
            cautions.addAll(problem.problem().cautions());
            Map<String, String> answers = new LinkedHashMap<>();
            problem.places().forEach(key -> answers.put(key.question(), ProblemText.answer(key, problem.writer())));
            problems.add(new ProblemAnswers(answers));
        }
        return new Line(seat, sheet.id(), links, problems, List.copyOf(cautions));
    }

    /** @param shared of the class whose lines these are */
    public static Document compose(
            ProblemSet set, List<Line> lines, SharedProblems shared, Map<String, Tally> tallies) {
        Language language = set.plan().language();
        List<Block> blocks = new ArrayList<>();
        blocks.add(new Prose(language.say("sheet.index.about")));
        blocks.add(classTable(lines, language));
        SharedRows here = SharedRows.of(lines, shared, Integer.MAX_VALUE, language);
        if (!here.rows().isEmpty()) {
            blocks.add(new Heading(2, language.say("sheet.index.shared.heading")));
            blocks.add(here.about(lines.size(), shared.nearest(), language));
            blocks.add(here.table("", language));
        }
        blocks.add(answersTable(lines, language));
        SortedSet<String> cautions = new TreeSet<>();
        lines.forEach(line -> cautions.addAll(line.cautions()));
        addEnd(set, lines.get(0).id(), cautions, tallies, blocks);
        return new Document(
                Kind.INDEX,
                language,
                set.plan().title(),
                language.count("sheet.head.sheets", lines.size()),
                "",
                set.plan().paper(),
                blocks);
    }

    /**
     * How sheets are checked, which cautions there are, and what was refused; @param any a sheet's ID, as an example
     */
    static void addEnd(
            ProblemSet set, SheetId any, SortedSet<String> cautions, Map<String, Tally> tallies, List<Block> blocks) {
        Language language = set.plan().language();
        blocks.add(new Heading(2, language.say("sheet.index.checking.heading")));
        blocks.add(new Prose(checking(set, any)));
        cautions(cautions, language).ifPresent(blocks::add);
        blocks.add(templatesTable(set, tallies));
        blocks.add(new Prose(language.say("sheet.index.draws.about")));
    }

    /** @param any a sheet's ID, as an example */
    private static String checking(ProblemSet set, SheetId any) {
        Language language = set.plan().language();
        boolean whole = set.plan().portion().isWhole();
        String with = whole
                ? " --plan " + set.plan().file()
                        + set.parts().map(bins -> " --parts " + bins.file()).orElse("")
                : " --issued-with keys/" + IssuedArchive.fileName(set);
        String about = whole
                ? language.say("sheet.index.checking.with-plan")
                : language.say("sheet.index.checking.with-archive");
        return about + "\n\n- `check " + any + with + "`\n- `key " + any + with + "`";
    }

    static Table classTable(List<Line> lines, Language language) {
        List<List<Cell>> rows = new ArrayList<>();
        for (Line line : lines) {
            List<Cell> row = new ArrayList<>(List.of(
                    text(Integer.toString(line.seat().number())),
                    text(line.seat().name()),
                    text(line.id().toString())));
            line.links().forEach(link -> row.add(new Cell(link.text(), link.href())));
            rows.add(row);
        }
        List<String> head = new ArrayList<>(List.of(
                language.say("sheet.index.seat"),
                language.say("sheet.index.name"),
                language.say("sheet.index.sheet-id")));
        lines.get(0).links().forEach(link -> head.add(link.head()));
        return new Table(language.say("sheet.index.class"), head, rows);
    }

    /** A column for each question: worked examples leave nothing open and have none. */
    static Table answersTable(List<Line> lines, Language language) {
        List<Set<String>> questions = new ArrayList<>();
        int longest =
                lines.stream().mapToInt(line -> line.problems().size()).max().orElse(0);
        for (int i = 0; i < longest; i++) {
            Set<String> asked = new LinkedHashSet<>();
            for (Line line : lines) {
                asked.addAll(answers(line, i).keySet());
            }
            questions.add(asked);
        }
        List<String> head = new ArrayList<>(List.of(language.say("sheet.index.seat")));
        questions.forEach(head::addAll);
        List<List<Cell>> rows = new ArrayList<>();
        for (Line line : lines) {
            List<Cell> row = new ArrayList<>(
                    List.of(text((line.seat().number() + " " + line.seat().name()).strip())));
            for (int i = 0; i < questions.size(); i++) {
                Map<String, String> answers = answers(line, i);
                questions.get(i).forEach(question -> row.add(text(answers.getOrDefault(question, "–"))));
            }
            rows.add(row);
        }
        return new Table(language.say("sheet.index.answers"), head, rows, true);
    }

    /**
     * Problems that more than one has.
     *
     * @param learners of those lines who have such a problem
     */
    record SharedRows(List<List<Cell>> rows, int learners) {
        /** @param mostNamed of the others who have it, as many are told by their numbers */
        static SharedRows of(List<Line> lines, SharedProblems shared, int mostNamed, Language language) {
            List<List<Cell>> rows = new ArrayList<>();
            int learners = 0;
            for (Line line : lines) {
                List<SharedProblems.Shared> here = shared.of(line.seat().number());
                learners += here.isEmpty() ? 0 : 1;
                here.forEach(one -> rows.add(List.of(
                        text((line.seat().number() + " " + line.seat().name()).strip()),
                        text(Integer.toString(one.number())),
                        text(numbers(one.seats(), mostNamed, language)))));
            }
            return new SharedRows(rows, learners);
        }

        private static String numbers(List<Integer> seats, int mostNamed, Language language) {
            int more = seats.size() - mostNamed;
            String named = String.join(
                    ", ", seats.stream().limit(mostNamed).map(String::valueOf).toList());
            return more <= 0
                    ? named
                    : language.say("sheet.index.shared.and-more", "seats", named, "more", Integer.toString(more));
        }

        Prose about(int ofLearners, long apart, Language language) {
            return about(ofLearners, learners, rows.size(), apart, language);
        }

        static Prose about(int ofLearners, int sharing, int problems, long apart, Language language) {
            return new Prose(language.say(
                    "sheet.index.shared.about",
                    "learners",
                    Integer.toString(ofLearners),
                    "sharing",
                    Integer.toString(sharing),
                    "problems",
                    Integer.toString(problems),
                    "apart",
                    Long.toString(apart)));
        }

        Table table(String caption, Language language) {
            return new Table(
                    caption,
                    List.of(
                            language.say("sheet.index.seat"),
                            language.say("sheet.index.shared.problem"),
                            language.say("sheet.index.shared.also-at")),
                    rows);
        }
    }

    /** Who takes a part of a plan again may have fewer problems than others. */
    private static Map<String, String> answers(Line line, int problem) {
        return problem < line.problems().size() ? line.problems().get(problem).answers() : Map.of();
    }

    private static Optional<Prose> cautions(SortedSet<String> ids, Language language) {
        List<String> headings = new ArrayList<>();
        for (Caution caution : Caution.values()) {
            if (ids.contains(caution.id())) {
                headings.add("- " + caution.heading(language));
            }
        }
        return headings.isEmpty()
                ? Optional.empty()
                : Optional.of(new Prose(language.say("sheet.index.cautions") + "\n\n" + String.join("\n", headings)));
    }

    private static Table templatesTable(ProblemSet set, Map<String, Tally> tallies) {
        List<List<Cell>> rows = new ArrayList<>();
        set.sources().forEach((source, template) -> {
            Tally tally = tallies.get(source);
            List<String> reasons = new ArrayList<>();
            for (Refusal reason : Refusal.values()) {
                if (tally.refused(reason) > 0) {
                    reasons.add(tally.refused(reason) + " × "
                            + reason.sentence(set.plan().language()));
                }
            }
            rows.add(List.of(
                    text(template.title()),
                    text(source),
                    text(Integer.toString(template.level())),
                    text(Long.toString(tally.tried())),
                    text(Long.toString(tally.refused())),
                    text(reasons.isEmpty() ? "–" : String.join("; ", reasons))));
        });
        Language language = set.plan().language();
        return new Table(
                language.say("sheet.index.draws"),
                List.of(
                        language.say("sheet.index.draws.problem"),
                        language.say("sheet.index.draws.template"),
                        language.say("sheet.index.draws.level"),
                        language.say("sheet.index.draws.tried"),
                        language.say("sheet.index.draws.refused"),
                        language.say("sheet.index.draws.why")),
                rows);
    }

    static Cell text(String text) {
        return new Cell(text, "");
    }
}
