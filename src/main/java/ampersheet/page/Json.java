package ampersheet.page;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;

/** JSON into a text. */
final class Json {
    private static final JsonFactory FACTORY = new JsonFactory();

    private Json() {}

    interface Content {
        void write(JsonGenerator json) throws IOException;
    }

    static String write(Content content) {
        StringWriter out = new StringWriter();
        try (JsonGenerator json = FACTORY.createGenerator(out)) {
            content.write(json);
        } catch (IOException impossible) {
            throw new UncheckedIOException("a text in memory can always be written", impossible);
        }
        return out.toString();
    }
}
