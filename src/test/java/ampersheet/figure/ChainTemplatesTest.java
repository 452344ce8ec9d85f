package ampersheet.figure;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import ampersheet.chain.Panel;
import ampersheet.chain.Tile;
import ampersheet.formula.Evaluation;
import ampersheet.formula.Expression;
import ampersheet.model.ChainModel;
import ampersheet.model.ChainPlan;
import ampersheet.problem.Draws;
import ampersheet.problem.Problem;
import ampersheet.problem.Workshop;
import ampersheet.source.Languages;
import ampersheet.template.ChosenTemplates;
import ampersheet.template.ProblemTemplate;
import ampersheet.template.TemplateFiles;
import ampersheet.template.TemplateReader;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.TestFactory;

/**
 * The drawings of all built-in chains as wide as large print, a column and a page let them be. A failure names
 * template, draw and width; the seed is {@link #SEED}.
 */
class ChainTemplatesTest {
    private static final String SEED = "chains";
    private static final int DRAWS = Boolean.getBoolean("ampersheet.deep") ? 15 : 4;
    private static final double[] WIDEST = {362, 400, Figure.PAGE_WIDTH};
    /** Distance of pixels at which numbers take more than two of them. */
    private static final double CLOSE = 8;
    /** Down to this distance some way out between the dots is found. */
    private static final double TIGHT = 11;
    /** In pixels: half of what a number is high is 4. */
    private static final double AT_ITS_OWN = 0.5;

    private static final Map<String, List<Drawn>> DRAWN = new LinkedHashMap<>();

    private record Drawn(String where, Panel panel, List<ChainFigure.Mark> marks, double widest, Drawing drawing) {
        /** Where pixels are, by column or row of the panel. */
        Map<Integer, Set<Double>> places(boolean columns) {
            Map<Integer, Set<Double>> places = new LinkedHashMap<>();
            for (Panel.Place place : panel.places()) {
                int of = columns ? panel.tile().columns() : panel.tile().rows();
                int first = of * (columns ? place.column() : place.row());
                Set<Double> at = new TreeSet<>();
                for (Shape shape : drawing.shapes("tile " + place.column() + " " + place.row())) {
                    if (shape instanceof Shape.Circle circle) {
                        at.add(hundredths(
                                columns ? circle.centre().x() : circle.centre().y()));
                    }
                }
                List<Double> inTurn = new ArrayList<>(at);
                assertTrue(inTurn.isEmpty() || inTurn.size() == of, where + ": " + inTurn);
                for (int i = 0; i < inTurn.size(); i++) {
                    places.computeIfAbsent(first + i, p -> new TreeSet<>()).add(inTurn.get(i));
                }
            }
            return places;
        }

        double pitch() {
            List<Double> at =
                    places(true).values().stream().flatMap(Set::stream).sorted().toList();
            return at.get(1) - at.get(0);
        }

        /** Of columns or of rows: the middle of their letters. */
        Map<Integer, List<Double>> numbers(boolean columns) {
            Map<Integer, List<Double>> numbers = new LinkedHashMap<>();
            for (Shape shape : drawing.shapes()) {
                if (shape instanceof Shape.Words words
                        && Audit.text(words).matches("[0-9]+")
                        && (words.anchor() == Lettering.Anchor.MIDDLE) == columns) {
                    double high = Lettering.DIGIT_HEIGHT * words.lettering().size();
                    numbers.computeIfAbsent(Integer.valueOf(Audit.text(words)), n -> new ArrayList<>())
                            .add(
                                    columns
                                            ? words.bounds().centre().x()
                                            : words.baseline().y() - high / 2);
                }
            }
            return numbers;
        }
    }

    private static double hundredths(double value) {
        return Math.round(value * 100) / 100.0;
    }

    @BeforeAll
    static void draw() {
        TemplateFiles files = TemplateFiles.builtIn();
        for (String name : ChosenTemplates.of(files)) {
            ProblemTemplate template = TemplateReader.read(files, name);
            if (template.model(ChainPlan.class).isPresent()) {
                Draws draws = new Draws(new Workshop(template), SEED);
                List<Drawn> drawn = new ArrayList<>();
                for (int draw = 0; draw < DRAWS; draw++) {
                    drawn.addAll(drawn(draws.draw(draw), name + ", draw " + draw));
                }
                DRAWN.put(name, drawn);
            }
        }
    }

