package ampersheet.sheet;

import ampersheet.diagnostic.Place;
import ampersheet.figure.SymbolStyle;
import ampersheet.language.Language;
import ampersheet.problem.Difficulty;
import ampersheet.quantity.DecimalMarker;
import ampersheet.source.Yaml;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * What an instructor wants of every sheet, as written in a plan file; whether its templates exist is found out by
 * {@link ProblemSet}.
 *
 * @param file the plan's file as its reader knows it
 * @param written the file's text; empty for a plan that nobody wrote down
 * @param seeding where the seed comes from; another seed gives other numbers
 * @param unitsPrinted whether the unit stands behind the blank; otherwise the learner writes it
 * @param lettered beside which boxes of a handout letters stand to check answers by; no part of a sheet's ID
 * @param marking what answers earn; it changes no number and no sheet's ID
 * @param delivery how an exchange package is to be given; no part of a sheet's ID either
 * @param dealing whom variants go to
 * @param levels the levels that templates of a pool or a skill may have; empty: any
 * @param faultyLines whether a page to practise with has workings with one wrong line, too; nothing else knows of it
 * @param heading what else stands at the head of a sheet; it changes no number and no sheet's ID, either
 * @param portion which part of a course it is
 * @param parts the list to whose parts the sheets keep; what is in it goes into their IDs, its name does not
 */
