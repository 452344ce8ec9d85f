package ampersheet.template;

import ampersheet.diagnostic.Place;
import ampersheet.formula.Spelling;
import ampersheet.source.Faults;
import ampersheet.template.StatementReader.Fault;
import ampersheet.template.StatementSyntax.Choice;
import ampersheet.template.StatementSyntax.Comment;
import ampersheet.template.StatementSyntax.Compared;
import ampersheet.template.StatementSyntax.Piece;
import ampersheet.template.StatementSyntax.Plain;
import ampersheet.template.StatementSyntax.Printed;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.IntFunction;

/**
 * Checks words that are filled in, once {@link StatementReader} has parsed them: every name in every branch is known
 * before anything is printed, and whatever is drawn, no HTML and no link comes together.
 */
final class StatementCheck implements StatementSyntax.PieceVisitor {
    /** In the place of a value, where the words are looked at for markup. */
    private static final char WORD = 'w';

    private static final char NUMBER = '0';
    /** Where one branch or another may go on. */
    private static final char ANYTHING = '\uE000';

    /** What the words may name. */
    interface Vocabulary {
        /** The words a word given may be; empty for quantities. */
        Optional<Set<String>> wordsOf(String name);

        boolean isPrinted(String name);

        boolean isStep(String name);

        Set<String> printable();

        /** Notes that the words use a name. */
        void use(String name);
    }

    private final String text;
    private final IntFunction<Place> at;
    private final Vocabulary vocabulary;
    private final Faults faults;
    private boolean sound = true;
    /** The words without tags and comments, and where each character stands. */
    private final StringBuilder bare = new StringBuilder();

    private final List<Integer> standsAt = new ArrayList<>();

    private StatementCheck(String text, IntFunction<Place> at, Vocabulary vocabulary, Faults faults) {
        this.text = text;
        this.at = at;
        this.vocabulary = vocabulary;
        this.faults = faults;
    }

    /** Tells everything wrong with the words, at its place. */
    static void check(String text, IntFunction<Place> at, Vocabulary vocabulary, Wording wording, Faults faults) {
        wording.check(text, at);
        new StatementCheck(text, at, vocabulary, faults).check(wording);
    }

    private void check(Wording wording) {
        StatementReader.Read read = StatementReader.read(text);
        read.faults().forEach(this::tell);
        read.pieces().forEach(piece -> piece.accept(this));
        // What comments and tags held apart on the file's line stands together on the sheet.
        wording.check(bare.toString(), index -> at.apply(standsAt.get(index)));
        markup();
        if (sound) {
            fill(read.pieces());
        }
    }

    private void tell(Fault fault) {
        if (fault.name().isPresent() && vocabulary.wordsOf(fault.name().get()).isEmpty()) {
            notAWord(fault.name().get(), fault.index());
        } else {
            fault(fault.index(), fault.problem(), fault.expected(), fault.nextAction());
        }
    }

    @Override
    public void plain(Plain plain) {
        for (int i = 0; i < plain.text().length(); i++) {
            stands(plain.text().charAt(i), plain.index() + i);
        }
    }

    @Override
    public void comment(Comment comment) {
        // It prints nothing.
    }

    @Override
    public void printed(Printed printed) {
        name(printed);
        boolean letters = printed.symbol() || vocabulary.wordsOf(printed.name()).isPresent();
        stands(letters ? WORD : NUMBER, printed.index());
    }

    @Override
    public void choice(Choice choice) {
        choice.branches().forEach(branch -> {
            branch.condition().forEachComparison(this::compared);
            oneWay(branch.pieces());
        });
        choice.otherwise().ifPresent(otherwise -> oneWay(otherwise.pieces()));
    }

    private void oneWay(List<Piece> pieces) {
        stands(ANYTHING, bare.length() == 0 ? 0 : standsAt.get(bare.length() - 1));
        pieces.forEach(piece -> piece.accept(this));
        stands(ANYTHING, standsAt.get(bare.length() - 1));
    }

    private void stands(char c, int index) {
        bare.append(c);
        standsAt.add(index);
    }

