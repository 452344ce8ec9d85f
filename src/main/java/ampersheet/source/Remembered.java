package ampersheet.source;

import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;

/**
 * What was made of something before: a class has the same few texts again and again. May be used by several threads;
 * when it is full, all is forgotten.
 *
 * @param <K> what it is made of, never changed
 * @param <V> what is made of it, never changed
 */
public final class Remembered<K, V> {
    private final Map<K, V> known = new ConcurrentHashMap<>();
    private final int most;

    /** Makes it the first time. */
    @FunctionalInterface
    public interface Making<K, V, E extends Exception> {
        V of(K key) throws E;
    }

    /** @param most so many are kept at once */
    public Remembered(int most) {
        this.most = most;
    }

    public <E extends Exception> V of(K key, Making<K, V, E> making) throws E {
        V before = known.get(key);
        if (before != null) {
            return before;
        }
        V made = making.of(key);
        if (known.size() >= most) {
            known.clear();
        }
        known.put(key, made);
        return made;
    }
}
