package ampersheet.template;

import freemarker.cache.NullCacheStorage;
import freemarker.core.ParseException;
import freemarker.core.TemplateClassResolver;
import freemarker.template.Configuration;
import freemarker.template.SimpleObjectWrapper;
import freemarker.template.Template;
import freemarker.template.TemplateException;
import freemarker.template.TemplateExceptionHandler;
import java.io.IOException;
import java.io.StringReader;
import java.io.Writer;
import java.util.Locale;
import java.util.Map;
import java.util.TimeZone;
import java.util.TreeMap;
import java.util.concurrent.ConcurrentHashMap;

/**
 * Puts the printed values into the words of a template: its statement, and the prompts of its questions.
 *
 * <p>The words may come from a stranger. What {@link StatementCheck} lets through is a small part of FreeMarker (names
 * and conditions on words), and FreeMarker itself runs without classes, methods, includes, clock or locale; the output
 * has a limit.
 */
public final class Statement {
  /** Characters a rendered text may have. */
  static final int LONGEST = 20_000;

  private static final Configuration CONFIGURATION = configuration();
  /** Templates by their text: a class of thousands renders the same few. */
  private static final Map<String, Template> PARSED = new ConcurrentHashMap<>();
  private static final int MOST_PARSED = 2_000;

  private Statement() {}

  /**
   * The statement in Markdown.
   *
   * @param language tag; where the template has no words in it, English
   * @param printed for each given and constant its value with unit, for each word given its word; escaped here
   * @throws IllegalArgumentException if a name of the statement has no value in {@code printed}
   */
  public static String render(ProblemTemplate template, String language, Map<String, String> printed) {
    Map<String, String> statements = template.words().statements();
    String text = statements.containsKey(language) ? statements.get(language) : statements.get("en");
    return fill(template, text, printed);
  }

  /** A question's prompt in Markdown; parameters as for {@link #render}. */
  public static String prompt(ProblemTemplate template, ProblemTemplate.Ask ask, Map<String, String> printed) {
    return fill(template, ask.prompt(), printed);
  }

  private static String fill(ProblemTemplate template, String text, Map<String, String> printed) {
    Map<String, String> symbols = new TreeMap<>();
    for (ProblemTemplate.Given given : template.givens()) {
      if (given instanceof ProblemTemplate.QuantityGiven quantity) {
        symbols.put(given.name(), quantity.symbol().plain());
      }
    }
    template.constants().forEach(constant -> symbols.put(constant.name(), constant.symbol().plain()));
    template.lines().forEach(line -> symbols.put(line.id(), line.symbol().plain()));
    return fill(text, printed, symbols);
  }

  /** A printed value so that Markdown shows it as it is. */
  public static String escape(String printed) {
    return MarkdownFormat.escape(printed);
  }

  static String fill(String text, Map<String, String> printed, Map<String, String> symbols) {
    Map<String, Object> model = new TreeMap<>(printed);
    model.put(StatementCheck.SYMBOL, symbols);
    LimitedWriter out = new LimitedWriter();
    try {
      parsed(text).process(model, out);
    } catch (ParseException fault) {
      throw new IllegalArgumentException("not checked when read: " + fault.getMessage(), fault);
    } catch (TemplateException | IOException | StackOverflowError fault) {
      throw new IllegalArgumentException("the words cannot be filled in: " + fault.getMessage(), fault);
    }
    return out.toString();
  }

  private static Template parsed(String text) throws IOException {
    Template known = PARSED.get(text);
    if (known != null) {
      return known;
    }
    StatementCheck.requireHarmless(text);
    Template parsed = parse(text);
    if (PARSED.size() >= MOST_PARSED) {
      PARSED.clear();
    }
    PARSED.put(text, parsed);
    return parsed;
  }

  /** @throws ParseException with line and column @throws StackOverflowError for words nested without end */
  static Template parse(String text) throws IOException {
    return new Template("statement", null, new StringReader(text), CONFIGURATION);
  }

  private static Configuration configuration() {
    Configuration configuration = new Configuration(Configuration.VERSION_2_3_34);
    configuration.setNewBuiltinClassResolver(TemplateClassResolver.ALLOWS_NOTHING_RESOLVER);
    configuration.setAPIBuiltinEnabled(false);
    configuration.setObjectWrapper(new SimpleObjectWrapper(Configuration.VERSION_2_3_34));
    configuration.setTemplateLoader(null);
    configuration.setCacheStorage(NullCacheStorage.INSTANCE);
    configuration.setLocalizedLookup(false);
    configuration.setLocale(Locale.ROOT);
    configuration.setTimeZone(TimeZone.getTimeZone("UTC"));
    configuration.setNumberFormat("c");
    configuration.setTemplateExceptionHandler(TemplateExceptionHandler.RETHROW_HANDLER);
    configuration.setLogTemplateExceptions(false);
    configuration.setWrapUncheckedExceptions(true);
    configuration.setTagSyntax(Configuration.ANGLE_BRACKET_TAG_SYNTAX);
    configuration.setInterpolationSyntax(Configuration.DOLLAR_INTERPOLATION_SYNTAX);
    configuration.setRecognizeStandardFileExtensions(false);
    configuration.setOutputFormat(MarkdownFormat.INSTANCE);
    configuration.setAutoEscapingPolicy(Configuration.FORCE_AUTO_ESCAPING_POLICY);
    configuration.setTabSize(1);
    return configuration;
  }

  /** Stops words that would print without end. */
  private static final class LimitedWriter extends Writer {
    private final StringBuilder text = new StringBuilder();

    @Override
    public void write(char[] characters, int offset, int length) throws IOException {
      if (text.length() + length > LONGEST) {
        throw new IOException("longer than " + LONGEST + " characters");
      }
      text.append(characters, offset, length);
    }

    @Override
    public void flush() {}

    @Override
    public void close() {}

    @Override
    public String toString() {
      return text.toString();
    }
  }
}