public record Plan(
        String file,
        String written,
        String title,
        Seeding seeding,
        Document.Paper paper,
        Language language,
        SymbolStyle symbols,
        DecimalMarker decimal,
        boolean unitsPrinted,
        Lettered lettered,
        Order order,
        Dealing dealing,
        List<Integer> levels,
        List<Entry> entries,
        MarkingPolicy marking,
        Delivery delivery,
        boolean faultyLines,
        Heading heading,
        Portion portion,
        Optional<PartsList> parts) {
    public Plan {
        levels = List.copyOf(levels);
        entries = List.copyOf(entries);
    }

    /**
     * What an instructor writes over a sheet besides its title, each as she writes it; empty where she does not.
     *
     * @param instructions to learners, before those on how to answer
     * @param logo a picture over all of it
     */
    public record Heading(
            String school, String course, String date, String due, String instructions, Optional<Logo> logo) {
        public static final Heading NONE = new Heading("", "", "", "", "", Optional.empty());

        /** In the order in which they are read. */
        List<String> facts(Language language) {
            return Stream.of(
                            school,
                            course,
                            date,
                            due.isEmpty() ? "" : language.say("sheet.head.hand-in-by", "due", due))
                    .filter(fact -> !fact.isEmpty())
                    .toList();
        }
    }

    /**
     * A list of parts beside a plan.
     *
     * @param file its name, without a path
     * @param place for faults found when it is read
     */
    public record PartsList(String file, Place place) {}

    /** Any text; whoever knows it, and the plan, can make everybody's key. */
    public String seed() {
        return seeding.seed();
    }

    /** The same plan with a secret that was drawn for it. */
    public Plan drawnWith(Secret secret) {
        return with(new Seeding.Drawn(secret, title), unitsPrinted);
    }

    /** The same plan with the unit behind every blank. */
    public Plan printingUnits() {
        return with(seeding, true);
    }

    /** The same with other problems. */
    Plan holding(List<Entry> others) {
        return with(title, seeding, unitsPrinted, others, heading, portion, written);
    }

    /**
     * A part of something larger, with the seed of this plan.
     *
     * @param said keys that this plan has from a file, as they stand there
     */
    Plan part(String named, Heading head, List<Entry> problems, Portion which, List<Yaml.Entry> said) {
        Plan part = with(named, new Seeding.Named(seed()), unitsPrinted, problems, head, which, "");
        return part.with(named, part.seeding, unitsPrinted, problems, head, which, PlanWriter.write(part, said));
    }

    /** The same with another part of what it belongs to. */
    Plan with(Portion which) {
        return part(title, heading, entries, which, PlanWriter.said(this));
    }

    private Plan with(Seeding other, boolean withUnits) {
        return with(title, other, withUnits, entries, heading, portion, written);
    }

    private Plan with(
            String named,
            Seeding other,
            boolean withUnits,
            List<Entry> problems,
            Heading head,
            Portion which,
            String text) {
        return new Plan(
                file,
                text,
                named,
                other,
                paper,
                language,
                symbols,
                decimal,
                withUnits,
                lettered,
                order,
                dealing,
                levels,
                problems,
                marking,
                delivery,
                faultyLines,
                head,
                which,
                parts);
    }

    /**
     * How other platforms are to give the problems.
     *
     * @param attempts at each problem; {@link #UNLIMITED} for as many as a learner likes
     * @param feedback whether explanations and the working are shown
     */
    public record Delivery(int attempts, boolean feedback) {
        public static final int UNLIMITED = 0;
        /** Of a plan that says nothing: an explanation is worth more where it can be used at once. */
        public static final Delivery USUAL = new Delivery(3, true);
    }

    /** Where a plan's seed comes from. */
    public sealed interface Seeding {
        String seed();

        /** The plan names it. */
        record Named(String seed) implements Seeding {}

        /** The title stands in: it is printed on every sheet, so that such keys can be guessed. */
        record Title(String seed) implements Seeding {}

        /**
         * Drawn at random for a plan that names none. The title counts, too, so that another evening has other numbers.
         */
        record Drawn(Secret secret, String title) implements Seeding {
            @Override
            public String seed() {
                return secret.characters() + " " + title;
            }
        }
    }

    /** Beside which of the boxes that can have a check letter one stands. */
    public enum Lettered {
        ALL,
        /** The first, the third and so on, through the whole sheet. */
        EVERY_SECOND,
        NONE
    }

    /**
     * Whom variants go to.
     *
     * @param repeats whether problems come again once all of their template are used
     * @param examples whether worked examples are the same for everybody, and take no numbers from the problems
     * @param even whether everybody's problems together shall be about equally hard
     */
    public record Dealing(boolean repeats, boolean examples, boolean even) {
        /** Everybody has numbers of her own, as they come. */
        public static final Dealing USUAL = new Dealing(false, false, false);

        /** What a plan's fingerprint says of it; nothing of what changes no sheet. */
        List<String> stored() {
            List<String> stored = new ArrayList<>(examples ? List.of("examples", "shared") : List.of());
            if (even) {
                stored.addAll(List.of("even", Integer.toString(Difficulty.POINTS_VERSION)));
            }
            return stored;
        }
    }

    /** Those who take a sheet again have different problems, whose sums tell nothing. */
    boolean isDealtEvenly() {
        return dealing.even() && portion.only().isEmpty();
    }

    public enum Order {
        AS_LISTED,
        /** Interleaved, so that no two neighbours are of one family where that is possible. */
        MIXED
    }

    /**
     * One line of the plan's list of problems.
     *
     * @param count how many problems it gives, each with numbers of its own
     * @param example whether each problem follows a fully worked twin with other numbers
     * @param fixed givens that are the same for everybody, in the order written
     * @param place for faults found when its templates are looked up
     */
    public record Entry(Source source, int count, Support support, boolean example, List<Fixed> fixed, Place place) {
        public Entry {
            fixed = List.copyOf(fixed);
        }
    }

    /**
     * A given that is not drawn.
     *
     * @param value as written, such as {@code 12 V}
     */
    public record Fixed(String name, String value, Place place) {}

    /** Where a problem's template comes from. */
    public sealed interface Source {
        /** This template for everybody. */
        record One(String template, Place place) implements Source {}

        /** One of these, each for an equal share of the class. */
        record Pool(List<One> templates) implements Source {
            public Pool {
                templates = List.copyOf(templates);
            }
        }

        /** A pool of all templates that practise this skill. */
        record Skill(String skill, Place place) implements Source {}
    }
}