    private static List<Drawn> drawn(Problem problem, String where) {
        ChainModel model = problem.models().stream()
                .filter(ChainModel.class::isInstance)
                .map(ChainModel.class::cast)
                .findFirst()
                .orElseThrow();
        List<ChainFigure.Mark> marks = model.plan().marks().stream()
                .map(mark -> new ChainFigure.Mark(whole(mark.x(), problem), whole(mark.y(), problem), mark.label()))
                .toList();
        List<Drawn> drawn = new ArrayList<>();
        for (double widest : WIDEST) {
            Panel panel = model.panel();
            Drawing drawing = ChainFigure.layOut(panel, ChainFigure.trace(panel), marks, widest, Languages.ENGLISH);
            drawn.add(new Drawn(where + ", " + widest + " wide", panel, marks, widest, drawing));
        }
        return drawn;
    }

    private static int whole(Expression place, Problem problem) {
        return (int) Evaluation.evaluate(place, problem.values()).value();
    }

    private interface Check {
        void of(Drawn drawn);
    }

    private static Stream<DynamicTest> forEach(Check check) {
        return DRAWN.entrySet().stream()
                .map(each -> DynamicTest.dynamicTest(
                        each.getKey(), () -> each.getValue().forEach(check::of)));
    }

    @TestFactory
    Stream<DynamicTest> everyNumberStandsBesideItsOwnRowOrAboveItsOwnColumn() {
        return forEach(drawn -> {
            for (boolean columns : new boolean[] {true, false}) {
                Map<Integer, Set<Double>> places = drawn.places(columns);
                drawn.numbers(columns)
                        .forEach((number, at) -> at.forEach(each -> assertTrue(
                                places.get(number).stream().anyMatch(own -> Math.abs(own - each) <= AT_ITS_OWN),
                                drawn.where() + (columns ? ": column " : ": row ") + number + " at " + each
                                        + ", its pixels at " + places.get(number))));
            }
        });
    }

    @TestFactory
    Stream<DynamicTest> whatIsMarkedIsNumberedAndOfEveryTileTheFirstOrTheLast() {
        return forEach(drawn -> {
            for (boolean columns : new boolean[] {true, false}) {
                int of = columns
                        ? drawn.panel().tile().columns()
                        : drawn.panel().tile().rows();
                Set<Integer> numbers = drawn.numbers(columns).keySet();
                Set<Integer> marked = drawn.marks().stream()
                        .map(mark -> columns ? mark.x() : mark.y())
                        .collect(Collectors.toSet());
                assertTrue(
                        numbers.containsAll(marked) || drawn.pitch() < CLOSE,
                        drawn.where() + ": " + marked + " is not all among " + numbers);
                Set<Integer> places = drawn.places(columns).keySet();
                // Where tiles are drawn so small that the lines between them take the room, rows are counted off.
                boolean noRoom = !columns && numbers.isEmpty() && drawn.pitch() < CLOSE;
                for (int first : places.size() == 1 && !columns || noRoom ? Set.<Integer>of() : places) {
                    if (first % of == 0) {
                        boolean close = drawn.pitch() < CLOSE;
                        assertTrue(
                                numbers.stream()
                                        .anyMatch(number -> close && Math.abs(number / of - first / of) <= 1
                                                || number / of == first / of
                                                        && (marked.contains(number)
                                                                || number % of == 0
                                                                || number % of == of - 1)),
                                drawn.where() + (columns ? ": of columns " : ": of rows ") + first + " to "
                                        + (first + of - 1) + " none in " + numbers);
                    }
                }
            }
        });
    }

    @TestFactory
    Stream<DynamicTest> theLegendPromisesTheNumbersThatAreThere() {
        return forEach(drawn -> {
            String legend = drawn.drawing().shapes("legend").stream()
                    .filter(Shape.Words.class::isInstance)
                    .map(shape -> Audit.text((Shape.Words) shape))
                    .collect(Collectors.joining("; "));
            assertEquals(
                    !drawn.numbers(false).isEmpty(),
                    legend.contains("rows at the left"),
                    drawn.where() + ": " + legend);
            assertEquals(
                    !drawn.numbers(true).isEmpty(),
                    legend.contains("columns above") || legend.contains("addresses of the pixels"),
                    drawn.where() + ": " + legend);
        });
    }

