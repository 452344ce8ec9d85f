package ampersheet.figure;

import ampersheet.thermal.HeatNetwork;
import ampersheet.thermal.HeatNetwork.Loss;
import ampersheet.thermal.HeatNetwork.Resistance;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * A place for every node and every path of a heat network: columns from the losses on the left to the ambients on the
 * right, paths side by side in lanes. A node is a point, or an upright bar over the lanes of its paths.
 */
final class HeatLanes {
    /** A path from one column to a later one; a loss comes from the column before its node. */
    record Path(String name, String left, String right, int from, int to, int lane, boolean loss) {}

    private static final int FARTHEST_LANE = 60;

    private final HeatNetwork network;
    private final List<String> nodes = new ArrayList<>();
    private final Set<String> ambients = new LinkedHashSet<>();
    private final Map<String, Integer> column = new LinkedHashMap<>();
    private final Map<String, int[]> bar = new LinkedHashMap<>();
    private final List<Path> paths = new ArrayList<>();
    private final Map<String, Integer> capacityLane = new LinkedHashMap<>();

    HeatLanes(HeatNetwork network) {
        this.network = network;
        network.nodes().forEach(node -> nodes.add(node.name()));
        network.ambients().forEach(ambient -> {
            nodes.add(ambient.name());
            ambients.add(ambient.name());
        });
        List<String> order = fromLossesOutwards();
        columns(order);
        lanes(order);
        capacities();
        if (barsOverlap()) {
            oneColumnEach(order);
            lanes(order);
            capacities();
        }
    }

    private boolean barsOverlap() {
        return nodes.stream()
                .anyMatch(node -> nodes.stream()
                        .anyMatch(other -> !other.equals(node)
                                && column(other) == column(node)
                                && bar.get(other)[0] <= bar.get(node)[1]
                                && bar.get(node)[0] <= bar.get(other)[1]));
    }

    /**
     * A dense network: nodes that share no column cannot lie on each other; paths then cross bars without joining them.
     */
    private void oneColumnEach(List<String> order) {
        List<String> byColumn = new ArrayList<>(order);
        byColumn.sort((a, b) -> Integer.compare(column.get(a), column.get(b)));
        for (int i = 0; i < byColumn.size(); i++) {
            column.put(byColumn.get(i), i);
        }
        bar.clear();
        paths.clear();
        capacityLane.clear();
    }

    List<String> nodes() {
        return nodes;
    }

    int column(String node) {
        return column.get(node);
    }

    /** First and last lane of a node's bar. */
    int[] bar(String node) {
        return bar.get(node).clone();
    }

    List<Path> paths() {
        return paths;
    }

    /** Lane below a node in which its capacity ends; only nodes that have one. */
    Map<String, Integer> capacityLane() {
        return capacityLane;
    }

    /** Nodes nearest to a loss first; ambients last. */
    private List<String> fromLossesOutwards() {
        Map<String, Integer> distance = new LinkedHashMap<>();
        Deque<String> ahead = new ArrayDeque<>();
        network.losses().forEach(loss -> {
            if (distance.putIfAbsent(loss.into(), 0) == null) {
                ahead.add(loss.into());
            }
        });
        for (String node : nodes) {
            while (!ahead.isEmpty()) {
                String here = ahead.remove();
                if (!ambients.contains(here)) {
                    for (Resistance resistance : network.resistances()) {
                        String other = resistance.from().equals(here)
                                ? resistance.to()
                                : resistance.to().equals(here) ? resistance.from() : here;
                        if (distance.putIfAbsent(other, distance.get(here) + 1) == null) {
                            ahead.add(other);
                        }
                    }
                }
            }
            if (distance.putIfAbsent(node, 0) == null) {
                ahead.add(node);
            }
        }
        List<String> order = new ArrayList<>(nodes);
        order.sort((a, b) -> {
            int ambient = Boolean.compare(ambients.contains(a), ambients.contains(b));
            return ambient != 0 ? ambient : Integer.compare(distance.get(a), distance.get(b));
        });
        return order;
    }

    /** Each node right of all before it in the order that it is joined to; ambients right of every other node. */
    private void columns(List<String> order) {
        int rightmost = -1;
        for (String node : order) {
            int least = ambients.contains(node) ? Math.max(1, rightmost + 1) : 0;
            for (Resistance resistance : network.resistances()) {
                String other = resistance.from().equals(node)
                        ? resistance.to()
                        : resistance.to().equals(node) ? resistance.from() : node;
                if (!other.equals(node) && column.containsKey(other)) {
                    least = Math.max(least, column.get(other) + 1);
                }
            }
            column.put(node, least);
            if (!ambients.contains(node)) {
                rightmost = Math.max(rightmost, least);
            }
        }
    }

