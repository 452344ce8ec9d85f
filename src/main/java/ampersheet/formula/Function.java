package ampersheet.formula;

import ampersheet.quantity.Elementary;
import ampersheet.quantity.PreferredSeries;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** The functions of the formula language. */
enum Function {
    SQRT("sqrt", 1, 1, Takes.SQUARE),
    EXP("exp", 1, 1, Takes.NUMBER),
    LN("ln", 1, 1, Takes.NUMBER),
    LOG10("log10", 1, 1, Takes.NUMBER),
    SIN("sin", 1, 1, Takes.NUMBER),
    COS("cos", 1, 1, Takes.NUMBER),
    TAN("tan", 1, 1, Takes.NUMBER),
    ATAN("atan", 1, 1, Takes.NUMBER),
    ABS("abs", 1, 1, Takes.ALIKE),
    MIN("min", 2, Integer.MAX_VALUE, Takes.ALIKE),
    MAX("max", 2, Integer.MAX_VALUE, Takes.ALIKE),
    PARALLEL("parallel", 2, Integer.MAX_VALUE, Takes.ALIKE),
    FLOOR("floor", 1, 1, Takes.NUMBER),
    CEILING("ceiling", 1, 1, Takes.NUMBER),
    ROUND("round", 1, 1, Takes.NUMBER),
    MOD("mod", 2, 2, Takes.NUMBER),
    NEXT_UP("next_up", 2, 2, Takes.SERIES),
    NEXT_DOWN("next_down", 2, 2, Takes.SERIES),
    NEAREST("nearest", 2, 2, Takes.SERIES);

    /** What a function asks of its arguments. */
    enum Takes {
        /** Plain numbers; the value is one too. */
        NUMBER,
        /** A quantity whose unit is a square. */
        SQUARE,
        /** Quantities of one dimension, which the value has too. */
        ALIKE,
        /** A quantity of any dimension, which the value has too, and the name of a series. */
        SERIES
    }

    private static final Map<String, Function> BY_NAME = new LinkedHashMap<>();
    private static final Map<String, PreferredSeries> SERIES_BY_NAME = new LinkedHashMap<>();

    static {
        for (Function function : values()) {
            BY_NAME.put(function.written, function);
        }
        for (PreferredSeries series : PreferredSeries.values()) {
            SERIES_BY_NAME.put(series.name(), series);
        }
    }

    private final String written;
    private final int fewest;
    private final int most;
    private final Takes takes;

    Function(String written, int fewest, int most, Takes takes) {
        this.written = written;
        this.fewest = fewest;
        this.most = most;
        this.takes = takes;
    }

    static Optional<Function> named(String name) {
        return Optional.ofNullable(BY_NAME.get(name));
    }

    static List<String> names() {
        return new ArrayList<>(BY_NAME.keySet());
    }

    String written() {
        return written;
    }

    Takes takes() {
        return takes;
    }

    boolean accepts(int arguments) {
        return arguments >= fewest && arguments <= most;
    }

    /** "one argument", "two arguments", "two arguments or more". */
    String arity() {
        return fewest == 1 ? "one argument" : most == fewest ? "two arguments" : "two arguments or more";
    }

    /** The series an argument names, if it is one: {@code E24}. */
    static Optional<PreferredSeries> series(Expression argument) {
        return argument instanceof Expression.Name name
                ? Optional.ofNullable(SERIES_BY_NAME.get(name.id()))
                : Optional.empty();
    }

    /**
     * The value, for functions that take no series. Angles in radians. NaN outside the function's domain.
     *
     * @param x the arguments in SI units
     */
    double value(List<Double> x) {
        double first = x.get(0);
        return switch (this) {
            case SQRT -> Math.sqrt(first);
            case EXP -> Elementary.exp(first);
            case LN -> Elementary.ln(first);
            case LOG10 -> Elementary.log10(first);
            case SIN -> Elementary.sin(first);
            case COS -> Elementary.cos(first);
            case TAN -> Elementary.tan(first);
            case ATAN -> Elementary.atan(first);
            case ABS -> Math.abs(first);
            case MIN -> smallest(x);
            case MAX -> largest(x);
            case PARALLEL -> parallel(x);
            case FLOOR -> Nearness.floor(first);
            case CEILING -> Nearness.ceiling(first);
            case ROUND -> Nearness.round(first);
            case MOD -> Nearness.mod(first, x.get(1));
            case NEXT_UP, NEXT_DOWN, NEAREST -> throw new IllegalArgumentException(written + " needs a series");
        };
    }

    /** The preferred value; NaN for what is not a positive finite number, since a series has no member there. */
    double value(double x, PreferredSeries series) {
        if (!(x > 0) || x == Double.POSITIVE_INFINITY) {
            return Double.NaN;
        }
        return switch (this) {
            case NEXT_UP -> series.nextUp(x);
            case NEXT_DOWN -> series.nextDown(x);
            case NEAREST -> series.nearest(x);
            default -> throw new IllegalArgumentException(written + " takes no series");
        };
    }

    private static double smallest(List<Double> x) {
        double result = x.get(0);
        for (double each : x) {
            result = Math.min(result, each);
        }
        return result;
    }

    private static double largest(List<Double> x) {
        double result = x.get(0);
        for (double each : x) {
            result = Math.max(result, each);
        }
        return result;
    }

    /** Resistances side by side: the conductances add. A zero among them shorts the rest. */
    private static double parallel(List<Double> x) {
        double conductance = 0;
        for (double each : x) {
            conductance += 1 / each;
        }
        return 1 / conductance;
    }
}
