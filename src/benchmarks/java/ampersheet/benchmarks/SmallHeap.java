package ampersheet.benchmarks;

import ampersheet.command.Main;
import com.sun.management.GarbageCollectorMXBean;
import com.sun.management.GcInfo;
import java.lang.management.ManagementFactory;
import java.lang.management.MemoryUsage;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;

/**
 * The program in a small heap, and the most that was in use after any full collection: one is asked for every few
 * moments, and what it left is told by the collector itself, since threads fill the heap again before anybody looks.
 * Printed at the end on the stream of errors.
 */
public final class SmallHeap {
    /** The heap of which a class of any size has to get along. */
    static final List<String> SETTINGS = List.of("-Xmx128m", "-XX:+UseSerialGC");

    static final String SAID = "most in use after a full collection: ";
    private static final long MOMENTS = Long.getLong("ampersheet.moments", 1_000);
    private static final String FULL = "MarkSweepCompact";
    private static final Set<String> HEAP = Set.of("Eden Space", "Survivor Space", "Tenured Gen");

    private SmallHeap() {}

    public static void main(String[] args) {
        Watch watch = new Watch();
        Thread looking = new Thread(watch::keepLooking, "looking");
        looking.setDaemon(true);
        looking.start();
        Runtime.getRuntime().addShutdownHook(new Thread(watch::tell));
        Main.main(args);
    }

    private static final class Watch {
        private final GarbageCollectorMXBean full =
                ManagementFactory.getPlatformMXBeans(GarbageCollectorMXBean.class).stream()
                        .filter(one -> one.getName().equals(FULL))
                        .findFirst()
                        .orElseThrow();
        private final List<Long> looks = new ArrayList<>();

        void keepLooking() {
            try {
                while (true) {
                    look();
                    Thread.sleep(MOMENTS);
                }
            } catch (InterruptedException ended) {
                Thread.currentThread().interrupt();
            }
        }

        private synchronized void look() {
            System.gc();
            GcInfo last = full.getLastGcInfo();
            long used = 0;
            for (Map.Entry<String, MemoryUsage> pool : last.getMemoryUsageAfterGc().entrySet()) {
                used += HEAP.contains(pool.getKey()) ? pool.getValue().getUsed() : 0;
            }
            looks.add(used);
        }

        private synchronized void tell() {
            List<Long> sorted = looks.stream().sorted().toList();
            System.err.printf(
                    Locale.ROOT,
                    "%s%.2f MB, at half of %d looks less than %.2f MB%n",
                    SAID,
                    sorted.get(sorted.size() - 1) / 1048576.0,
                    sorted.size(),
                    sorted.get(sorted.size() / 2) / 1048576.0);
        }
    }
}
