package ampersheet.template;

import ampersheet.diagnostic.Place;
import ampersheet.formula.Spelling;
import freemarker.core.ParseException;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.function.IntFunction;

/**
 * Checks words that FreeMarker will fill in. Of its language they may use: comments, {@code ${name}} with at most a
 * change of case, {@code ${symbol.name}}, and {@code <#if>}, {@code <#elseif>}, {@code <#else>} on word givens compared
 * with their words. Nothing that loops, defines, includes, calls, computes or reads a clock is in that part, so that
 * words of a stranger can do no harm and every name in every branch is known before anything is printed.
 */
final class StatementCheck {
  static final String SYMBOL = "symbol";
  /** Two to five sentences need about a tenth. */
  static final int LONGEST = 4_000;

  private static final Set<String> DIRECTIVES = new TreeSet<>(List.of("if", "elseif", "else"));
  private static final Set<String> CASES =
      new TreeSet<>(List.of("cap_first", "uncap_first", "upper_case", "lower_case"));
  private static final String ALLOWED_EXPRESSION = "the name of a given, such as ${Vs}, or ${symbol.Vs}";
  private static final String ALLOWED_CONDITION =
      "word givens compared with their words, such as order == \"serpentine\"";

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

  /** @param index of the character */
  private record Fault(int index, String problem, String expected, String nextAction) {}

  /** @param condition whether it stands in a directive */
  private record Region(int from, int to, boolean condition) {}

  private final String text;
  private final List<Fault> faults = new ArrayList<>();
  private final List<Region> regions = new ArrayList<>();

  private StatementCheck(String text) {
    this.text = text;
  }

  /** Everything wrong with the words, at its place. */
  static void check(String text, IntFunction<Place> at, Vocabulary vocabulary, Faults faults) {
    StatementCheck check = new StatementCheck(text);
    check.scan();
    check.names(vocabulary);
    check.markup();
    for (Fault fault : check.faults) {
      faults.error(at.apply(fault.index()), fault.problem(), fault.expected(), fault.nextAction());
    }
    if (check.faults.isEmpty()) {
      check.parse(at, vocabulary, faults);
    }
  }

  /** @throws IllegalArgumentException if the words use more of FreeMarker than is allowed */
  static void requireHarmless(String text) {
    StatementCheck check = new StatementCheck(text);
    check.scan();
    for (Region region : check.regions) {
      check.tokens(region);
    }
    if (!check.faults.isEmpty()) {
      throw new IllegalArgumentException(check.faults.get(0).problem());
    }
  }

  /** Finds interpolations and directives, and refuses those that are not allowed. */
  private void scan() {
    if (text.length() > LONGEST) {
      fault(LONGEST, "the words are longer than " + LONGEST + " characters", "two to five short sentences",
          "Shorten them.");
      return;
    }
    int i = 0;
    while (i < text.length()) {
      if (text.startsWith("<#--", i)) {
        int end = text.indexOf("-->", i);
        i = end < 0 ? text.length() : end + 3;
      } else if (text.startsWith("${", i)) {
        i = region(i + 2, '}', false);
      } else if (text.startsWith("<#", i) || text.startsWith("</#", i) || text.startsWith("<@", i)
          || text.startsWith("</@", i)) {
        i = directive(i);
      } else {
        i++;
      }
    }
  }

  private int directive(int start) {
    int name = start + (text.charAt(start + 1) == '/' ? 3 : 2);
    int end = name;
    while (end < text.length() && isLetter(text.charAt(end))) {
      end++;
    }
    String directive = text.substring(name, end);
    boolean call = text.charAt(name - 1) == '@';
    if (call || !DIRECTIVES.contains(directive)) {
      fault(start, "<" + (call ? "@" : "#") + directive + "> is not allowed in the words",
          "only <#if>, <#elseif>, <#else> and comments", "Remove it, or say it in plain words.");
    }
    return region(end, '>', true);
  }

  /** From {@code from} to the closing character outside quotes. */
  private int region(int from, char closing, boolean condition) {
    char quote = 0;
    for (int i = from; i < text.length(); i++) {
      char c = text.charAt(i);
      if (quote != 0) {
        quote = c == quote ? 0 : quote;
      } else if (c == '"' || c == '\'') {
        quote = c;
      } else if (c == closing) {
        regions.add(new Region(from, i, condition));
        return i + 1;
      }
    }
    fault(Math.max(0, from - 2), condition ? "this directive is not closed" : "this ${ is not closed",
        condition ? "a > after the condition" : "a } after the name", "Close it.");
    return text.length();
  }

