package ampersheet.desk;

import java.util.List;

/**
 * What a browser asks.
 *
 * @param path as it was written, without the query
 * @param part whether the script of the page asks for a part of it
 */
record Call(boolean post, String path, Form query, Form form, List<Upload> uploads, boolean part) {
    Call {
        uploads = List.copyOf(uploads);
    }

    /**
     * A file that was sent.
     *
     * @param name as the sender has it; never a path of ours
     */
    record Upload(String field, String name, byte[] bytes) {}
}
