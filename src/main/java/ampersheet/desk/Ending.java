package ampersheet.desk;

import static ampersheet.source.Told.say;

import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.CountDownLatch;

/** Ends the desk from one of its pages. The page that says so is still sent; there is none after it. */
final class Ending {
    private final CountDownLatch ended = new CountDownLatch(1);
    private final Frame frame;
    private final Work work;
    /** The course, from the root of the disk. */
    private final Path folder;

    private volatile boolean isSaid;

    Ending(Frame frame, Work work, Path folder) {
        this.frame = frame;
        this.work = work;
        this.folder = folder;
    }

    /** Whatever is being made would be cut off: whoever wants that stops it first, where it is made. */
    Reply end() {
        if (work.standing().filter(Work.Standing::isRunning).isPresent()) {
            return frame.goOn("/help", List.of(say("desk.end.working")));
        }
        isSaid = true;
        return Reply.plain(Reply.FINE, say("desk.end.done", "folder", folder.toString()));
    }

    /** An answer has been sent. */
    void sent() {
        if (isSaid) {
            ended.countDown();
        }
    }

    void await() throws InterruptedException {
        ended.await();
    }
}
