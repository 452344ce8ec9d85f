package ampersheet.model;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** All measures of all models. */
public final class Measures {
    private static final List<Measure> ALL =
            all(CircuitModel.MEASURES, HeatModel.MEASURES, ChainModel.MEASURES, AssemblyModel.MEASURES);
    private static final Map<String, List<Measure>> BY_NAME = byName();

    private Measures() {}

    public static List<Measure> all() {
        return ALL;
    }

    /** Those of that name with so many arguments; two models may have one. */
    public static List<Measure> named(String name, int arguments) {
        return BY_NAME.getOrDefault(name, List.of()).stream()
                .filter(measure -> measure.arguments().size() == arguments)
                .toList();
    }

    /** The first of them. */
    public static Optional<Measure> first(String name, int arguments) {
        return named(name, arguments).stream().findFirst();
    }

    public static boolean isMeasure(String name) {
        return BY_NAME.containsKey(name);
    }

    @SafeVarargs
    private static List<Measure> all(List<Measure>... ofModels) {
        List<Measure> all = new ArrayList<>();
        for (List<Measure> measures : ofModels) {
            all.addAll(measures);
        }
        return List.copyOf(all);
    }

    private static Map<String, List<Measure>> byName() {
        Map<String, List<Measure>> byName = new LinkedHashMap<>();
        ALL.forEach(measure -> byName.computeIfAbsent(measure.name(), name -> new ArrayList<>())
                .add(measure));
        return byName;
    }
}
