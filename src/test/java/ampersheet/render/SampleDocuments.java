package ampersheet.render;

import ampersheet.figure.Figure;
import ampersheet.figure.Picture;
import ampersheet.figure.Pictures;
import ampersheet.formula.Expression;
import ampersheet.formula.FormulaReader;
import ampersheet.formula.Notation;
import ampersheet.formula.Symbol;
import ampersheet.quantity.DecimalMarker;
import ampersheet.quantity.QuantityWriter;
import ampersheet.quantity.QuantityWriter.Printed;
import ampersheet.quantity.Unit;
import ampersheet.sheet.Document;
import ampersheet.sheet.Document.Assumption;
import ampersheet.sheet.Document.Assumptions;
import ampersheet.sheet.Document.Block;
import ampersheet.sheet.Document.Caution;
import ampersheet.sheet.Document.Cell;
import ampersheet.sheet.Document.FigureBlock;
import ampersheet.sheet.Document.GivenLine;
import ampersheet.sheet.Document.Givens;
import ampersheet.sheet.Document.Heading;
import ampersheet.sheet.Document.KeyLine;
import ampersheet.sheet.Document.KeyTable;
import ampersheet.sheet.Document.Kind;
import ampersheet.sheet.Document.Listing;
import ampersheet.sheet.Document.MistakeLine;
import ampersheet.sheet.Document.Paper;
import ampersheet.sheet.Document.PreferredValues;
import ampersheet.sheet.Document.ProblemBlock;
import ampersheet.sheet.Document.Prose;
import ampersheet.sheet.Document.Question;
import ampersheet.sheet.Document.ReferenceTable;
import ampersheet.sheet.Document.Series;
import ampersheet.sheet.Document.StepBlock;
import ampersheet.sheet.Document.Steps;
import ampersheet.sheet.Document.Table;
import ampersheet.sheet.Document.UnitBox;
import ampersheet.source.Languages;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Documents made by hand, of every kind and with every block, so that the formats are tested without the other rooms.
 */
public final class SampleDocuments {
    private SampleDocuments() {}

    private static final Symbol V_S = new Symbol("V", "s");
    private static final Symbol V_F = new Symbol("V", "f");
    private static final Symbol I_F = new Symbol("I", "f");
    private static final Symbol V_R = new Symbol("V", "r");
    private static final Symbol R = new Symbol("R", "");
    private static final Symbol R_N = new Symbol("R", "n");
    private static final Symbol P = new Symbol("P", "");

    private static final Notation INDICATOR = notation(
            Map.of("Vs", V_S, "Vf", V_F, "If", I_F, "Vr", V_R, "R", R, "Rn", R_N, "P", P),
            "Vs",
            9,
            "V",
            "Vf",
            2,
            "V",
            "If",
            0.016,
            "mA",
            "Vr",
            7,
            "V",
            "R",
            437.5,
            "ohm",
            "Rn",
            470,
            "ohm");

    public static Document sheet() {
        return new Document(
                Kind.SHEET,
                Languages.ENGLISH,
                "Indicator lights and a warm regulator",
                "Mara Lindqvist · seat 4",
                "7KQ-4M2-P",
                Paper.A4,
                List.of(
                        new Prose("Work on paper and write each answer with its unit. The topics are mixed **on "
                                + "purpose**: finding out "
                                + "which rule a problem needs is half of the exercise."),
                        new PreferredValues(List.of(
                                new Series(
                                        "E12",
                                        List.of(
                                                "1.0", "1.2", "1.5", "1.8", "2.2", "2.7", "3.3", "3.9", "4.7", "5.6",
                                                "6.8", "8.2")),
                                new Series(
                                        "E24",
                                        List.of(
                                                "1.0", "1.1", "1.2", "1.3", "1.5", "1.6", "1.8", "2.0", "2.2", "2.4",
                                                "2.7", "3.0", "3.3", "3.6", "3.9", "4.3", "4.7", "5.1", "5.6", "6.2",
                                                "6.8", "7.5", "8.2", "9.1")))),
                        worked(),
                        faded(),
                        bare()));
    }

