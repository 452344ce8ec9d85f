package ampersheet.sheet;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.BiPredicate;
import java.util.function.Function;

/**
 * Interleaves things of several families, so that no two neighbours are of one family where that is possible; where one
 * family has too many for that, as few neighbours as possible. The family that has waited longest comes next; each
 * family keeps the order given.
 */
final class MixedOrder {
    private MixedOrder() {}

    static <T> List<T> of(List<T> things, Function<T, String> family) {
        return of(things, family, (one, other) -> false);
    }

    /** @param after whether the first must come after the second, which is listed before it */
    static <T> List<T> of(List<T> things, Function<T, String> family, BiPredicate<T, T> after) {
        Map<String, List<T>> waiting = new LinkedHashMap<>();
        for (T thing : things) {
            waiting.computeIfAbsent(family.apply(thing), name -> new ArrayList<>())
                    .add(thing);
        }
        // In the order of waiting: whoever has just been served goes to the end.
        List<String> queue = new ArrayList<>(waiting.keySet());
        List<T> mixed = new ArrayList<>();
        String last = "";
        while (mixed.size() < things.size()) {
            List<String> ready = queue.stream()
                    .filter(name -> isReady(waiting.get(name), waiting, after))
                    .toList();
            boolean inACircle =
                    ready.stream().allMatch(name -> waiting.get(name).isEmpty());
            String next = next(inACircle ? queue : ready, waiting, last, things.size() - mixed.size());
            mixed.add(waiting.get(next).remove(0));
            queue.remove(next);
            queue.add(next);
            last = next;
        }
        return mixed;
    }

    /** Of a family nothing is left, or its first may come now. */
    private static <T> boolean isReady(List<T> own, Map<String, List<T>> waiting, BiPredicate<T, T> after) {
        return own.isEmpty()
                || waiting.values().stream()
                        .flatMap(List::stream)
                        .noneMatch(other -> other != own.get(0) && after.test(own.get(0), other));
    }

    private static <T> String next(List<String> queue, Map<String, List<T>> waiting, String last, int left) {
        String largest = "";
        for (String family : queue) {
            if (waiting.get(family).isEmpty() || family.equals(last)) {
                continue;
            }
            if (leavesNoNeighbours(waiting, family, left - 1)) {
                return family;
            }
            if (largest.isEmpty()
                    || waiting.get(family).size() > waiting.get(largest).size()) {
                largest = family;
            }
        }
        return largest.isEmpty() ? last : largest;
    }

    /** Whether what is left after one of {@code chosen} can follow it without two neighbours of one family. */
    private static <T> boolean leavesNoNeighbours(Map<String, List<T>> waiting, String chosen, int left) {
        for (Map.Entry<String, List<T>> entry : waiting.entrySet()) {
            boolean justServed = entry.getKey().equals(chosen);
            int count = entry.getValue().size() - (justServed ? 1 : 0);
            if (count > (justServed ? left / 2 : (left + 1) / 2)) {
                return false;
            }
        }
        return true;
    }
}
