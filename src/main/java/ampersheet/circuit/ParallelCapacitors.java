package ampersheet.circuit;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/**
 * Capacitors between the same two nodes taken for one: they have one voltage, and their capacitances add. Followed one
 * by one they are a loop, whose equations are stiff and take some hundred times as long.
 *
 * @param together the netlist with the first of each such group, which has the capacitance of all of it
 * @param shares by the name of each capacitor of the whole netlist
 */
record ParallelCapacitors(Netlist together, Map<String, Share> shares) {

    /**
     * @param of the name of the capacitor that stands for the group
     * @param turned whether this one is drawn the other way round
     */
    record Share(String of, boolean turned) {
        double volts(OperatingPoint together) {
            return turned ? -together.across(of) : together.across(of);
        }
    }

    /** Nodes as drawn, and the voltage at the start: those that begin unlike are not one, and stay as they are. */
    private record Place(String from, String to, double initial) {
        static Place of(Netlist.Connected capacitor) {
            return new Place(
                    capacitor.node().get("from"),
                    capacitor.node().get("to"),
                    ParallelCapacitors.initial(capacitor.part()));
        }

        /** The same, drawn the other way round; {@code 0 -} and no minus sign, so that 0 V is 0 V both ways. */
        Place turned() {
            return new Place(to, from, 0 - initial);
        }
    }

    static ParallelCapacitors in(Netlist netlist) {
        Map<Place, String> first = new LinkedHashMap<>();
        Map<String, Double> farads = new LinkedHashMap<>();
        Map<String, Share> shares = new LinkedHashMap<>();
        for (Netlist.Connected connected : netlist.parts()) {
            if (connected.part().kind() == PartKind.CAPACITOR) {
                Place place = Place.of(connected);
                boolean turned = first.containsKey(place.turned()) && !first.containsKey(place);
                String standsFor =
                        turned ? first.get(place.turned()) : first.computeIfAbsent(place, any -> name(connected));
                shares.put(name(connected), new Share(standsFor, turned));
                farads.merge(standsFor, connected.part().values().get(PartValue.FARADS), Double::sum);
            }
        }
        List<Netlist.Connected> together = new ArrayList<>();
        for (Netlist.Connected connected : netlist.parts()) {
            String name = name(connected);
            if (connected.part().kind() != PartKind.CAPACITOR) {
                together.add(connected);
            } else if (farads.containsKey(name)) {
                together.add(new Netlist.Connected(with(connected.part(), farads.get(name)), connected.node()));
            }
        }
        return new ParallelCapacitors(
                new Netlist(together, netlist.nodes(), netlist.nodeAt(), netlist.doubts()), shares);
    }

    boolean areThere() {
        return shares.entrySet().stream()
                .anyMatch(each -> !each.getKey().equals(each.getValue().of()));
    }

    private static String name(Netlist.Connected connected) {
        return connected.part().name();
    }

    static double initial(PlacedPart capacitor) {
        return capacitor.values().getOrDefault(PartValue.INITIAL, 0.0);
    }

    private static PlacedPart with(PlacedPart capacitor, double farads) {
        Map<PartValue, Double> values = new TreeMap<>(capacitor.values());
        values.put(PartValue.FARADS, farads);
        return new PlacedPart(capacitor.kind(), capacitor.name(), capacitor.ends(), values, capacitor.words());
    }
}
