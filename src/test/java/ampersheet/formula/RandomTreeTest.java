package ampersheet.formula;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import ampersheet.quantity.DecimalMarker;
import ampersheet.quantity.Quantity;
import ampersheet.quantity.QuantityWriter.Printed;
import ampersheet.source.Languages;
import java.io.StringReader;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.TreeSet;
import javax.xml.parsers.DocumentBuilder;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.Test;
import org.w3c.dom.Element;
import org.w3c.dom.Node;
import org.xml.sax.InputSource;

/** Trees nobody thought of: printed and read back they keep their value, bounded they hold every value. */
class RandomTreeTest {
    private static final long SEED = 20261125L;
    private static final int TREES = 4000;
    private static final List<String> NAMES = List.of("Vs", "R1", "n", "columns", "theta_JA");

    /** From MathML Core; {@code mfenced} and {@code menclose} are not in it. */
    private static final Set<String> CORE =
            Set.of("math", "mrow", "mi", "mn", "mo", "mtext", "mspace", "mfrac", "msqrt", "msub", "msup", "mover");

    private static final class Trees {
        private final Random random;
        private final boolean functions;

        Trees(long seed, boolean functions) {
            this.random = new Random(seed);
            this.functions = functions;
        }

        Expression tree(int depth) {
            if (depth == 0 || random.nextInt(6) == 0) {
                return leaf();
            }
            return switch (random.nextInt(functions ? 9 : 6)) {
                case 0 -> new Expression.Negative(tree(depth - 1), 0);
                case 1 -> new Expression.Sum(tree(depth - 1), tree(depth - 1), 0);
                case 2 -> new Expression.Difference(tree(depth - 1), tree(depth - 1), 0);
                case 3 -> new Expression.Product(tree(depth - 1), tree(depth - 1), 0);
                case 4 -> new Expression.Quotient(tree(depth - 1), tree(depth - 1), 0);
                case 5 -> new Expression.Power(tree(depth - 1), exponent(), 0);
                default -> call(depth);
            };
        }

        private Expression leaf() {
            return random.nextBoolean()
                    ? new Expression.Name(NAMES.get(random.nextInt(NAMES.size())), 0)
                    : constant(1 + random.nextInt(9));
        }

        private static Expression constant(int number) {
            return new Expression.Constant(number, Lexer.NO_UNIT, Integer.toString(number), 0);
        }

        private Expression exponent() {
            return switch (random.nextInt(3)) {
                case 0 -> constant(2);
                case 1 -> constant(3);
                default -> new Expression.Negative(constant(1), 0);
            };
        }

        private Expression call(int depth) {
            Function[] functions = Function.values();
            Function function = functions[random.nextInt(functions.length)];
            if (function.takes() == Function.Takes.SERIES) {
                return new Expression.Call(
                        function.written(), List.of(tree(depth - 1), new Expression.Name("E24", 0)), 0);
            }
            return new Expression.Call(
                    function.written(),
                    function.accepts(1) ? List.of(tree(depth - 1)) : List.of(tree(depth - 1), tree(depth - 1)),
                    0);
        }
    }

    private static Values values(Random random) {
        Map<String, Quantity> quantities = new LinkedHashMap<>();
        for (String name : NAMES) {
            quantities.put(name, Quantity.number(0.5 + 4 * random.nextDouble()));
        }
        return Values.of(quantities, Map.of());
    }

    /** Plain text as it would be typed: the printed signs exchanged for those of the formula language. */
    private static String typed(String printed) {
        StringBuilder text = new StringBuilder();
        boolean raised = false;
        for (char c : printed.toCharArray()) {
            char digit = Superscript.read(c);
            if (digit != 0) {
                text.append(raised ? "" : "^").append(digit);
            } else {
                text.append(c == '−' ? "-" : c == '·' || c == '×' ? "*" : String.valueOf(c));
            }
            raised = digit != 0;
        }
        return text.toString().replace("V_s", "Vs").replace("R_1", "R1").replace("θ_JA", "theta_JA");
    }

