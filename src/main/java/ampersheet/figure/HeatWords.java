package ampersheet.figure;

import ampersheet.language.Language;
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
    private final Language language;

    HeatWords(HeatNetwork network, Map<String, Label> labels, Language language) {
        this.network = network;
        this.labels = labels;
        this.language = language;
    }

    String summary() {
        long stores =
                network.nodes().stream().filter(node -> node.capacity() > 0).count();
        List<String> elements = new ArrayList<>();
        if (!network.losses().isEmpty()) {
            elements.add(language.count("figure.heat.of.loss", network.losses().size()));
        }
        elements.add(language.count(
                "figure.heat.of.resistance", network.resistances().size()));
        if (stores > 0) {
            elements.add(language.count("figure.heat.of.capacity", (int) stores));
        }
        elements.add(language.count("figure.heat.of.ambient", network.ambients().size()));
        return language.count("figure.heat.summary", network.nodes().size(), "elements", language.all(elements));
    }

    Figure.Table table() {
        String none = language.say("figure.heat.none");
        List<List<String>> rows = new ArrayList<>();
        network.losses()
                .forEach(loss -> rows.add(List.of(
                        language.say("figure.heat.loss", "name", name(loss.name())),
                        value(loss.name()),
                        none,
                        name(loss.into()))));
        network.resistances()
                .forEach(resistance -> rows.add(List.of(
                        language.say("figure.heat.resistance", "name", name(resistance.name())),
                        value(resistance.name()),
                        name(resistance.from()),
                        name(resistance.to()))));
        network.nodes().forEach(node -> {
            if (node.capacity() > 0) {
                rows.add(List.of(
                        language.say("figure.heat.capacity", "name", name(node.name())),
                        value(HeatDrawing.capacityKey(node.name())),
                        name(node.name()),
                        none));
            }
        });
        network.nodes()
                .forEach(node -> rows.add(List.of(
                        language.say("figure.heat.node", "name", name(node.name())), value(node.name()), none, none)));
        network.ambients()
                .forEach(ambient -> rows.add(List.of(
                        language.say("figure.heat.ambient", "name", name(ambient.name())),
                        value(ambient.name()),
                        none,
                        none)));
        return new Figure.Table(
                List.of(
                        language.say("figure.heat.head.element"),
                        language.say("figure.heat.head.value"),
                        language.say("figure.heat.head.from"),
                        language.say("figure.heat.head.to")),
                rows);
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
                    .forEach(loss -> sentences.add(
                            language.say("figure.heat.enters", "loss", name(loss.name()), "node", name(node))));
            List<String> ways = new ArrayList<>();
            for (HeatLanes.Path path : lanes.paths()) {
                if (!path.loss() && path.left().equals(node)) {
                    ways.add(language.say(
                            "figure.heat.leads", "resistance", name(path.name()), "node", name(path.right())));
                }
            }
            if (ways.size() == 1) {
                sentences.add(language.say("figure.heat.goes-on", "node", name(node), "way", ways.get(0)));
            } else if (ways.size() > 1) {
                sentences.add(language.say("figure.heat.divides", "node", name(node), "ways", String.join("; ", ways)));
            }
            network.nodes().stream()
                    .filter(n -> n.name().equals(node) && n.capacity() > 0)
                    .forEach(n -> sentences.add(language.say("figure.heat.stores", "node", name(node))));
            if (ambients.contains(node)) {
                sentences.add(language.say("figure.heat.takes-up", "ambient", name(node)));
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
            return language.say("figure.not-stated");
        }
        return label.lines().stream().map(line -> line.told(language)).collect(Collectors.joining("; "));
    }
}