    private static ProblemBlock worked() {
        return new ProblemBlock(
                "1",
                "A resistor for one indicator",
                List.of("current limiting", "level 1", "worked example"),
                List.of(
                        new Prose("A status light is to show that a board is powered. The supply gives **9 V**. The "
                                + "LED drops **2 V** when "
                                + "**16 mA** flows through it, and that current makes it bright enough. A "
                                + "resistor in series with the LED sets "
                                + "the current."),
                        indicatorGivens("9\u00a0V", "2\u00a0V", "16\u00a0mA"),
                        new FigureBlock(indicatorFigure("p1-", "9\u00a0V", "2\u00a0V", "16\u00a0mA")),
                        new Steps("Worked example", indicatorSteps()),
                        benchCaution()));
    }

    private static ProblemBlock faded() {
        List<StepBlock> steps = indicatorSteps();
        return new ProblemBlock(
                "2",
                "The same light on another board",
                List.of("current limiting", "level 1", "some steps are yours"),
                List.of(
                        new Prose("A second board has a red LED. Complete the working."),
                        indicatorGivens("12\u00a0V", "1.8\u00a0V", "10\u00a0mA"),
                        new FigureBlock(indicatorFigure("p2-", "12\u00a0V", "1.8\u00a0V", "10\u00a0mA")),
                        new Steps(
                                "",
                                List.of(
                                        steps.get(0),
                                        blank(steps.get(1), "q2a"),
                                        steps.get(2),
                                        blank(steps.get(3), "q2b"))),
                        new Question(
                                "q2c",
                                "What resistance gives exactly the **wanted** current?",
                                Optional.of(R),
                                "value and unit",
                                List.of()),
                        new Question(
                                "q2d",
                                "Which E24 value do you fit, so that the current is not exceeded?",
                                Optional.of(R_N),
                                "in Ω",
                                List.of())));
    }

    private static ProblemBlock bare() {
        return new ProblemBlock(
                "3",
                "Does the regulator need a heat sink when the load stays on all day?",
                List.of("thermal rise", "level 3"),
                List.of(
                        new Prose("A supply board turns 12 V into 5 V. The data of the part:\n\n"
                                + "| Case | Thermal resistance | Note |\n| --- | ---: | --- |\n| no heat sink | "
                                + "65 K/W | junction to air |\n"
                                + "| small heat sink | 24 K/W | *with* paste |\n\n"
                                + "1. The lid is closed.\n2. The air inside is at 40 °C.\n"),
                        new Assumptions(List.of(
                                new Assumption("all the power becomes heat", ""),
                                new Assumption("the air inside stays at its temperature", ""))),
                        new Givens(List.of(
                                new GivenLine(Optional.of(new Symbol("V", "in")), "input voltage", "12\u00a0V"),
                                new GivenLine(Optional.of(new Symbol("I", "")), "load current", "350\u00a0mA"),
                                new GivenLine(
                                        Optional.of(new Symbol("θ", "JA")),
                                        "thermal resistance, junction to air, part without heat sink",
                                        "65\u00a0K/W"),
                                new GivenLine(Optional.empty(), "mounting", "upright"))),
                        new Caution(
                                "Hot parts",
                                "The regulator can burn skin. Switch off and let it cool before you touch it."),
                        new ReferenceTable(
                                "Copper wire",
                                List.of("Gauge", "Diameter in mm"),
                                List.of(List.of("22", "0.644"), List.of("24", "0.511"))),
                        new Question(
                                "q3a",
                                "How hot does the junction become?",
                                Optional.of(new Symbol("T", "J")),
                                "in °C",
                                List.of()),
                        new Question("q3b", "Does it need a heat sink?", Optional.empty(), "", List.of("yes", "no")),
                        new Question(
                                "q3c",
                                "How many regulators would share the heat so that none needs one?",
                                Optional.empty(),
                                UnitBox.NONE,
                                "",
                                List.of(),
                                ""),
                        new Question(
                                "q3d",
                                "What share of the power stays in the regulator?",
                                Optional.empty(),
                                UnitBox.SHARE,
                                "",
                                List.of(),
                                "")));
    }