    private void lanes(List<String> order) {
        for (String node : order) {
            for (Loss loss : network.losses()) {
                if (loss.into().equals(node)) {
                    place(loss.name(), null, node, true);
                }
            }
            for (Resistance resistance : network.resistances()) {
                if (resistance.from().equals(node) && after(node, resistance.to())) {
                    place(resistance.name(), node, resistance.to(), false);
                } else if (resistance.to().equals(node) && after(node, resistance.from())) {
                    place(resistance.name(), node, resistance.from(), false);
                }
            }
        }
        for (String node : nodes) {
            if (!bar.containsKey(node)) {
                int lane = 0;
                while (barTaken(node, lane, lane)) {
                    lane++;
                }
                bar.put(node, new int[] {lane, lane});
            }
        }
    }

    private boolean after(String node, String other) {
        return column.get(other) > column.get(node);
    }

    private void place(String name, String left, String right, boolean loss) {
        int to = column.get(right);
        int from = loss ? to - 1 : column.get(left);
        String known = loss ? right : left;
        int wish = bar.containsKey(known) ? bar.get(known)[0] : bar.containsKey(right) ? bar.get(right)[0] : 0;
        int lane = lane(left, right, from, to, wish);
        paths.add(new Path(name, left == null ? "" : left, right, from, to, lane, loss));
        for (String node : left == null ? List.of(right) : List.of(left, right)) {
            int[] old = bar.getOrDefault(node, new int[] {lane, lane});
            bar.put(node, new int[] {Math.min(old[0], lane), Math.max(old[1], lane)});
        }
    }

    /** The free lane nearest to the one wished for, below it rather than above; a new one at the bottom if none is. */
    private int lane(String left, String right, int from, int to, int wish) {
        for (int away = 0; away < FARTHEST_LANE; away++) {
            for (int lane : away == 0 ? new int[] {wish} : new int[] {wish + away, wish - away}) {
                if (lane >= 0 && free(left, right, from, to, lane)) {
                    return lane;
                }
            }
        }
        return paths.stream().mapToInt(Path::lane).max().orElse(-1) + 1;
    }

    private boolean free(String left, String right, int from, int to, int lane) {
        for (Path path : paths) {
            boolean meets = path.to() == from && path.right().equals(left)
                    || path.from() == to && path.left().equals(right);
            if (path.lane() == lane && path.from() <= to && path.to() >= from && !meets) {
                return false;
            }
        }
        for (Map.Entry<String, int[]> entry : bar.entrySet()) {
            int at = column.get(entry.getKey());
            if (at > from && at < to && entry.getValue()[0] <= lane && entry.getValue()[1] >= lane) {
                return false;
            }
        }
        return (left == null || !extendsInto(left, lane)) && !extendsInto(right, lane);
    }

    private boolean extendsInto(String node, int lane) {
        int[] old = bar.getOrDefault(node, new int[] {lane, lane});
        return barTaken(node, Math.min(old[0], lane), Math.max(old[1], lane));
    }

    /** Whether another node's bar, or a path passing by, lies in the node's column between two lanes. */
    private boolean barTaken(String node, int first, int last) {
        int at = column.get(node);
        for (Map.Entry<String, int[]> entry : bar.entrySet()) {
            if (!entry.getKey().equals(node)
                    && column.get(entry.getKey()) == at
                    && entry.getValue()[0] <= last
                    && entry.getValue()[1] >= first) {
                return true;
            }
        }
        return paths.stream()
                .anyMatch(path -> path.from() < at && path.to() > at && path.lane() >= first && path.lane() <= last);
    }

    private void capacities() {
        for (HeatNetwork.Node node : network.nodes()) {
            if (node.capacity() > 0) {
                int[] lanes = bar.get(node.name());
                int lane = lanes[1] + 1;
                while (lane < FARTHEST_LANE && barTaken(node.name(), lane, lane)) {
                    lane++;
                }
                capacityLane.put(node.name(), lane);
                bar.put(node.name(), new int[] {lanes[0], lane});
            }
        }
        capacityLane.forEach((node, lane) -> bar.put(node, new int[] {bar.get(node)[0], lowestPath(node)}));
    }

    private int lowestPath(String node) {
        return paths.stream()
                .filter(path -> path.left().equals(node) || path.right().equals(node))
                .mapToInt(Path::lane)
                .max()
                .orElse(bar.get(node)[0]);
    }
}