  private record Token(String text, int index) {
    boolean isName() {
      return isLetter(text.charAt(0));
    }

    boolean isText() {
      return text.charAt(0) == '"' || text.charAt(0) == '\'';
    }

    String content() {
      return text.substring(1, text.length() - 1);
    }
  }

  /** The pieces of a region; what is not allowed becomes a fault and ends it. */
  private List<Token> tokens(Region region) {
    List<Token> tokens = new ArrayList<>();
    String allowed = region.condition() ? ALLOWED_CONDITION : ALLOWED_EXPRESSION;
    int i = region.from();
    while (i < region.to()) {
      char c = text.charAt(i);
      int end = i + 1;
      if (c == ' ' || c == '\n') {
        i++;
        continue;
      }
      if (isLetter(c)) {
        while (end < region.to() && (isLetter(text.charAt(end)) || isDigit(text.charAt(end)) || text.charAt(end) == '.'
            && end + 1 < region.to() && isLetter(text.charAt(end + 1)))) {
          end++;
        }
      } else if (c == '?' && !region.condition()) {
        while (end < region.to() && isLetter(text.charAt(end))) {
          end++;
        }
        if (!CASES.contains(text.substring(i + 1, end))) {
          fault(i, text.substring(i, end) + " is not allowed in the words",
              "one of ?" + String.join(", ?", CASES), "Remove it.");
          return List.of();
        }
      } else if (region.condition() && (c == '"' || c == '\'')) {
        end = text.indexOf(c, i + 1) + 1;
        if (hasSpecial(text.substring(i, end))) {
          fault(i, "this text holds a character that is not allowed here", allowed, "Use the plain word.");
          return List.of();
        }
      } else if (region.condition() && (text.startsWith("==", i) || text.startsWith("!=", i) || text.startsWith("&&", i)
          || text.startsWith("||", i))) {
        end = i + 2;
      } else if (!(region.condition() && (c == '!' || c == '(' || c == ')'))) {
        fault(i, "the character " + c + " is not allowed here: the words only print and choose, they compute nothing",
            allowed,
            "Work the value out in a step, or change the words.");
        return List.of();
      }
      tokens.add(new Token(text.substring(i, end), i));
      i = end;
    }
    if (!region.condition() && (tokens.isEmpty() || !tokens.get(0).isName()
        || tokens.stream().skip(1).anyMatch(token -> token.text().charAt(0) != '?'))) {
      fault(region.from(), "this is not one name", ALLOWED_EXPRESSION, "Print one given at a time.");
      return List.of();
    }
    return tokens;
  }

  private static boolean hasSpecial(String quoted) {
    return quoted.isEmpty() || quoted.indexOf('\\') >= 0 || quoted.indexOf('$') >= 0 || quoted.indexOf('#') >= 0;
  }

  private void names(Vocabulary vocabulary) {
    for (Region region : regions) {
      List<Token> tokens = tokens(region);
      for (int i = 0; i < tokens.size(); i++) {
        if (tokens.get(i).isName()) {
          if (region.condition()) {
            inCondition(tokens, i, vocabulary);
          } else {
            printed(tokens.get(i), vocabulary);
          }
        }
      }
    }
  }

  private void printed(Token token, Vocabulary vocabulary) {
    String name = token.text();
    boolean symbol = name.startsWith(SYMBOL + ".");
    String id = symbol ? name.substring(SYMBOL.length() + 1) : name;
    int index = token.index() + name.length() - id.length();
    if (vocabulary.isPrinted(id) && !(symbol && vocabulary.wordsOf(id).isPresent())) {
      vocabulary.use(id);
      return;
    }
    if (vocabulary.isStep(id)) {
      if (!symbol) {
        fault(index, "the words print " + id + ", a step: that gives the answer away",
            "names of givens and constants", "Print its symbol with ${symbol." + id + "}, or leave it out.");
      }
      return;
    }
    fault(index, "there is no given or constant named " + id, Guess.among(vocabulary.printable(), "a given"),
        Guess.of(id, vocabulary.printable(), "Use a name of the givens."));
  }

