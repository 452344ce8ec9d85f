package ampersheet.render.qti;

import ampersheet.source.StoredZip;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/** Items, the test that draws from them, and the manifest that lists them, in one file that is the same every time. */
public final class ExchangePackage {
    static final String MANIFEST = "imsmanifest.xml";
    static final String TEST = "test.xml";
    static final String STYLES = "styles/items.css";
    private final Map<String, String> files = new TreeMap<>();

    /**
     * Items of one skill, of which each learner gets some.
     *
     * @param select how many
     */
    public record Pool(String title, int select, List<ExchangeItem> items) {
        public Pool {
            items = List.copyOf(items);
            if (select < 1 || select > items.size()) {
                throw new IllegalArgumentException(select + " of " + items.size() + " items");
            }
        }
    }

    /**
     * What goes into a package.
     *
     * @param identifier of letters, digits and hyphens, of this plan with its seed and its templates and of no other
     */
    public record Contents(String identifier, String title, ExchangeSession session, List<Pool> pools) {
        public Contents {
            pools = List.copyOf(pools);
        }

        List<ExchangeItem> items() {
            return pools.stream().flatMap(pool -> pool.items().stream()).toList();
        }
    }

    private ExchangePackage() {}

    /**
     * @throws IllegalStateException if what was made does not fit the profile of its version: such a package is never
     *     written
     */
    public static ExchangePackage of(Contents contents, QtiVersion version) {
        ExchangePackage made = new ExchangePackage();
        made.files.put(TEST, TestMarkup.write(contents, version));
        made.files.put(STYLES, styles());
        List<List<String>> figures = new ArrayList<>();
        for (ExchangeItem item : contents.items()) {
            ItemWriter.Written written = ItemWriter.write(ItemScoring.model(item, contents.session()), version);
            made.files.put(path(item), written.xml());
            written.figures().forEach(figure -> made.files.put(figure.path(), figure.svg()));
            figures.add(written.figures().stream()
                    .map(ItemWriter.PackedFigure::path)
                    .toList());
        }
        made.files.put(MANIFEST, ManifestMarkup.write(contents, version, figures));
        List<String> faults = ExchangeProfile.of(version).faults(made.files);
        if (!faults.isEmpty()) {
            throw new IllegalStateException("the package does not fit its own profile: " + faults.get(0));
        }
        return made;
    }

    static String path(ExchangeItem item) {
        return "items/" + item.identifier() + ".xml";
    }

    private static String styles() {
        try (InputStream in = ExchangePackage.class.getResourceAsStream("items.css")) {
            if (in == null) {
                throw new IllegalStateException(
                        "items.css is not on the class path beside " + ExchangePackage.class.getName());
            }
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException unreadable) {
            throw new UncheckedIOException(unreadable);
        }
    }

    /** Text of each file by its path, in the order in which they are packed. */
    public Map<String, String> files() {
        return Collections.unmodifiableMap(files);
    }

    /** As a zip archive. */
    public void write(OutputStream to) throws IOException {
        StoredZip zip = new StoredZip(to);
        for (Map.Entry<String, String> file : files.entrySet()) {
            zip.add(file.getKey(), file.getValue());
        }
        zip.finish();
    }
}
