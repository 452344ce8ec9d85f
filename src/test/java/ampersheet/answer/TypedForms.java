package ampersheet.answer;

import ampersheet.quantity.Dimension;
import ampersheet.quantity.Unit;
import java.io.IOException;
import java.io.InputStream;
import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** The forms of {@code typed-forms.txt}, filled with a value. */
public final class TypedForms {
    private static final int EXACT_DIGITS = 12;
    private static final String[] BELOW_TWENTY =
            ("zero one two three four five six seven eight nine ten eleven twelve thirteen "
                            + "fourteen fifteen sixteen seventeen eighteen nineteen")
                    .split(" ");
    private static final String[] TENS = "twenty thirty forty fifty sixty seventy eighty ninety".split(" ");
    private static final List<Form> FORMS = forms();

    /** @param bare whether it has neither unit nor prefix where a quantity has a unit */
    public record Typed(String kind, String form, String text, boolean bare) {}

    private record Form(String kind, String unit, String form) {}

    private TypedForms() {}

    private static List<Form> forms() {
        try (InputStream in = TypedForms.class.getResourceAsStream("/typed-forms.txt")) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8)
                    .lines()
                    .filter(line -> !line.isBlank() && !line.startsWith("# "))
                    .map(line -> line.split(" \\| ", 3))
                    .map(part -> new Form(part[0].strip(), part[1].strip(), part[2]))
                    .toList();
        } catch (IOException cannotBeRead) {
            throw new IllegalStateException(cannotBeRead);
        }
    }

    /** How many different forms there are, over all kinds. */
    public static int count() {
        return FORMS.size();
    }

    /** @param si in coherent SI units */
    public static List<Typed> of(AnswerKey key, double si) {
        String kind = kind(key);
        boolean plain = key.unit().dimension().equals(Dimension.ONE);
        List<Typed> typed = new ArrayList<>();
        for (Form form : FORMS) {
            boolean any = form.kind().equals("any");
            if (!any && !form.kind().equals(kind) && !(form.kind().equals("unit") && !plain)) {
                continue;
            }
            boolean bare = any && !form.form().contains("@");
            number(key, si, form.unit())
                    .flatMap(
                            number -> filled(form.form().replace("@", key.unit().symbol()), number))
                    .ifPresent(text ->
                            typed.add(new Typed(kind, form.unit() + " | " + form.form(), text, bare && !plain)));
        }
        return typed;
    }

    /** All answers that must be there before this one can be judged: the other blanks of its design. */
    public static Map<String, String> withPartners(ProblemKey problem, AnswerKey key, String text) {
        Map<String, String> typed = new LinkedHashMap<>();
        if (key.acceptance() instanceof Acceptance.Designed) {
            for (AnswerKey other : problem.answers()) {
                if (other.acceptance() instanceof Acceptance.Designed) {
                    typed.put(
                            other.question(),
                            number(other, other.expected(), "asked")
                                            .orElseThrow()
                                            .toPlainString() + " "
                                    + other.unit().symbol());
                }
            }
        }
        typed.put(key.question(), text);
        return typed;
    }

    private static String kind(AnswerKey key) {
        Unit unit = key.unit();
        Map<Dimension, String> kinds = new LinkedHashMap<>();
        kinds.put(Dimension.RESISTANCE, "resistance");
        kinds.put(Dimension.CAPACITANCE, "capacitance");
        kinds.put(Dimension.VOLTAGE, "voltage");
        kinds.put(Dimension.CURRENT, "current");
        kinds.put(Dimension.POWER, "power");
        kinds.put(Dimension.ENERGY, unit.symbol().endsWith("N·m") ? "torque" : "energy");
        kinds.put(Dimension.TEMPERATURE, unit.offset() != 0 ? "temperature" : "rise");
        kinds.put(Dimension.LENGTH, "length");
        kinds.put(Dimension.LENGTH.power(2), "area");
        kinds.put(Dimension.TIME, "time");
        kinds.put(
                Dimension.FREQUENCY,
                unit.countsTurns() ? "speed" : unit.symbol().contains("bit") ? "data rate" : "frequency");
        kinds.put(Dimension.ENERGY.over(Dimension.CURRENT), "torque constant");
        kinds.put(Dimension.TEMPERATURE.over(Dimension.POWER), "thermal resistance");
        kinds.put(Dimension.ENERGY.over(Dimension.TEMPERATURE), "heat capacity");
        kinds.put(Dimension.POWER.over(Dimension.LENGTH), "power per length");
        if (!unit.dimension().equals(Dimension.ONE)) {
            return kinds.getOrDefault(unit.dimension(), "another quantity");
        }
        return switch (unit.symbol()) {
            case "%" -> "share";
            case "°" -> "angle";
            case "" -> key.acceptance() instanceof Acceptance.Within ? "ratio" : "whole";
            case "turn", "turns" -> "turns";
            default -> unit.symbol().endsWith("bit") || unit.symbol().endsWith("B") ? "data" : "another number";
        };
    }

    /** As a person would write it in that unit; nothing where the number is too small or large to be written out. */
    private static Optional<BigDecimal> number(AnswerKey key, double si, String unit) {
        Unit in = unit.equals("asked") ? key.unit() : Unit.parse(unit);
        double value = in.fromSi(si) * (unit.equals("rad/s") ? 2 * Math.PI : 1);
        int figures =
                key.acceptance() instanceof Acceptance.Within && in.offset() == 0 ? key.figures() + 1 : EXACT_DIGITS;
        BigDecimal exact = new BigDecimal(value).round(new MathContext(EXACT_DIGITS, RoundingMode.HALF_UP));
        BigDecimal number =
                exact.round(new MathContext(figures, RoundingMode.HALF_UP)).stripTrailingZeros();
        double size = Math.abs(number.doubleValue());
        return size == 0 || size >= 1e-5 && size < 1e8 ? Optional.of(number) : Optional.empty();
    }

    private static Optional<String> filled(String form, BigDecimal number) {
        String plain = number.toPlainString();
        boolean whole = number.signum() >= 0 && number.scale() <= 0;
        int code = form.indexOf("#c");
        if (code >= 0) {
            char letter = form.charAt(code + 2);
            String coded = plain.indexOf('.') < 0 ? plain + letter : plain.replace('.', letter);
            return number.signum() > 0
                    ? Optional.of(form.substring(0, code) + coded + form.substring(code + 3))
                    : Optional.empty();
        }
        if (form.contains("#w")) {
            return whole && number.intValue() < 100
                    ? Optional.of(form.replace("#w", inWords(number.intValue())))
                    : Optional.empty();
        }
        if (form.contains("#o")) {
            return whole ? Optional.of(form.replace("#o", plain + ending(number.intValue()))) : Optional.empty();
        }
        if (form.contains("#,")) {
            boolean twoReadings = plain.matches("-?[1-9][0-9]{0,2}\\.[0-9]{3}");
            return plain.indexOf('.') < 0 || twoReadings
                    ? Optional.empty()
                    : Optional.of(form.replace("#,", plain.replace('.', ',')));
        }
        boolean endsAsDecimal = form.contains("#.") && !whole;
        return endsAsDecimal ? Optional.empty() : Optional.of(form.replace("#", plain));
    }

    private static String inWords(int number) {
        if (number < 20) {
            return BELOW_TWENTY[number];
        }
        return TENS[number / 10 - 2] + (number % 10 == 0 ? "" : "-" + BELOW_TWENTY[number % 10]);
    }

    private static String ending(int number) {
        boolean teens = number % 100 >= 11 && number % 100 <= 13;
        return teens
                ? "th"
                : switch (number % 10) {
                    case 1 -> "st";
                    case 2 -> "nd";
                    case 3 -> "rd";
                    default -> "th";
                };
    }
}