  private void inCondition(List<Token> tokens, int i, Vocabulary vocabulary) {
    Token token = tokens.get(i);
    Optional<Set<String>> words = vocabulary.wordsOf(token.text());
    if (words.isEmpty()) {
      fault(token.index(), vocabulary.isPrinted(token.text()) || vocabulary.isStep(token.text())
              ? token.text() + " is a quantity: the words cannot depend on it"
              : "there is no word given named " + token.text(),
          ALLOWED_CONDITION, "Compare a given that is drawn from words.");
      return;
    }
    if (i + 2 >= tokens.size() || !tokens.get(i + 1).text().endsWith("=") || !tokens.get(i + 2).isText()) {
      fault(token.index(), "the word " + token.text() + " is compared with nothing", ALLOWED_CONDITION,
          "Compare it with == or != and one of its words in quotes.");
      return;
    }
    vocabulary.use(token.text());
    Token word = tokens.get(i + 2);
    if (!words.get().contains(word.content())) {
      fault(word.index() + 1, token.text() + " is never \"" + word.content() + "\"",
          Spelling.list(words.get()),
          Guess.of(word.content(), words.get(), "Use one of its words."));
    }
  }

  /** Raw HTML, links and pictures; outside of FreeMarker's own tags. */
  private void markup() {
    for (int i = 0; i + 1 < text.length(); i++) {
      char next = text.charAt(i + 1);
      if (text.charAt(i) == '<' && (isLetter(next) || next == '!' || next == '?'
          || next == '/' && i + 2 < text.length() && isLetter(text.charAt(i + 2)))) {
        fault(i, "HTML stands in the words", "Markdown, such as **bold**, or \\< for the character itself",
            "Write it in Markdown; lines and figures come from the program.");
      } else if (text.charAt(i) == ']' && (next == '(' || next == ':' || next == '[')) {
        fault(i, "a link or picture stands in the words", "words alone: a sheet works on paper",
            "Say it in words.");
      }
    }
  }

  private void parse(IntFunction<Place> at, Vocabulary vocabulary, Faults faults) {
    try {
      Statement.parse(text);
      Map<String, String> sample = new TreeMap<>();
      Map<String, String> symbols = new TreeMap<>();
      vocabulary.printable().forEach(name -> sample.put(name,
          vocabulary.wordsOf(name).map(words -> words.iterator().next()).orElse("1 V")));
      for (Region region : regions) {
        tokens(region).stream().map(Token::text).filter(name -> name.startsWith(SYMBOL + "."))
            .forEach(name -> symbols.put(name.substring(SYMBOL.length() + 1), "V"));
      }
      Statement.fill(text, sample, symbols);
    } catch (ParseException fault) {
      faults.error(at.apply(index(fault.getLineNumber(), fault.getColumnNumber())),
          "the words cannot be read: " + firstSentence(fault.getEditorMessage()),
          "every <#if> with its </#if>", "Correct or close the directive.");
    } catch (IOException | IllegalArgumentException | StackOverflowError fault) {
      faults.error(at.apply(0), "the words cannot be filled in: " + fault.getMessage(), "plain words with ${names}",
          "Make them simpler.");
    }
  }

  private int index(int line, int column) {
    int start = 0;
    for (int i = 1; i < line && start >= 0; i++) {
      start = text.indexOf('\n', start) + 1;
    }
    return Math.min(text.length(), start + Math.max(0, column - 1));
  }

  private static String firstSentence(String message) {
    String line = message == null ? "" : message.replace('\n', ' ').strip();
    int end = line.indexOf(". ");
    String sentence = end < 0 ? line : line.substring(0, end);
    String open = sentence.endsWith(".") ? sentence.substring(0, sentence.length() - 1) : sentence;
    return open.isEmpty() ? "a directive is wrong" : open.substring(0, 1).toLowerCase(Locale.ROOT) + open.substring(1);
  }

  private void fault(int index, String problem, String expected, String nextAction) {
    faults.add(new Fault(index, problem, expected, nextAction));
  }

  private static boolean isLetter(char c) {
    return c >= 'a' && c <= 'z' || c >= 'A' && c <= 'Z' || c == '_';
  }

  private static boolean isDigit(char c) {
    return c >= '0' && c <= '9';
  }
}
