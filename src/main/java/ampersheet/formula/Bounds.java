package ampersheet.formula;

import ampersheet.quantity.Elementary;
import ampersheet.quantity.PreferredSeries;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/**
 * Bounds a formula whose names lie anywhere in given intervals: worst cases of tolerances. Interval arithmetic (R. E.
 * Moore, "Interval Analysis", 1966): the result holds every value the formula can take. It is as narrow as can be if each
 * name stands once in the formula; {@code R2 / (R1 + R2)} is bounded more widely than it varies, {@code 1 / (1 + R1 / R2)}
 * exactly. Rounding errors of the arithmetic (about 1e-15) are not added.
 */
public final class Bounds {
  private Bounds() {}

  /**
   * Everything from minus to plus infinity where a denominator may be zero or an argument may leave the function's domain.
   *
   * @param intervals by name, in SI units
   * @throws IllegalArgumentException for a name without an interval, or a measure of a model
   */
  public static Interval of(Expression expression, Map<String, Interval> intervals) {
    return new Arithmetic(intervals).of(expression);
  }

  private static final class Arithmetic implements Fold<Interval> {
    private final Map<String, Interval> intervals;

    Arithmetic(Map<String, Interval> intervals) {
      this.intervals = intervals;
    }

    @Override
    public Interval constant(Expression.Constant constant) {
      return Interval.exactly(constant.si());
    }

    @Override
    public Interval name(Expression.Name name) {
      Interval interval = intervals.get(name.id());
      if (interval != null) {
        return interval;
      }
      if (name.id().equals(Evaluation.PI)) {
        return Interval.exactly(Math.PI);
      }
      throw new IllegalArgumentException("no interval for " + name.id());
    }

    @Override
    public Interval negative(Expression.Negative negative) {
      Interval of = of(negative.of());
      return new Interval(-of.high() + 0.0, -of.low() + 0.0);
    }

    @Override
    public Interval sum(Expression.Sum sum) {
      Interval left = of(sum.left());
      Interval right = of(sum.right());
      return Interval.spanning(left.low() + right.low(), left.high() + right.high());
    }

    @Override
    public Interval difference(Expression.Difference difference) {
      Interval left = of(difference.left());
      Interval right = of(difference.right());
      return Interval.spanning(left.low() - right.high(), left.high() - right.low());
    }

    @Override
    public Interval product(Expression.Product product) {
      return times(of(product.left()), of(product.right()));
    }

    @Override
    public Interval quotient(Expression.Quotient quotient) {
      return times(of(quotient.numerator()), inverse(of(quotient.denominator())));
    }

    @Override
    public Interval power(Expression.Power power) {
      Interval base = of(power.base());
      Interval exponent = of(power.exponent());
      if (exponent.low() == exponent.high() && exponent.low() == Math.floor(exponent.low())) {
        return wholePower(base, exponent.low());
      }
      if (!(base.low() > 0)) {
        return Interval.EVERYTHING;
      }
      return Interval.spanning(
          Evaluation.raised(base.low(), exponent.low()), Evaluation.raised(base.low(), exponent.high()),
          Evaluation.raised(base.high(), exponent.low()), Evaluation.raised(base.high(), exponent.high()));
    }

    private static Interval wholePower(Interval base, double exponent) {
      if (exponent < 0) {
        return inverse(wholePower(base, -exponent));
      }
      double low = Evaluation.raised(base.low(), exponent);
      double high = Evaluation.raised(base.high(), exponent);
      boolean even = exponent % 2 == 0;
      return even && exponent > 0 && base.contains(0) ? Interval.spanning(0, low, high) : Interval.spanning(low, high);
    }

    @Override
    public Interval call(Expression.Call call) {
      Function function = Function.named(call.function()).orElseThrow(
          () -> new IllegalArgumentException("a measure of a model has no bounds here: " + call.function()));
      Interval x = of(call.arguments().get(0));
      if (function.takes() == Function.Takes.SERIES) {
        PreferredSeries series = Function.series(call.arguments().get(1)).orElseThrow(
            () -> new IllegalArgumentException(call.function() + " needs a series"));
        return Interval.spanning(function.value(x.low(), series), function.value(x.high(), series));
      }
      return switch (function) {
        case ABS -> x.contains(0) ? Interval.spanning(0, Math.abs(x.low()), Math.abs(x.high()))
            : Interval.spanning(Math.abs(x.low()), Math.abs(x.high()));
        case PARALLEL -> parallel(of(call.arguments()));
        case SIN -> wave(x, Math.PI / 2, true);
        case COS -> wave(x, 0, false);
        case TAN -> Math.floor(x.low() / Math.PI + 0.5) == Math.floor(x.high() / Math.PI + 0.5)
            ? monotone(function, List.of(x)) : Interval.EVERYTHING;
        case MOD -> mod(x, of(call.arguments().get(1)));
        default -> monotone(function, of(call.arguments()));
      };
    }

    /** Functions that rise with each argument. Outside their domain a bound is no number, and so nothing is known. */
    private static Interval monotone(Function function, List<Interval> arguments) {
      List<Double> low = new ArrayList<>();
      List<Double> high = new ArrayList<>();
      for (Interval argument : arguments) {
        low.add(argument.low());
        high.add(argument.high());
      }
      return Interval.spanning(function.value(low), function.value(high));
    }

    private static Interval parallel(List<Interval> resistances) {
      for (Interval resistance : resistances) {
        if (resistance.low() < 0) {
          return Interval.EVERYTHING;
        }
      }
      return monotone(Function.PARALLEL, resistances);
    }

    /** Sine or cosine: 1 is reached at {@code top} and every full turn from it, -1 half a turn later. */
    private static Interval wave(Interval x, double top, boolean sine) {
      double low = sine ? Elementary.sin(x.low()) : Elementary.cos(x.low());
      double high = sine ? Elementary.sin(x.high()) : Elementary.cos(x.high());
      double least = holdsTurn(x, top + Math.PI) ? -1 : Math.min(low, high);
      double most = holdsTurn(x, top) ? 1 : Math.max(low, high);
      return Interval.spanning(least, most);
    }

    private static boolean holdsTurn(Interval x, double at) {
      double turn = 2 * Math.PI;
      double next = at + turn * Math.ceil((x.low() - at) / turn);
      return !(next > x.high());
    }

    /** Within one divisor it rises like its argument; over more than one only the whole range is known. */
    private static Interval mod(Interval x, Interval divisor) {
      if (!(divisor.low() > 0)) {
        return Interval.EVERYTHING;
      }
      boolean one = divisor.low() == divisor.high()
          && Math.floor(x.low() / divisor.low()) == Math.floor(x.high() / divisor.low());
      double low = Nearness.mod(x.low(), divisor.low());
      double high = Nearness.mod(x.high(), divisor.low());
      return one && low <= high ? new Interval(low, high) : new Interval(0, divisor.high());
    }

    private static Interval times(Interval a, Interval b) {
      return Interval.spanning(product(a.low(), b.low()), product(a.low(), b.high()), product(a.high(), b.low()),
          product(a.high(), b.high()));
    }

    /** A bound of zero times one of infinity is zero: no value in between is infinite. */
    private static double product(double a, double b) {
      return a == 0 || b == 0 ? 0 : a * b;
    }

    private static Interval inverse(Interval of) {
      return of.contains(0) ? Interval.EVERYTHING : Interval.spanning(1 / of.low(), 1 / of.high());
    }
  }
}
