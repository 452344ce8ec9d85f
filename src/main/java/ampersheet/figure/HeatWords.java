package ampersheet.figure;

import ampersheet.thermal.HeatNetwork;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;

/** Says a heat network in words, from where heat arises to where it is given away. */
final class HeatWords {
    private final HeatNetwork network;
    private final Map<String, Label> labels;

    HeatWords(HeatNetwork network, Map<String, Label> labels) {
        this.network = network;
        this.labels = labels;
    }

    String summary() {
        long stores =
                network.nodes().stream().filter(node -> node.capacity() > 0).count();
        List<String> phrases = new ArrayList<>();
        if (!network.losses().isEmpty()) {
            phrases.add(English.count(network.losses().size(), "source of heat", "sources of heat"));
        }
        phrases.add(English.count(network.resistances().size(), "thermal resistance", "thermal resistances"));
        if (stores > 0) {
            phrases.add(English.count((int) stores, "heat capacity", "heat capacities"));
        }
        phrases.add(English.count(network.ambients().size(), "ambient", "ambients"));
        return "A heat path of " + English.list(phrases) + ", joined at "
                + English.count(network.nodes().size(), "node", "nodes") + ".";
    }

    Figure.Table table() {
        List<List<String>> rows = new ArrayList<>();
        network.losses()
                .forEach(loss -> rows.add(List.of(
                        name(loss.name()) + " (source of heat)", value(loss.name()), "none", name(loss.into()))));
        network.resistances()
                .forEach(resistance -> rows.add(List.of(
                        name(resistance.name()) + " (thermal resistance)",
                        value(resistance.name()),
                        name(resistance.from()),
                        name(resistance.to()))));
        network.nodes().forEach(node -> {
            if (node.capacity() > 0) {
                rows.add(List.of(
                        name(node.name()) + " (heat capacity)",
                        value(HeatDrawing.capacityKey(node.name())),
                        name(node.name()),
                        "none"));
            }
        });
        network.nodes()
                .forEach(node -> rows.add(List.of(name(node.name()) + " (node)", value(node.name()), "none", "none")));
        network.ambients()
                .forEach(ambient ->
                        rows.add(List.of(name(ambient.name()) + " (ambient)", value(ambient.name()), "none", "none")));
        return new Figure.Table(List.of("Element", "Value", "From", "To"), rows);
    }

    List<String> walk() {
        HeatLanes lanes = new HeatLanes(network);
        List<String> order = new ArrayList<>(lanes.nodes());
        order.sort((a, b) -> Integer.compare(lanes.column(a), lanes.column(b)));
        List<String> sentences = new ArrayList<>();
        Set<String> ambients = network.ambients().stream()
                .map(HeatNetwork.Ambient::name)
                .collect(Collectors.toCollection(LinkedHashSet::new));
        for (String node : order) {
            network.losses().stream()
                    .filter(loss -> loss.into().equals(node))
                    .forEach(
                            loss -> sentences.add("Heat from " + name(loss.name()) + " enters at " + name(node) + "."));
            List<String> ways = new ArrayList<>();
            for (HeatLanes.Path path : lanes.paths()) {
                if (!path.loss() && path.left().equals(node)) {
                    ways.add(name(path.name()) + " leads to " + name(path.right()));
                }
            }
            if (!ways.isEmpty()) {
                sentences.add("From " + name(node) + (ways.size() > 1 ? " the path divides: " : ", ")
                        + String.join("; ", ways) + ".");
            }
            network.nodes().stream()
                    .filter(n -> n.name().equals(node) && n.capacity() > 0)
                    .forEach(n -> sentences.add("The heat capacity of " + name(node) + " stores heat there."));
            if (ambients.contains(node)) {
                sentences.add("The ambient " + name(node) + " takes the heat up without warming.");
            }
        }
        return sentences;
    }

    private String name(String key) {
        Label label = labels.get(key);
        return label == null || label.name().isEmpty() ? key : label.name();
    }

    private String value(String key) {
        Label label = labels.get(key);
        if (label == null || label.lines().isEmpty()) {
            return "not stated";
        }
        return label.lines().stream()
                .map(line -> line.text().isEmpty() ? line.plain() + " to be found" : line.plain())
                .collect(Collectors.joining("; "));
    }
}
