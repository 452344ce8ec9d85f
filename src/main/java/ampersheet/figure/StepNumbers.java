package ampersheet.figure;

import ampersheet.language.Language;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Numbers of steps in circles, each beside the part where the step's result belongs. They are put where there is room
 * when all else stands: a part that is hemmed in goes without.
 */
final class StepNumbers {
    private static final double RADIUS = 8;
    private static final double GAP = 3;
    private static final double CLEARANCE = 2;
    /** From what belongs to other parts, so that nobody takes it for theirs. */
    private static final double ASIDE = 9;
    /** From a part or its text; farther away the number would seem to belong to another. */
    private static final double NEAREST = 3;

    private static final double FARTHEST = 12;

    private final Drawing drawing;
    private final double widest;
    private boolean any;

    private StepNumbers(Drawing drawing, double widest) {
        this.drawing = drawing;
        this.widest = widest;
    }

    /**
     * @param found numbers by the name of the part
     * @param widest width in pixels that the numbers may not make it pass
     * @return whether there was room for any
     */
    static boolean add(Drawing drawing, Map<String, List<Integer>> found, double widest) {
        StepNumbers numbers = new StepNumbers(drawing, widest);
        found.forEach(numbers::at);
        return numbers.any;
    }

    private void at(String part, List<Integer> steps) {
        List<Shape> shapes = drawing.shapes(part);
        if (shapes.isEmpty()) {
            return;
        }
        for (Box box : beside(shapes, steps.size() * (2 * RADIUS + GAP) - GAP, 2 * RADIUS)) {
            if (isFor(part, box) && drawing.widthWith(box) <= widest) {
                any = true;
                for (int i = 0; i < steps.size(); i++) {
                    number(
                            "steps at " + part,
                            steps.get(i),
                            new Point(
                                    box.left() + RADIUS + i * (2 * RADIUS + GAP),
                                    box.centre().y()));
                }
                return;
            }
        }
    }

    private boolean isFor(String part, Box box) {
        return drawing.isFree(box.grown(CLEARANCE))
                && drawing.othersIn(box.grown(ASIDE), part) == 0
                && !drawing.hasWords(box, ASIDE, CLEARANCE, part);
    }

    private void number(String group, int step, Point centre) {
        drawing.circle(group, Stroke.FINE, centre, RADIUS - Stroke.FINE.width() / 2);
        drawing.words(group, Lettering.plain(Integer.toString(step), Lettering.SMALL), centre);
    }

    /** Beside the first line of its text, below the last; where it has none, around its body. */
    private static List<Box> beside(List<Shape> shapes, double width, double height) {
        List<Box> words = shapes.stream()
                .filter(shape -> shape instanceof Shape.Words text
                        && !text.insideBody()
                        && text.lettering().size() >= Lettering.BODY)
                .map(Shape::bounds)
                .toList();
        List<Box> places = new ArrayList<>();
        for (double away = NEAREST; away <= FARTHEST; away += 3) {
            for (Box line : words) {
                double y = line.centre().y();
                places.add(Box.centred(new Point(line.right() + away + width / 2, y), width, height));
                places.add(Box.centred(new Point(line.left() - away - width / 2, y), width, height));
            }
            Optional<Box> block = words.stream().reduce(Box::with);
            Box whole = block.orElseGet(
                    () -> shapes.stream().map(Shape::bounds).reduce(Box::with).orElseThrow());
            places.add(Box.centred(new Point(whole.centre().x(), whole.bottom() + away + height / 2), width, height));
            places.add(Box.centred(new Point(whole.centre().x(), whole.top() - away - height / 2), width, height));
            if (block.isEmpty()) {
                places.add(Box.centred(
                        new Point(
                                whole.right() + away + width / 2, whole.centre().y()),
                        width,
                        height));
                places.add(Box.centred(
                        new Point(
                                whole.left() - away - width / 2, whole.centre().y()),
                        width,
                        height));
            }
        }
        return places;
    }

    /** Of a figure that has some. */
    static String inTitle(String title, Language language) {
        return language.say("figure.with-step-numbers", "title", title);
    }

    /** The same in words. */
    static List<String> walk(Map<String, List<Integer>> found, Map<String, Label> labels, Language language) {
        List<String> sentences = new ArrayList<>();
        found.forEach((part, steps) -> sentences.add(language.count(
                "figure.steps-belong",
                steps.size(),
                "steps",
                language.all(steps.stream().map(String::valueOf).toList()),
                "part",
                Optional.ofNullable(labels.get(part)).map(Label::name).orElse(part))));
        return sentences;
    }
}