    public static Document key() {
        return new Document(
                Kind.KEY,
                Languages.ENGLISH,
                "Indicator lights and a warm regulator",
                "Mara Lindqvist · seat 4",
                "7KQ-4M2-P",
                Paper.LETTER,
                List.of(new ProblemBlock(
                        "1",
                        "A resistor for one indicator",
                        List.of("current limiting", "level 1"),
                        List.of(
                                new KeyTable(List.of(
                                        new KeyLine(
                                                "q1a",
                                                Optional.of(R),
                                                "438\u00a0Ω",
                                                "428.8\u00a0Ω to 446.3\u00a0Ω",
                                                "437.5\u00a0Ω, gap 0.0000\u00a0%",
                                                true,
                                                List.of(
                                                        new MistakeLine(
                                                                "562.5\u00a0Ω",
                                                                "The whole supply was put across the resistor. "
                                                                        + "Take off the LED's "
                                                                        + "forward voltage first; the resistor "
                                                                        + "gets only what is left."),
                                                        new MistakeLine(
                                                                "125\u00a0Ω",
                                                                "The LED's own voltage was used. The resistor "
                                                                        + "gets the rest."))),
                                        new KeyLine(
                                                "q1b",
                                                Optional.of(R_N),
                                                "470\u00a0Ω",
                                                "exactly, a value of E24",
                                                "470\u00a0Ω, the same member",
                                                true,
                                                List.of(new MistakeLine(
                                                        "430\u00a0Ω", "This is the neighbour below. Round up."))),
                                        new KeyLine(
                                                "q1c",
                                                Optional.empty(),
                                                "yes",
                                                "this option only",
                                                "follows from q1a",
                                                true,
                                                List.of()))),
                                new Steps("Working", indicatorSteps()),
                                new Assumptions(List.of(new Assumption(
                                        "the supply keeps its voltage at every load",
                                        "A small adapter falls by 5 % at full load, and the current with it.")))))));
    }

    public static Document index() {
        return new Document(
                Kind.INDEX,
                Languages.ENGLISH,
                "Class list: indicator lights",
                "12 seats, 8 problems each",
                "",
                Paper.A4,
                List.of(
                        new Prose("Sheets and keys lie in separate folders. Hand out only what is in `sheets`."),
                        new Heading(2, "Seats"),
                        new Table(
                                "One row for each seat",
                                List.of("Seat", "Learner", "Sheet ID", "Sheet", "Key"),
                                List.of(
                                        List.of(
                                                cell("1"),
                                                cell("Ada Okonjo"),
                                                cell("7KQ-4M2-A"),
                                                link("page", "sheets/7KQ-4M2-A.html"),
                                                link("key", "keys/7KQ-4M2-A.html")),
                                        List.of(
                                                cell("2"),
                                                cell("Jean-Baptiste de la Tour-Montgomery"),
                                                cell("7KQ-4M2-C"),
                                                link("page", "sheets/7KQ-4M2-C.html"),
                                                link("key", "keys/7KQ-4M2-C.html")),
                                        List.of(
                                                cell("3"),
                                                cell("Łukasz Żółć"),
                                                cell("7KQ-4M2-E"),
                                                link("page", "sheets/7KQ-4M2-E.html"),
                                                link("key", "keys/7KQ-4M2-E.html"))))));
    }

