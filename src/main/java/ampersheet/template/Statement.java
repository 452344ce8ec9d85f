package ampersheet.template;

import ampersheet.language.Language;
import ampersheet.source.Remembered;
import freemarker.cache.NullCacheStorage;
import freemarker.core.TemplateClassResolver;
import freemarker.template.Configuration;
import freemarker.template.SimpleObjectWrapper;
import freemarker.template.SimpleScalar;
import freemarker.template.Template;
import freemarker.template.TemplateException;
import freemarker.template.TemplateExceptionHandler;
import freemarker.template.TemplateHashModel;
import freemarker.template.TemplateModel;
import freemarker.template.TemplateModelException;
import java.io.IOException;
import java.io.StringReader;
import java.io.Writer;
import java.util.Locale;
import java.util.Map;
import java.util.TimeZone;
import java.util.TreeMap;

/**
 * Puts the printed values into the words of a template: its statement, and the prompts of its questions.
 *
 * <p>The words may come from a stranger. {@link StatementReader} parses all that may stand in them, and refuses the
 * rest; FreeMarker is given what {@link StatementWriter} writes from that parse, and runs without classes, methods,
 * includes, clock or locale. What fills it has a {@link Budget}.
 */
public final class Statement {
    private static final Configuration CONFIGURATION = configuration();
    /** Templates by their text: a class of thousands renders the same few. */
    private static final Remembered<String, Template> PARSED = new Remembered<>(2_000);

    private Statement() {}

    /**
     * The statement in Markdown.
     *
     * @param language where the template has no words in it, English
     * @param printed for each given and constant its value with unit, for each word given its word; escaped here
     * @throws IllegalArgumentException if a name of the statement has no value in {@code printed}
     */
    public static String render(ProblemTemplate template, Language language, Map<String, String> printed) {
        Map<String, String> statements = template.words().statements();
        String text = statements.getOrDefault(language.code(), statements.get("en"));
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
        template.constants()
                .forEach(constant ->
                        symbols.put(constant.name(), constant.symbol().plain()));
        template.lines().forEach(line -> symbols.put(line.id(), line.symbol().plain()));
        return fill(text, printed, symbols);
    }

    /** A printed value so that Markdown shows it as it is. */
    public static String escape(String printed) {
        return MarkdownFormat.escape(printed);
    }

    /** @throws IllegalArgumentException if the words say what they may not, or take more than their budget */
    static String fill(String text, Map<String, String> printed, Map<String, String> symbols) {
        return fill(text, printed, symbols, new Budget());
    }

    static String fill(String text, Map<String, String> printed, Map<String, String> symbols, Budget budget) {
        Map<String, TemplateModel> model = Map.of(
                StatementWriter.VALUES,
                table(printed, budget),
                StatementWriter.SYMBOLS,
                table(symbols, budget),
                StatementWriter.CHARACTERS,
                CHARACTERS);
        try {
            parsed(text).process(model, budget);
        } catch (TemplateException | IOException | StackOverflowError fault) {
            throw new IllegalArgumentException("the words cannot be filled in: " + fault.getMessage(), fault);
        }
        return budget.text();
    }

    private static TemplateHashModel table(Map<String, String> texts, Budget budget) {
        return new TemplateHashModel() {
            @Override
            public TemplateModel get(String key) throws TemplateModelException {
                budget.spend();
                String text = texts.get(key);
                return text == null ? null : new SimpleScalar(text);
            }

            @Override
            public boolean isEmpty() {
                return texts.isEmpty();
            }
        };
    }

    /** What plain text holds and FreeMarker would read. */
    private static final TemplateHashModel CHARACTERS = new TemplateHashModel() {
        @Override
        public TemplateModel get(String code) throws TemplateModelException {
            return MarkdownFormat.INSTANCE.fromMarkup(Character.toString(Integer.parseInt(code)));
        }

        @Override
        public boolean isEmpty() {
            return false;
        }
    };

    private static Template parsed(String text) throws IOException {
        return PARSED.of(text, words -> parse(written(words)));
    }

    /**
     * The words as FreeMarker is given them.
     *
     * @throws IllegalArgumentException if they say what they may not
     */
    static String written(String text) {
        StatementReader.Read read = StatementReader.read(text);
        if (!read.faults().isEmpty()) {
            throw new IllegalArgumentException(read.faults().get(0).problem());
        }
        return StatementWriter.write(read.pieces());
    }

    /** @throws freemarker.core.ParseException for what {@link #written} never gives */
    static Template parse(String written) throws IOException {
        return new Template("statement", null, new StringReader(written), CONFIGURATION);
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

    /**
     * What filling words may take: so many characters, and so much time, counted in steps, so that the same words end
     * alike on every machine. Words that were parsed come nowhere near it; it is there for what nobody thought of.
     */
    static final class Budget extends Writer {
        static final int CHARACTERS = 20_000;
        /** A value looked up or a piece of text written: each takes microseconds. */
        static final int STEPS = 20_000;

        private final int mostSteps;
        private final StringBuilder text = new StringBuilder();
        private int steps;

        Budget() {
            this(STEPS);
        }

        Budget(int mostSteps) {
            this.mostSteps = mostSteps;
        }

        /** Asked at every value and every piece of text. */
        void spend() throws TemplateModelException {
            if (++steps > mostSteps) {
                throw new TemplateModelException("it takes more than " + mostSteps + " steps");
            }
        }

        @Override
        public void write(char[] characters, int offset, int length) throws IOException {
            try {
                spend();
            } catch (TemplateModelException late) {
                throw new IOException(late.getMessage(), late);
            }
            if (text.length() + length > CHARACTERS) {
                throw new IOException("longer than " + CHARACTERS + " characters");
            }
            text.append(characters, offset, length);
        }

        String text() {
            return text.toString();
        }

        @Override
        public void flush() {}

        @Override
        public void close() {}
    }
}
