package ampersheet.issue;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.concurrent.CancellationException;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;
import java.util.function.Function;

/** Does the same with each of several things at a time; the results come in the order of the things. */
final class InOrder {
    private InOrder() {}

    /** The first failure, in the order of the things, ends the work and is thrown. */
    static <T, R> List<R> map(List<T> things, int threads, Function<T, R> work) {
        ExecutorService workers = Executors.newFixedThreadPool(threads);
        try {
            List<Future<R>> coming = new ArrayList<>();
            for (T thing : things) {
                coming.add(workers.submit((Callable<R>) () -> work.apply(thing)));
            }
            List<R> results = new ArrayList<>();
            for (Future<R> result : coming) {
                results.add(result.get());
            }
            return results;
        } catch (ExecutionException failed) {
            if (failed.getCause() instanceof RuntimeException cause) {
                throw cause;
            }
            if (failed.getCause() instanceof Error cause) {
                throw cause;
            }
            throw new IllegalStateException(failed.getCause());
        } catch (InterruptedException stopped) {
            Thread.currentThread().interrupt();
            throw new CancellationException("stopped from outside");
        } finally {
            workers.shutdownNow();
            awaitEnd(workers);
        }
    }

    /** Nothing is still being written when the caller goes on. */
    private static void awaitEnd(ExecutorService workers) {
        try {
            workers.awaitTermination(1, TimeUnit.MINUTES);
        } catch (InterruptedException stopped) {
            Thread.currentThread().interrupt();
        }
    }
}
