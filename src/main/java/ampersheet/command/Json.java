package ampersheet.command;

import ampersheet.diagnostic.Printable;
import ampersheet.render.ShortestDecimal;
import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.util.DefaultIndenter;
import com.fasterxml.jackson.core.util.DefaultPrettyPrinter;
import com.fasterxml.jackson.core.util.Separators;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.util.List;
import java.util.function.BiConsumer;
import java.util.function.Consumer;

/** Writes JSON in the order in which it is told, two blanks of indentation, line feeds. */
final class Json {
    private static final JsonFactory FACTORY = new JsonFactory();

    private final JsonGenerator to;

    private Json(JsonGenerator to) {
        this.to = to;
    }

    /** One object. */
    static String of(Consumer<Json> contents) {
        StringWriter text = new StringWriter();
        try (JsonGenerator generator = FACTORY.createGenerator(text)) {
            DefaultIndenter indenter = new DefaultIndenter("  ", "\n");
            generator.setPrettyPrinter(new DefaultPrettyPrinter(
                            Separators.createDefaultInstance().withObjectFieldValueSpacing(Separators.Spacing.AFTER))
                    .withObjectIndenter(indenter)
                    .withArrayIndenter(indenter));
            generator.writeStartObject();
            contents.accept(new Json(generator));
            generator.writeEndObject();
        } catch (IOException failure) {
            throw new UncheckedIOException(failure);
        }
        return seen(text.toString());
    }

    /** What acts without being seen stands only within texts, where JSON has an escape for it. */
    private static String seen(String json) {
        StringBuilder out = new StringBuilder();
        json.codePoints().forEach(c -> {
            if (c == '\n' || !Printable.acts(c)) {
                out.appendCodePoint(c);
            } else {
                for (char half : Character.toChars(c)) {
                    String digits = Integer.toHexString(half);
                    out.append("\\u").append("0".repeat(4 - digits.length())).append(digits);
                }
            }
        });
        return out.toString();
    }

    Json text(String name, String value) {
        return write(() -> to.writeStringField(name, value));
    }

    Json number(String name, long value) {
        return write(() -> to.writeNumberField(name, value));
    }

    /** JSON has no infinity and no "not a number": these become null. */
    Json number(String name, double value) {
        return write(() -> {
            to.writeFieldName(name);
            if (Double.isFinite(value)) {
                to.writeNumber(ShortestDecimal.of(value));
            } else {
                to.writeNull();
            }
        });
    }

    Json flag(String name, boolean value) {
        return write(() -> to.writeBooleanField(name, value));
    }

    Json texts(String name, List<String> values) {
        return write(() -> {
            to.writeArrayFieldStart(name);
            for (String value : values) {
                to.writeString(value);
            }
            to.writeEndArray();
        });
    }

    Json object(String name, Consumer<Json> contents) {
        return write(() -> {
            to.writeObjectFieldStart(name);
            contents.accept(this);
            to.writeEndObject();
        });
    }

    <T> Json objects(String name, List<T> things, BiConsumer<Json, T> contents) {
        return write(() -> {
            to.writeArrayFieldStart(name);
            for (T thing : things) {
                to.writeStartObject();
                contents.accept(this, thing);
                to.writeEndObject();
            }
            to.writeEndArray();
        });
    }

    private interface Writing {
        void write() throws IOException;
    }

    private Json write(Writing writing) {
        try {
            writing.write();
        } catch (IOException failure) {
            throw new UncheckedIOException(failure);
        }
        return this;
    }
}
