package ampersheet.circuit;

/** Whether a solution lies where the models of its parts hold. */
final class Validity {
    private static final double ROUNDING = 1e-9;

    private Validity() {}

    static Outcome check(OperatingPoint point, Netlist netlist) {
        for (Netlist.Connected connected : netlist.parts()) {
            PlacedPart part = connected.part();
            String name = part.name();
            if (part.kind() == PartKind.REGULATOR) {
                double dropout = part.values().getOrDefault(PartValue.DROPOUT, 0.0);
                double headroom = point.across(name);
                if (headroom
                        < dropout
                                - ROUNDING
                                        * (1
                                                + Math.abs(point.voltage(
                                                        connected.node().get("in"))))) {
                    return new Outcome.Unfit(
                            name,
                            "has its input only " + headroom + " V above its output; needs " + dropout
                                    + " V or more to regulate");
                }
                if (point.current(name) < -ROUNDING) {
                    return new Outcome.Unfit(
                            name, "is fed " + -point.current(name) + " A into its output; it can only deliver");
                }
            } else if (part.kind() == PartKind.NPN && point.current(name) < -ROUNDING) {
                return new Outcome.Unfit(
                        name, "has current leaving its collector; the model covers a collector above the emitter");
            }
        }
        return new Outcome.Solved(point);
    }
}
