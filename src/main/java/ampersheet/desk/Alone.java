package ampersheet.desk;

import ampersheet.issue.RunLock;
import java.io.IOException;
import java.nio.file.Path;
import java.util.Optional;

/**
 * Whether no other desk is open over a folder. Two are no danger to each other's files, since a form writes only over
 * what it saw; but each tells only of what it makes itself.
 */
final class Alone implements AutoCloseable {
    private static final String LOCK = ".ampersheet-desk.lock";

    private final Path file;
    private Optional<RunLock> lock = Optional.empty();
    private boolean canTell = true;

    Alone(Path folder) {
        this.file = folder.resolve(LOCK);
    }

    /** Asked again at each page: the other desk may have ended. */
    synchronized boolean isSo() {
        if (lock.isEmpty() && canTell) {
            try {
                lock = RunLock.ifFree(file);
            } catch (IOException noLocks) {
                // A folder that is only read, or a disk without locks: a desk opens over it all the same.
                canTell = false;
            }
        }
        return lock.isPresent() || !canTell;
    }

    @Override
    public synchronized void close() throws IOException {
        canTell = false;
        if (lock.isPresent()) {
            lock.get().close();
            lock = Optional.empty();
        }
    }
}
