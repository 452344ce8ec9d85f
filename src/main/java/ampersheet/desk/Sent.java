package ampersheet.desk;

import static ampersheet.source.Told.say;

import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CompletionException;
import org.eclipse.jetty.http.MultiPart;
import org.eclipse.jetty.http.MultiPartFormData;
import org.eclipse.jetty.io.Content;
import org.eclipse.jetty.util.Fields;
import org.eclipse.jetty.util.Promise;
import org.eclipse.jetty.util.UrlEncoded;

/** Fields and files of a form that was sent. */
record Sent(Form form, List<Call.Upload> uploads) {
    private static final String PLAIN = "application/x-www-form-urlencoded";
    private static final String WITH_FILES = "multipart/form-data";
    private static final int MOST_FIELDS = 2_000;
    private static final int PART_HEADER = 2_000;

    /** Thrown where what was sent is no form. */
    static final class NoForm extends Exception {
        private static final long serialVersionUID = 1L;

        NoForm(String sentence) {
            super(sentence);
        }
    }

    static Form query(String query) throws NoForm {
        return query == null || query.isEmpty() ? Form.NONE : decoded(query);
    }

    static Sent of(String type, byte[] body, Limits limits) throws NoForm {
        String plain = type.strip();
        if (plain.startsWith(WITH_FILES)) {
            return withFiles(plain, body, limits);
        }
        if (plain.startsWith(PLAIN)) {
            return new Sent(decoded(new String(body, StandardCharsets.UTF_8)), List.of());
        }
        throw new NoForm(say("desk.form.none"));
    }

    private static Form decoded(String text) throws NoForm {
        Fields fields = new Fields(true);
        try {
            UrlEncoded.decodeUtf8To(text, fields);
        } catch (IllegalArgumentException broken) {
            throw new NoForm(say("desk.form.encoding"));
        }
        if (fields.getSize() > MOST_FIELDS) {
            throw new NoForm(say("desk.form.fields"));
        }
        Map<String, List<String>> all = new TreeMap<>();
        for (Fields.Field field : fields) {
            all.put(field.getName(), field.getValues());
        }
        return new Form(all);
    }

    private static Sent withFiles(String type, byte[] body, Limits limits) throws NoForm {
        String boundary = MultiPart.extractBoundary(type);
        if (boundary == null || boundary.isEmpty()) {
            throw new NoForm(say("desk.form.boundary"));
        }
        MultiPartFormData.Parser parser = new MultiPartFormData.Parser(boundary);
        parser.setMaxParts(limits.uploads() + MOST_FIELDS);
        parser.setMaxLength(limits.bodyBytes());
        parser.setMaxMemoryFileSize(limits.bodyBytes());
        parser.setPartHeadersMaxLength(PART_HEADER);
        CompletableFuture<MultiPartFormData.Parts> parsed = new CompletableFuture<>();
        parser.parse(Content.Source.from(ByteBuffer.wrap(body)), Promise.Invocable.toPromise(parsed));
        try (MultiPartFormData.Parts parts = parsed.join()) {
            Map<String, List<String>> fields = new TreeMap<>();
            List<Call.Upload> uploads = new ArrayList<>();
            for (MultiPart.Part part : parts) {
                String name = part.getName() == null ? "" : part.getName();
                if (part.getFileName() == null) {
                    fields.computeIfAbsent(name, first -> new ArrayList<>())
                            .add(part.getContentAsString(StandardCharsets.UTF_8));
                } else if (!part.getFileName().isEmpty()) {
                    uploads.add(new Call.Upload(name, part.getFileName(), bytes(part)));
                }
            }
            if (uploads.size() > limits.uploads()) {
                throw new NoForm(say("desk.form.uploads", "most", Integer.toString(limits.uploads())));
            }
            return new Sent(new Form(fields), uploads);
        } catch (CompletionException | IllegalArgumentException | IllegalStateException | IOException broken) {
            throw new NoForm(say("desk.form.parts"));
        }
    }

    private static byte[] bytes(MultiPart.Part part) throws IOException {
        try (InputStream in = Content.Source.asInputStream(part.newContentSource(null, 0, -1))) {
            return in.readAllBytes();
        }
    }
}
