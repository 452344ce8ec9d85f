package ampersheet.template;

import ampersheet.diagnostic.Place;
import ampersheet.formula.Spelling;
import ampersheet.source.Faults;
import ampersheet.template.StatementReader.Fault;
import ampersheet.template.StatementSyntax.Both;
import ampersheet.template.StatementSyntax.Choice;
import ampersheet.template.StatementSyntax.Comment;
import ampersheet.template.StatementSyntax.Compared;
import ampersheet.template.StatementSyntax.Either;
import ampersheet.template.StatementSyntax.Not;
import ampersheet.template.StatementSyntax.Piece;
import ampersheet.template.StatementSyntax.Plain;
import ampersheet.template.StatementSyntax.Printed;
import ampersheet.template.StatementSyntax.WordCondition;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.IntFunction;

/**
 * Checks words that are filled in, once {@link StatementReader} has parsed them: every name in every branch is known before
 * anything is printed, and whatever is drawn, no HTML and no link comes together.
 */
final class StatementCheck {
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
    read.pieces().forEach(this::piece);
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

  private void piece(Piece piece) {
    if (piece instanceof Plain plain) {
      for (int i = 0; i < plain.text().length(); i++) {
        stands(plain.text().charAt(i), plain.index() + i);
      }
    } else if (piece instanceof Printed printed) {
      printed(printed);
      boolean letters = printed.symbol() || vocabulary.wordsOf(printed.name()).isPresent();
      stands(letters ? WORD : NUMBER, printed.index());
    } else if (piece instanceof Choice choice) {
      choice.branches().forEach(branch -> {
        condition(branch.condition());
        oneWay(branch.pieces());
      });
      choice.otherwise().ifPresent(otherwise -> oneWay(otherwise.pieces()));
    } else if (!(piece instanceof Comment)) {
      throw new IllegalStateException("a piece nobody told of: " + piece);
    }
  }

  private void oneWay(List<Piece> pieces) {
    stands(ANYTHING, bare.length() == 0 ? 0 : standsAt.get(bare.length() - 1));
    pieces.forEach(this::piece);
    stands(ANYTHING, standsAt.get(bare.length() - 1));
  }

  private void stands(char c, int index) {
    bare.append(c);
    standsAt.add(index);
  }

  private void printed(Printed printed) {
    String id = printed.name();
    boolean symbol = printed.symbol();
    if (vocabulary.isPrinted(id) && !(symbol && vocabulary.wordsOf(id).isPresent())) {
      vocabulary.use(id);
      return;
    }
    if (vocabulary.isStep(id)) {
      if (!symbol) {
        fault(printed.index(), "the words print " + id + ", a step: that gives the answer away",
            "names of givens and constants", "Print its symbol with ${symbol." + id + "}, or leave it out.");
      }
      return;
    }
    fault(printed.index(), "there is no given or constant named " + id, Guess.among(vocabulary.printable(), "a given"),
        Guess.of(id, vocabulary.printable(), "Use a name of the givens."));
  }

  private void condition(WordCondition condition) {
    if (condition instanceof Both both) {
      condition(both.left());
      condition(both.right());
    } else if (condition instanceof Either either) {
      condition(either.left());
      condition(either.right());
    } else if (condition instanceof Not not) {
      condition(not.of());
    } else {
      compared((Compared) condition);
    }
  }

  private void compared(Compared compared) {
    Optional<Set<String>> words = vocabulary.wordsOf(compared.name());
    if (words.isEmpty()) {
      notAWord(compared.name(), compared.index());
      return;
    }
    vocabulary.use(compared.name());
    if (!words.get().contains(compared.word())) {
      fault(compared.wordIndex(), compared.name() + " is never \"" + compared.word() + "\"", Spelling.list(words.get()),
          Guess.of(compared.word(), words.get(), "Use one of its words."));
    }
  }

  private void notAWord(String name, int index) {
    fault(index, vocabulary.isPrinted(name) || vocabulary.isStep(name)
            ? name + " is a quantity: the words cannot depend on it" : "there is no word given named " + name,
        StatementReader.ALLOWED_CONDITION, "Compare a given that is drawn from words.");
  }

  /** Raw HTML, links and pictures, as they come together once tags and comments are gone. */
  private void markup() {
    for (int i = 0; i + 1 < bare.length(); i++) {
      char c = bare.charAt(i);
      char next = bare.charAt(i + 1);
      if (c == '<' && !isEscaped(i) && (beginsTag(next)
          || next == '/' && i + 2 < bare.length() && beginsTag(bare.charAt(i + 2)))) {
        fault(standsAt.get(i), "HTML stands in the words", "Markdown, such as **bold**, or \\< for the character itself",
            "Write it in Markdown; lines and figures come from the program.");
      } else if (c == ']' && (next == '(' || next == ':' || next == '[' || next == ANYTHING)) {
        fault(standsAt.get(i), "a link or picture stands in the words", "words alone: a sheet works on paper",
            "Say it in words.");
      }
    }
  }

  private static boolean beginsTag(char next) {
    return StatementReader.isLetter(next) || next == '!' || next == '?' || next == ANYTHING;
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
    vocabulary.printable().forEach(name -> sample.put(name, vocabulary.wordsOf(name)
        .map(words -> words.stream().max(Comparator.comparingInt(String::length)).orElse("")).orElse("1 V")));
    symbols(pieces, symbols);
    try {
      Statement.fill(text, sample, symbols);
    } catch (IllegalArgumentException fault) {
      fault(0, fault.getMessage(), "plain words with ${names}", "Make them simpler.");
    }
  }

  private static void symbols(List<Piece> pieces, Map<String, String> symbols) {
    for (Piece piece : pieces) {
      if (piece instanceof Printed printed && printed.symbol()) {
        symbols.put(printed.name(), "V");
      } else if (piece instanceof Choice choice) {
        choice.branches().forEach(branch -> symbols(branch.pieces(), symbols));
        choice.otherwise().ifPresent(otherwise -> symbols(otherwise.pieces(), symbols));
      }
    }
  }

  private void fault(int index, String problem, String expected, String nextAction) {
    sound = false;
    faults.error(at.apply(index), problem, expected, nextAction);
  }
}
