package ampersheet.render.pdf;

import ampersheet.source.Languages;
import ampersheet.benchmarks.Demo;
import ampersheet.sheet.Composer;
import ampersheet.sheet.Document;
import ampersheet.sheet.SheetMaker;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.TearDown;
import org.openjdk.jmh.annotations.Warmup;

/**
 * A sheet on paper, measured, packed and set; and the layout library alone, which is given the pages as they were
 * packed.
 */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Fork(1)
@Warmup(iterations = 3, time = 8)
@Measurement(iterations = 3, time = 8)
public class HandoutOnPaper {
    private static final int SEATS = 24;

    private final List<Document> sheets = new ArrayList<>();
    private final List<MarkupTree> packed = new ArrayList<>();
    private PdfBook book;
    private int seat;

    @Setup
    public void compose() throws IOException {
        SheetMaker maker = Demo.maker(SEATS);
        Document.Paper paper = Document.Paper.A4;
        book = new PdfBook("Benchmark", Languages.ENGLISH, Profile.COMPACT, Optional.empty(), Path.of("target"));
        for (int k = 1; k <= SEATS; k++) {
            Document sheet = Composer.sheet(maker.sheet(k), "Ada", Profile.COMPACT.widestDrawing(paper))
                    .on(paper);
            sheets.add(sheet);
            packed.add(book.markup(sheet));
        }
    }

    @TearDown
    public void close() throws IOException {
        book.close();
    }

    @Benchmark
    public int measuredPackedAndSet() throws IOException {
        seat = (seat + 1) % SEATS;
        return pages(book.markup(sheets.get(seat)));
    }

    @Benchmark
    public int setAlone() throws IOException {
        seat = (seat + 1) % SEATS;
        return pages(packed.get(seat));
    }

    private int pages(MarkupTree markup) throws IOException {
        try (PDDocument into = new PDDocument()) {
            book.set(markup, new Faults(), into);
            return into.getNumberOfPages();
        }
    }
}
