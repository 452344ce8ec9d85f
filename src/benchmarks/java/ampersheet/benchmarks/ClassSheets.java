package ampersheet.benchmarks;

import ampersheet.render.html.HtmlPage;
import ampersheet.render.markdown.MarkdownPage;
import ampersheet.sheet.Composer;
import ampersheet.sheet.Document;
import ampersheet.sheet.PlanReader;
import ampersheet.sheet.ProblemSet;
import ampersheet.sheet.Sheet;
import ampersheet.sheet.SheetMaker;
import ampersheet.template.TemplateFiles;
import ampersheet.template.TemplateLibrary;
import com.vladsch.flexmark.ext.tables.TablesExtension;
import com.vladsch.flexmark.html.HtmlRenderer;
import com.vladsch.flexmark.parser.Parser;
import com.vladsch.flexmark.util.data.DataHolder;
import com.vladsch.flexmark.util.data.MutableDataSet;
import freemarker.template.Configuration;
import freemarker.template.Template;
import freemarker.template.TemplateException;
import java.io.IOException;
import java.io.StringWriter;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;

/**
 * A learner's sheet and key of ten problems as Markdown and HTML, and what the two libraries take for the same text.
 */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Fork(1)
@Warmup(iterations = 4, time = 5)
@Measurement(iterations = 4, time = 5)
public class ClassSheets {
    static final String PLAN = """
            title: Ten problems
            seed: benchmark
            problems:
              - {template: current-limiting/one-indicator}
              - {template: current-limiting/driver-test-point}
              - {template: voltage-dividers/loaded-divider}
              - {template: voltage-dividers/trimpot-window}
              - {template: thermal-rise/regulator-junction}
              - {template: thermal-rise/panel-temperature}
              - {template: chain-addressing/serpentine-tile}
              - {template: chain-addressing/frame-time}
              - {template: current-limiting/string-fuse}
              - {template: thermal-rise/reverse-polarity-loss}
            """;

    private static final int SEATS = 2_000;
    private static final Pattern NUMBER = Pattern.compile("\\d+(\\.\\d+)?");

    private SheetMaker maker;
    private int seat;

    private final List<String> texts = new ArrayList<>();
    private final List<Template> templates = new ArrayList<>();
    private final List<Map<String, String>> numbers = new ArrayList<>();
    private Parser parser;
    private HtmlRenderer renderer;

    @Setup
    public void prepare() throws IOException {
        maker = new SheetMaker(ProblemSet.of(
                PlanReader.read("plan.yaml", PLAN), new TemplateLibrary(List.of(TemplateFiles.builtIn()))));
        maker.prepare(SEATS);
        DataHolder options = new MutableDataSet()
                .set(Parser.EXTENSIONS, List.of(TablesExtension.create()))
                .toImmutable();
        parser = Parser.builder(options).build();
        renderer = HtmlRenderer.builder(options).build();
        Configuration configuration = new Configuration(Configuration.VERSION_2_3_32);
        for (int k = 1; k <= 20; k++) {
            Sheet sheet = maker.sheet(k);
            for (Document document : List.of(Composer.sheet(sheet, "Ada"), Composer.key(sheet, "Ada"))) {
                String text = MarkdownPage.render(document);
                texts.add(text);
                add(text, configuration);
            }
        }
    }

    /** The text as a template with a place for each number. */
    private void add(String text, Configuration configuration) throws IOException {
        Map<String, String> values = new HashMap<>();
        StringBuilder places = new StringBuilder();
        Matcher number = NUMBER.matcher(text.replaceAll("[$#@]", " "));
        while (number.find()) {
            String name = "n" + values.size();
            values.put(name, number.group());
            number.appendReplacement(places, "\\${" + name + "}");
        }
        number.appendTail(places);
        templates.add(new Template("text", places.toString(), configuration));
        numbers.add(values);
    }

    @Benchmark
    public int sheetAndKey() {
        seat = seat % SEATS + 1;
        Sheet sheet = maker.sheet(seat);
        int letters = 0;
        for (Document document : List.of(Composer.sheet(sheet, "Ada"), Composer.key(sheet, "Ada"))) {
            letters += MarkdownPage.render(document).length()
                    + HtmlPage.render(document).length();
        }
        return letters;
    }

    /** FreeMarker fills sheet and key, and flexmark makes HTML of both. */
    @Benchmark
    public int librariesAlone() throws IOException, TemplateException {
        int letters = 0;
        seat = (seat + 2) % texts.size();
        for (int k = seat / 2 * 2; k < seat / 2 * 2 + 2; k++) {
            StringWriter filled = new StringWriter();
            templates.get(k).process(numbers.get(k), filled);
            letters += filled.toString().length()
                    + renderer.render(parser.parse(texts.get(k))).length();
        }
        return letters;
    }
}
