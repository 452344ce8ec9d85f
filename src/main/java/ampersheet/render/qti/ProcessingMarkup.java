package ampersheet.render.qti;

import ampersheet.render.ShortestDecimal;
import ampersheet.render.qti.Processing.Branch;
import ampersheet.render.qti.Processing.Check;
import ampersheet.render.qti.Processing.Decision;
import ampersheet.render.qti.Processing.Effect;
import java.math.BigDecimal;
import java.util.List;

/** Writes decisions as the format's response processing. */
final class ProcessingMarkup {
    private final QtiMarkup out;

    ProcessingMarkup(QtiMarkup out) {
        this.out = out;
    }

    /** Digits and a point, never a power of ten: some platforms read no others. */
    static String plain(double value) {
        return new BigDecimal(ShortestDecimal.of(value)).toPlainString();
    }

    void write(List<Decision> decisions) {
        out.open("qti-response-processing").newline();
        decisions.forEach(this::decision);
        out.close("qti-response-processing").newline();
    }

    private void decision(Decision decision) {
        out.open("qti-response-condition").newline();
        String element = "qti-response-if";
        for (Branch branch : decision.branches()) {
            out.open(element);
            check(branch.when());
            branch.then().forEach(this::effect);
            out.close(element).newline();
            element = "qti-response-else-if";
        }
        if (!decision.otherwise().isEmpty()) {
            out.open("qti-response-else");
            decision.otherwise().forEach(this::effect);
            out.close("qti-response-else").newline();
        }
        out.close("qti-response-condition").newline();
    }

    private void check(Check check) {
        if (check instanceof Check.Open open) {
            out.open("qti-is-null");
            variable(open.response());
            out.close("qti-is-null");
        } else if (check instanceof Check.Within within) {
            out.open("qti-and");
            compared("qti-gte", within.response(), within.least());
            compared("qti-lte", within.response(), within.most());
            out.close("qti-and");
        } else if (check instanceof Check.Is is) {
            out.open("qti-match");
            variable(is.variable());
            out.element("qti-base-value", is.value(), "base-type", "identifier");
            out.close("qti-match");
        } else if (check instanceof Check.Tried tried) {
            out.open("qti-gte");
            variable("numAttempts");
            out.element("qti-base-value", Integer.toString(tried.times()), "base-type", "integer");
            out.close("qti-gte");
        } else if (check instanceof Check.Not not) {
            out.open("qti-not");
            check(not.check());
            out.close("qti-not");
        } else if (check instanceof Check.All all) {
            joined("qti-and", all.checks());
        } else if (check instanceof Check.Any any) {
            joined("qti-or", any.checks());
        } else {
            throw new IllegalStateException("a check nobody told of: " + check);
        }
    }

    private void joined(String element, List<Check> checks) {
        out.open(element);
        checks.forEach(this::check);
        out.close(element);
    }

    private void compared(String element, String response, double with) {
        out.open(element);
        variable(response);
        number(with);
        out.close(element);
    }

    private void effect(Effect effect) {
        if (effect instanceof Effect.Says says) {
            out.open("qti-set-outcome-value", "identifier", says.outcome());
            out.element("qti-base-value", says.value(), "base-type", "identifier");
            out.close("qti-set-outcome-value");
        } else if (effect instanceof Effect.Earns earns) {
            out.open("qti-set-outcome-value", "identifier", "SCORE").open("qti-sum");
            variable("SCORE");
            number(earns.credit());
            out.close("qti-sum").close("qti-set-outcome-value");
        } else {
            throw new IllegalStateException("an effect nobody told of: " + effect);
        }
    }

    private void number(double value) {
        out.element("qti-base-value", plain(value), "base-type", "float");
    }

    private void variable(String identifier) {
        out.single("qti-variable", "identifier", identifier);
    }
}
