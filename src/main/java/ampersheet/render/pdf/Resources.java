package ampersheet.render.pdf;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;

/** Files of this room on the class path. */
final class Resources {
    private Resources() {}

    static InputStream open(String name) {
        InputStream in = Resources.class.getResourceAsStream(name);
        if (in == null) {
            throw new IllegalStateException(name + " is not on the class path beside " + Resources.class.getName()
                    + "; build with the resources folder");
        }
        return in;
    }

    static String text(String name) {
        try (InputStream in = open(name)) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException failure) {
            throw new UncheckedIOException("cannot read " + name, failure);
        }
    }
}