    private void name(Printed printed) {
        String id = printed.name();
        boolean symbol = printed.symbol();
        if (vocabulary.isPrinted(id) && !(symbol && vocabulary.wordsOf(id).isPresent())) {
            vocabulary.use(id);
            return;
        }
        if (vocabulary.isStep(id)) {
            if (!symbol) {
                fault(
                        printed.index(),
                        "the words print " + id + ", a step: that gives the answer away",
                        "names of givens and constants",
                        "Print its symbol with ${symbol." + id + "}, or leave it out.");
            }
            return;
        }
        fault(
                printed.index(),
                "there is no given or constant named " + id,
                Guess.among(vocabulary.printable(), "a given"),
                Guess.of(id, vocabulary.printable(), "Use a name of the givens."));
    }

    private void compared(Compared compared) {
        Optional<Set<String>> words = vocabulary.wordsOf(compared.name());
        if (words.isEmpty()) {
            notAWord(compared.name(), compared.index());
            return;
        }
        vocabulary.use(compared.name());
        if (!words.get().contains(compared.word())) {
            fault(
                    compared.wordIndex(),
                    compared.name() + " is never \"" + compared.word() + "\"",
                    Spelling.list(words.get()),
                    Guess.of(compared.word(), words.get(), "Use one of its words."));
        }
    }

    private void notAWord(String name, int index) {
        fault(
                index,
                vocabulary.isPrinted(name) || vocabulary.isStep(name)
                        ? name + " is a quantity: the words cannot depend on it"
                        : "there is no word given named " + name,
                StatementReader.ALLOWED_CONDITION,
                "Compare a given that is drawn from words.");
    }

    /** Raw HTML, links and pictures, as they come together once tags and comments are gone. */
    private void markup() {
        for (int i = 0; i + 1 < bare.length(); i++) {
            char c = bare.charAt(i);
            char next = bare.charAt(i + 1);
            if (c == '<'
                    && !isEscaped(i)
                    && (beginsTag(next) || next == '/' && i + 2 < bare.length() && beginsTag(bare.charAt(i + 2)))) {
                fault(
                        standsAt.get(i),
                        "HTML stands in the words",
                        "Markdown, such as **bold**, or \\< for the character itself",
                        "Write it in Markdown; lines and figures come from the program.");
            } else if (c == ']' && (next == '(' || next == ':' || next == '[' || next == ANYTHING)) {
                fault(
                        standsAt.get(i),
                        "a link or picture stands in the words",
                        "words alone: a sheet works on paper",
                        "Say it in words.");
            }
        }
    }

    private static boolean beginsTag(char next) {
        return StatementTokens.isLetter(next) || next == '!' || next == '?' || next == ANYTHING;
    }

    private boolean isEscaped(int index) {
        int before = index;
        while (before > 0 && bare.charAt(before - 1) == '\\') {
            before--;
        }
        return (index - before) % 2 == 1;
    }

    /** With the longest words, so that a sheet of other words is no longer. */
    private void fill(List<Piece> pieces) {
        Map<String, String> sample = new TreeMap<>();
        Map<String, String> symbols = new TreeMap<>();
        vocabulary
                .printable()
                .forEach(name -> sample.put(
                        name,
                        vocabulary
                                .wordsOf(name)
                                .map(words -> words.stream()
                                        .max(Comparator.comparingInt(String::length))
                                        .orElse(""))
                                .orElse("1 V")));
        pieces.forEach(piece -> piece.accept(new Symbols(symbols)));
        try {
            Statement.fill(text, sample, symbols);
        } catch (IllegalArgumentException fault) {
            fault(0, fault.getMessage(), "plain words with ${names}", "Make them simpler.");
        }
    }

    /** Names of the symbols that are printed. */
    private record Symbols(Map<String, String> found) implements StatementSyntax.PieceVisitor {
        @Override
        public void plain(Plain plain) {
            // It names nothing.
        }

        @Override
        public void comment(Comment comment) {
            // It names nothing.
        }

        @Override
        public void printed(Printed printed) {
            if (printed.symbol()) {
                found.put(printed.name(), "V");
            }
        }

        @Override
        public void choice(Choice choice) {
            choice.branches().forEach(branch -> branch.pieces().forEach(piece -> piece.accept(this)));
            choice.otherwise().ifPresent(otherwise -> otherwise.pieces().forEach(piece -> piece.accept(this)));
        }
    }

    private void fault(int index, String problem, String expected, String nextAction) {
        sound = false;
        faults.error(at.apply(index), problem, expected, nextAction);
    }
}
