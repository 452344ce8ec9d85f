package ampersheet.sheet;

import ampersheet.circuit.SpiceNetlist;
import ampersheet.model.CircuitModel;
import java.math.BigDecimal;
import java.math.MathContext;
import java.util.Optional;
import java.util.Set;

/** The circuit of a problem for a general circuit simulator, so that whoever has the key can try it. */
final class CircuitListing {
    /** Lines; a strip or panel of many loads has hundreds, one for each stretch of copper. */
    private static final int LONGEST = 60;

    private static final MathContext FIGURES = new MathContext(7);

    private CircuitListing() {}

    /** Empty where there is no circuit, or it is too long to be read. */
    static Optional<Document.Listing> of(SheetProblem problem) {
        return problem.problem()
                .model(CircuitModel.class)
                .map(circuit -> SpiceNetlist.of(
                        circuit.netlist(),
                        "problem " + problem.number() + ": "
                                + problem.template().title(),
                        Set.of(),
                        CircuitListing::number))
                .filter(text -> text.lines().count() <= LONGEST)
                .map(text -> new Document.Listing(
                        "The circuit as a netlist, to try it in a circuit simulator (SPICE)", text));
    }

    private static String number(double value) {
        return ExactNumber.write(new BigDecimal(value).round(FIGURES).doubleValue());
    }
}