    /**
     * Every text of a document replaced by the given ones, by turns: what a hostile roster or template could bring in.
     */
    public static Document hostile(Kind kind, List<String> texts) {
        Turns next = new Turns(texts);
        List<Block> blocks = List.of(
                new Prose(next.text()),
                new Heading(1, next.text()),
                new ProblemBlock(
                        next.text(),
                        next.text(),
                        List.of(next.text(), next.text()),
                        List.of(
                                new Prose(next.text()),
                                new Givens(List.of(
                                        new GivenLine(Optional.of(V_S), next.text(), next.text()),
                                        new GivenLine(Optional.empty(), next.text(), next.text()))),
                                new FigureBlock(new Figure(
                                        indicatorDrawing("h-", "9\u00a0V", "2\u00a0V", "16\u00a0mA"),
                                        next.text(),
                                        next.text(),
                                        new Figure.Table(
                                                List.of(next.text(), next.text()),
                                                List.of(List.of(next.text(), next.text()))),
                                        List.of(next.text()))),
                                new Steps(
                                        next.text(),
                                        List.of(
                                                new StepBlock(
                                                        1,
                                                        V_R,
                                                        next.text(),
                                                        Optional.empty(),
                                                        Optional.of(FormulaReader.expression("Vs - Vf")),
                                                        INDICATOR,
                                                        Optional.of(printed(7, "V")),
                                                        next.text(),
                                                        next.text(),
                                                        "",
                                                        UnitBox.ASKED,
                                                        ""),
                                                new StepBlock(
                                                        2,
                                                        R,
                                                        next.text(),
                                                        Optional.empty(),
                                                        Optional.empty(),
                                                        INDICATOR,
                                                        Optional.empty(),
                                                        next.text(),
                                                        next.text(),
                                                        next.text(),
                                                        UnitBox.ASKED,
                                                        ""))),
                                new Question(next.text(), next.text(), Optional.of(R), next.text(), List.of()),
                                new Question(
                                        next.text(),
                                        next.text(),
                                        Optional.empty(),
                                        next.text(),
                                        List.of(next.text(), next.text())),
                                new Caution(next.text(), next.text()),
                                new Assumptions(List.of(new Assumption(next.text(), ""))),
                                new Assumptions(List.of(new Assumption(next.text(), next.text()))),
                                new PreferredValues(
                                        List.of(new Series(next.text(), List.of(next.text(), next.text())))),
                                new ReferenceTable(
                                        next.text(),
                                        List.of(next.text(), next.text()),
                                        List.of(List.of(next.text(), next.text()))),
                                new Listing(next.text(), next.text()),
                                new KeyTable(List.of(new KeyLine(
                                        next.text(),
                                        Optional.of(R),
                                        next.text(),
                                        next.text(),
                                        next.text(),
                                        true,
                                        List.of(new MistakeLine(next.text(), next.text()))))))),
                new Table(
                        next.text(),
                        List.of(next.text(), next.text()),
                        List.of(List.of(new Cell(next.text(), next.text()), new Cell(next.text(), next.text())))));
        return new Document(kind, Languages.ENGLISH, next.text(), next.text(), next.text(), Paper.A4, blocks);
    }

    private static final class Turns {
        private final List<String> texts;
        private int next;

        Turns(List<String> texts) {
            this.texts = texts;
        }

        String text() {
            return texts.get(next++ % texts.size());
        }
    }

    // Pieces

    private static Givens indicatorGivens(String supply, String forward, String current) {
        return new Givens(List.of(
                new GivenLine(Optional.of(V_S), "supply voltage", supply),
                new GivenLine(Optional.of(V_F), "forward voltage of the LED", forward),
                new GivenLine(Optional.of(I_F), "forward current wanted", current)));
    }

    private static Caution benchCaution() {
        return new Caution(
                "Wrong settings destroy parts",
                "A supply set too high breaks the LED at once. Set voltage and current limit before you connect "
                        + "anything, and switch "
                        + "off before you change the wiring.");
    }

    private static List<StepBlock> indicatorSteps() {
        return List.of(
                step(
                        1,
                        V_R,
                        "voltage left for the resistor",
                        "Vs - Vf",
                        printed(7, "V"),
                        "Kirchhoff's voltage law",
                        "around the loop the resistor takes what the LED leaves of the supply"),
                step(
                        2,
                        R,
                        "resistance that sets the current",
                        "Vr / If",
                        printed(437.5, "ohm"),
                        "Ohm's law",
                        "the same current flows through LED and resistor"),
                new StepBlock(
                        3,
                        R_N,
                        "next preferred value upwards",
                        Optional.of(FormulaReader.condition("R > 430 ohm")),
                        Optional.of(FormulaReader.expression("next_up(R, E24)")),
                        INDICATOR,
                        Optional.of(printed(470, "ohm")),
                        "preferred values",
                        "rounding up keeps the current at or below the one wanted",
                        "",
                        UnitBox.ASKED,
                        ""),
                step(
                        4,
                        P,
                        "power the preferred resistor turns into heat",
                        "Vr ^ 2 / Rn",
                        printed(0.1042553191489, "mW"),
                        "electrical power",
                        "the part must be rated for at least twice this"));
    }

