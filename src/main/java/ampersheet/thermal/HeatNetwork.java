package ampersheet.thermal;

import java.util.List;

/**
 * Temperatures in kelvin, resistances in K/W, capacities in J/K, losses in W.
 *
 * @param ambients nodes held at a temperature
 * @param nodes nodes whose temperature is sought
 */
public record HeatNetwork(List<Ambient> ambients, List<Node> nodes, List<Resistance> resistances, List<Loss> losses) {
    public HeatNetwork {
        ambients = List.copyOf(ambients);
        nodes = List.copyOf(nodes);
        resistances = List.copyOf(resistances);
        losses = List.copyOf(losses);
    }

    public record Ambient(String name, double kelvin) {}

    /** @param capacity 0 where only the steady state matters; @param initial kelvin at time 0 */
    public record Node(String name, double capacity, double initial) {}

    public record Resistance(String name, String from, String to, double kelvinPerWatt) {}

    public record Loss(String name, String into, PowerLaw watts) {}

    /** A loss as a function of the temperatures. */
    @FunctionalInterface
    public interface PowerLaw {
        double watts(Temperatures temperatures);
    }

    /** Kelvin by node name, ambients included. */
    @FunctionalInterface
    public interface Temperatures {
        double kelvin(String node);
    }
}