    @Test
    void plainTextReadBackHasTheSameValue() {
        Trees trees = new Trees(SEED, false);
        Random random = new Random(SEED);
        Notation notation = new Notation(Map.of(), Map.of(), Map.of(), DecimalMarker.POINT, Languages.ENGLISH);
        int compared = 0;
        for (int i = 0; i < TREES; i++) {
            Expression tree = trees.tree(5);
            Values values = values(random);
            String printed = PlainText.symbolic(tree, notation);
            String replay = "seed " + SEED + ", tree " + i + ": " + printed;
            double value = Evaluation.evaluate(tree, values).value();
            double readBack = Evaluation.evaluate(FormulaReader.expression(typed(printed)), values)
                    .value();
            // Sums and products may be regrouped; where that cancels badly there is nothing to compare.
            if (Double.isFinite(value) && Math.abs(value) > 1e-6 && Math.abs(value) < 1e12) {
                assertEquals(value, readBack, 1e-6 * Math.abs(value), replay);
                compared++;
            }
        }
        assertTrue(compared > TREES / 2, "too few values to compare: " + compared);
    }

    @Test
    void mathMlKeepsToTheCoreAndToItsNumberOfChildren() throws Exception {
        Trees trees = new Trees(SEED, true);
        Map<String, Printed> values = Map.of(
                "Vs",
                new Printed("−5\u00a0V", "−5", "V", true),
                "R1",
                new Printed("1.7×10⁻⁵\u00a0K/W", "1.7×10⁻⁵", "K/W", true));
        Notation notation = new Notation(
                Map.of("n", new Symbol("<&", "\">")),
                values,
                Map.of("order", "a<b"),
                DecimalMarker.POINT,
                Languages.ENGLISH);
        Set<String> seen = new TreeSet<>();
        DocumentBuilder builder = DocumentBuilderFactory.newInstance().newDocumentBuilder();
        for (int i = 0; i < 300; i++) {
            Expression tree = trees.tree(4);
            Condition condition = new Condition.Not(
                    new Condition.Either(
                            new Condition.Comparison(tree, Condition.Relation.AT_LEAST, tree, 0),
                            new Condition.Comparison(
                                    new Expression.Name("order", 0),
                                    Condition.Relation.EQUAL,
                                    new Expression.Name("a&b", 0),
                                    0),
                            0),
                    0);
            for (String markup : List.of(
                    MathMl.symbolic(tree, notation),
                    MathMl.substituted(tree, notation),
                    MathMl.symbolic(condition, notation),
                    MathMl.substituted(condition, notation))) {
                String math = "<math>" + markup + "</math>";
                Element root =
                        builder.parse(new InputSource(new StringReader(math))).getDocumentElement();
                assertCore(root, seen, "seed " + SEED + ", tree " + i + ": " + math);
            }
        }
        assertEquals(
                new TreeSet<>(List.of("math", "mfrac", "mi", "mn", "mo", "mrow", "msqrt", "msub", "msup", "mtext")),
                seen);
    }

    private static void assertCore(Element element, Set<String> seen, String replay) {
        String name = element.getTagName();
        assertTrue(CORE.contains(name), name + " is not allowed; " + replay);
        seen.add(name);
        int children = 0;
        boolean text = false;
        for (Node child = element.getFirstChild(); child != null; child = child.getNextSibling()) {
            if (child instanceof Element inner) {
                children++;
                assertCore(inner, seen, replay);
            } else {
                text = true;
            }
        }
        boolean token = Set.of("mi", "mn", "mo", "mtext").contains(name);
        assertEquals(token, text, name + " holds text if and only if it is a token; " + replay);
        assertTrue(!token || children == 0, name + " is a token; " + replay);
        if (Set.of("mfrac", "msub", "msup").contains(name)) {
            assertEquals(2, children, name + " has two children; " + replay);
        }
    }
}
