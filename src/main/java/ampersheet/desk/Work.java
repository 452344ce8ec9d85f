package ampersheet.desk;

import static ampersheet.source.Told.say;

import ampersheet.diagnostic.Diagnostic;
import ampersheet.diagnostic.DiagnosticException;
import ampersheet.diagnostic.Place;
import ampersheet.issue.Progress;
import ampersheet.source.WithinMemory;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.concurrent.CancellationException;
import java.util.function.LongSupplier;

/**
 * What takes a while, one thing at a time for a course. It can be watched and stopped; what it had written by then is
 * whole.
 */
final class Work implements AutoCloseable {
    private static final long SECOND = 1_000_000_000L;
    private static final int CLOSING = 5_000;

    private final LongSupplier nanos;
    private Job last;
    /** Of each place, the last that did not give way. */
    private final Map<String, Job> made = new TreeMap<>();

    Work(LongSupplier nanos) {
        this.nanos = nanos;
    }

    /** What is to be done; it tells what came of it, in sentences. */
    interface Task {
        List<String> run(Progress progress);
    }

    enum State {
        RUNNING,
        DONE,
        FAILED,
        STOPPED
    }

    /**
     * How far something is.
     *
     * @param made so many seats of {@code all}; 0 of 0 where nothing is counted
     * @param secondsLeft negative where nothing can be said yet
     * @param givesWay to whatever else is begun
     */
    record Standing(
            String title,
            String place,
            State state,
            String of,
            int made,
            int all,
            long seconds,
            long secondsLeft,
            boolean givesWay,
            List<String> told,
            List<Diagnostic> faults) {
        Standing {
            told = List.copyOf(told);
            faults = List.copyOf(faults);
        }

        boolean isRunning() {
            return state == State.RUNNING;
        }
    }

    private static final class Job implements Progress, Runnable {
        private final String title;
        private final String place;
        /** Until it has ended: what it made may be told of for long, and needs nothing of what it was made of. */
        private Task task;

        private final LongSupplier nanos;
        private final long begun;
        private final List<String> told = new ArrayList<>();
        private final List<Diagnostic> faults = new ArrayList<>();
        private State state = State.RUNNING;
        private boolean stopping;
        private String of = "";
        private int made;
        private int all;
        private long ended;
        private final boolean givesWay;
        private final Thread before;
        private Thread thread;

        Job(String title, String place, Task task, LongSupplier nanos, boolean givesWay, Thread before) {
            this.title = title;
            this.place = place;
            this.task = task;
            this.nanos = nanos;
            this.givesWay = givesWay;
            this.before = before;
            this.begun = nanos.getAsLong();
        }

        @Override
        public synchronized void made(String what, int seats) {
            if (stopping) {
                throw new CancellationException("stopped at the desk");
            }
            of = what;
            made++;
            all = seats;
        }

        @Override
        public void run() {
            List<String> came = List.of();
            List<Diagnostic> wrong = List.of();
            State end = State.DONE;
            try {
                if (before != null) {
                    before.join(); // it writes beside the same files, and ends after the sheet at hand
                }
                came = task.run(this);
            } catch (InterruptedException closed) {
                end = State.STOPPED;
            } catch (CancellationException stopped) {
                end = State.STOPPED;
            } catch (DiagnosticException unfit) {
                end = State.FAILED;
                wrong = unfit.diagnostics();
            } catch (OutOfMemoryError | StackOverflowError exhausted) {
                end = State.FAILED;
                wrong = List.of(WithinMemory.told(title, exhausted));
            } catch (RuntimeException failure) {
                end = State.FAILED;
                wrong = List.of(Diagnostic.error(
                        Place.inFile(title),
                        say("desk.work.failed", "failure", failure.toString()),
                        "",
                        say("desk.work.failed.next")));
            }
            end(end, came, wrong);
        }

        private synchronized void end(State end, List<String> came, List<Diagnostic> wrong) {
            state = end;
            task = null;
            told.addAll(came);
            faults.addAll(wrong);
            ended = nanos.getAsLong();
        }

        synchronized void stop() {
            stopping = true;
        }

        synchronized Standing standing() {
            long took = (state == State.RUNNING ? nanos.getAsLong() : ended) - begun;
            long left = made == 0 || all == 0 ? -1 : took / made * (all - made) / SECOND;
            return new Standing(title, place, state, of, made, all, took / SECOND, left, givesWay, told, faults);
        }
    }

    /** @return false if something is being done already */
    boolean begin(String title, String place, Task task) {
        return begin(title, place, task, false);
    }

    /**
     * Does what nobody should have to wait for: whatever else is begun takes its place.
     *
     * @return false if something is being done already that does not give way
     */
    boolean beginAside(String title, String place, Task task) {
        return begin(title, place, task, true);
    }

    private synchronized boolean begin(String title, String place, Task task, boolean givesWay) {
        boolean running = last != null && last.standing().isRunning();
        if (running && !last.givesWay) {
            return false;
        }
        if (running) {
            last.stop();
        }
        last = new Job(title, place, task, nanos, givesWay, running ? last.thread : null);
        if (!givesWay) {
            made.put(place, last);
        }
        last.thread = new Thread(last, "work");
        last.thread.setDaemon(true);
        last.thread.setPriority(Thread.MIN_PRIORITY);
        last.thread.start();
        return true;
    }

    synchronized Optional<Standing> standing() {
        return Optional.ofNullable(last).map(Job::standing);
    }

    /** The same, if it belongs to this place. */
    Optional<Standing> standing(String place) {
        return standing().filter(one -> one.place().equals(place));
    }

    /** What was made last at this place, where {@link #standing(String)} tells of something else by now. */
    synchronized Optional<Standing> before(String place) {
        return Optional.ofNullable(made.get(place)).filter(job -> job != last).map(Job::standing);
    }

    synchronized void stop() {
        if (last != null) {
            last.stop();
        }
    }

    @Override
    public void close() {
        Thread thread;
        synchronized (this) {
            stop();
            thread = last == null ? null : last.thread;
        }
        if (thread != null) {
            try {
                thread.join(CLOSING);
            } catch (InterruptedException stopped) {
                Thread.currentThread().interrupt();
            }
        }
    }
}