    private static StepBlock step(
            int number,
            Symbol symbol,
            String meaning,
            String formula,
            Printed result,
            String principle,
            String reason) {
        Expression is = FormulaReader.expression(formula);
        return new StepBlock(
                number,
                symbol,
                meaning,
                Optional.empty(),
                Optional.of(is),
                INDICATOR,
                Optional.of(result),
                principle,
                reason,
                "",
                UnitBox.ASKED,
                "");
    }

    private static StepBlock blank(StepBlock step, String label) {
        return new StepBlock(
                step.number(),
                step.symbol(),
                step.meaning(),
                Optional.empty(),
                step.formula(),
                step.notation(),
                Optional.empty(),
                step.principle(),
                step.reason(),
                label,
                UnitBox.ASKED,
                "");
    }

    private static Printed printed(double si, String unit) {
        return QuantityWriter.POINT.plain(si, Unit.parse(unit), 4);
    }

    /** @param values name, number in SI and unit by turns */
    private static Notation notation(Map<String, Symbol> symbols, Object... values) {
        Map<String, Printed> printed = new LinkedHashMap<>();
        for (int i = 0; i < values.length; i += 3) {
            printed.put((String) values[i], printed(((Number) values[i + 1]).doubleValue(), (String) values[i + 2]));
        }
        return new Notation(symbols, printed, Map.of(), DecimalMarker.POINT, Languages.ENGLISH);
    }

    private static Cell cell(String text) {
        return new Cell(text, "");
    }

    private static Cell link(String text, String href) {
        return new Cell(text, href);
    }

    private static Figure indicatorFigure(String idPrefix, String supply, String forward, String current) {
        return new Figure(
                indicatorDrawing(idPrefix, supply, forward, current),
                "supply, resistor and LED in one loop",
                "One loop of a supply, a resistor and an LED: 3 parts, 3 nodes.",
                new Figure.Table(
                        List.of("Component", "Value", "From", "To", "Polarity"),
                        List.of(
                                List.of("supply V1", supply, "node 0", "node A", "plus at node A"),
                                List.of("resistor R1", "asked", "node A", "node B", "none"),
                                List.of("LED D1", forward + " at " + current, "node B", "node 0", "anode at node B"))),
                List.of(
                        "From plus of the supply V1 the current enters resistor R1.",
                        "From R1 it goes on into the anode of LED D1.",
                        "From the cathode of D1 it returns to minus of the supply."));
    }

    private static Picture indicatorDrawing(String idPrefix, String supply, String forward, String current) {
        return Pictures.of(340, 230, indicatorSvg(idPrefix, supply, forward, current));
    }

    private static String indicatorSvg(String idPrefix, String supply, String forward, String current) {
        return ("""
        <svg xmlns="http://www.w3.org/2000/svg" role="img" aria-labelledby="@title @desc" width="340" height="230" \
        viewBox="0 0 340 230" fill="currentColor" font-family="Arial, 'Liberation Sans', sans-serif" font-size="14">
        <title id="@title">Supply, resistor and LED in one loop</title>
        <desc id="@desc">A source on the left, a resistor on top, an LED on the right.</desc>
        <g fill="none" stroke="currentColor" stroke-width="2">
        <path d="M60 90V40H130M210 40H280V85M280 125V190H60V130"/>
        <circle cx="60" cy="110" r="20"/><path d="M60 90V130"/>
        <rect x="130" y="28" width="80" height="24"/>
        <path d="M262 85H298L280 121ZM262 122H298"/><path d="M304 96l14-8m-6-1l6 1-2 6M304 108l14-8m-6-1l6 1-2 6"/>
        </g>
        <text x="36" y="94">+</text><text x="88" y="108">V1</text><text x="88" y="126">$supply</text>
        <text x="158" y="20">R1</text><text x="164" y="72"><tspan font-style="italic">R</tspan></text>
        <text x="200" y="108">D1</text><text x="200" y="126">$forward</text><text x="200" y="144">at $current</text>
        </svg>""")
                .replace("@", idPrefix)
                .replace("$supply", supply)
                .replace("$forward", forward)
                .replace("$current", current);
    }
}