    @TestFactory
    Stream<DynamicTest> allLetteringStandsClearOfLinesAndPixels() {
        return forEach(drawn -> Audit.clear(drawn.drawing(), drawn.where()));
    }

    @TestFactory
    Stream<DynamicTest> theLineFromAMarkCrossesNoNumberAndWherePixelsLieApartNoneOfThem() {
        return forEach(drawn -> {
            for (ChainFigure.Mark mark : drawn.marks()) {
                for (Shape line : drawn.drawing().shapes("mark " + mark.x() + " " + mark.y())) {
                    if (line instanceof Shape.Line leader) {
                        Point from = leader.points().get(0);
                        Point to = leader.points().get(1);
                        int pixels = 0;
                        for (Shape shape : drawn.drawing().shapes()) {
                            assertFalse(
                                    shape instanceof Shape.Words words
                                            && words.bounds().crossedBy(from, to),
                                    () -> drawn.where() + ": " + leader + " crosses " + shape);
                            pixels += shape instanceof Shape.Circle circle
                                            && circle.filled()
                                            && distance(circle.centre(), from, to) < circle.radius()
                                    ? 1
                                    : 0;
                        }
                        boolean tight =
                                drawn.pitch() < TIGHT || drawn.panel().tile().order() == Tile.Order.ALL_ONE_WAY;
                        assertTrue(pixels <= (tight ? 2 : 0), drawn.where() + ": " + leader + " crosses " + pixels);
                    }
                }
            }
        });
    }

    private static double distance(Point point, Point from, Point to) {
        double least = Double.MAX_VALUE;
        for (double along = 0; along <= from.distanceTo(to); along += 0.1) {
            least = Math.min(least, point.distanceTo(from.towards(to, along)));
        }
        return least;
    }

    /** More white than black among the pixels: a copy of a copy has each of them still. */
    @TestFactory
    Stream<DynamicTest> theInsideOfATileIsNoBlot() {
        return forEach(drawn -> {
            for (Panel.Place place : drawn.panel().places()) {
                List<Shape> shapes = drawn.drawing().shapes("tile " + place.column() + " " + place.row());
                Box pixels = null;
                double ink = 0;
                for (Shape shape : shapes) {
                    if (shape instanceof Shape.Circle circle) {
                        Box body = Box.around(circle.centre());
                        pixels = pixels == null ? body : pixels.with(body);
                        double radius = circle.radius(); // a line of 1.4 passes through a filled one
                        ink += circle.filled() ? (Math.PI * radius - 2.8) * radius : 2 * Math.PI * radius * 1.5;
                    }
                }
                if (pixels != null && pixels.height() > 0) {
                    ink += lines(shapes, pixels.grown(2));
                    double pitch = pixels.width() / (drawn.panel().tile().columns() - 1);
                    Box around = pixels.grown(pitch / 2);
                    double share = ink / (around.width() * around.height());
                    assertTrue(share < 0.4, drawn.where() + ": " + share + " of the inside is black");
                }
            }
        });
    }

    private static double lines(List<Shape> shapes, Box inside) {
        double ink = 0;
        for (Shape shape : shapes) {
            if (shape instanceof Shape.Line line) {
                for (int i = 1; i < line.points().size(); i++) {
                    Point from = line.points().get(i - 1);
                    Point to = line.points().get(i);
                    ink += inside.contains(from) && inside.contains(to)
                            ? from.distanceTo(to) * line.stroke().width()
                            : 0;
                }
            } else if (shape instanceof Shape.Polygon head
                    && inside.contains(head.bounds().centre())) {
                ink += head.bounds().width() * head.bounds().height() / 2;
            }
        }
        return ink;
    }

    @TestFactory
    Stream<DynamicTest> noFigureTakesMoreThanFortyKilobytes() {
        return forEach(drawn -> {
            int bytes = ChainFigure.draw(
                            "",
                            drawn.panel(),
                            drawn.marks(),
                            new Figure.Setting("q", drawn.widest(), Languages.ENGLISH))
                    .svg()
                    .getBytes(StandardCharsets.UTF_8)
                    .length;
            assertTrue(bytes <= 40_000, drawn.where() + ": " + bytes + " bytes");
        });
    }
}
