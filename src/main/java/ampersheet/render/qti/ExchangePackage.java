package ampersheet.render.qti;

import ampersheet.render.Markup;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.time.LocalDateTime;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.zip.CRC32;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;

/** Items, the test that draws from them, and the manifest that lists them, in one file that is the same every time. */
public final class ExchangePackage {
    static final String MANIFEST = "imsmanifest.xml";
    static final String TEST = "test.xml";
    static final String MANIFEST_NAMESPACE = "http://www.imsglobal.org/xsd/qti/qtiv3p0/imscp_v1p1";
    /**
     * Not the earliest that an archive can tell: Java takes that one for "before 1980" and adds the time by the local
     * zone.
     */
    private static final LocalDateTime NO_TIME = LocalDateTime.of(1980, 2, 1, 0, 0);

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

    private ExchangePackage() {}

    /**
     * @param identifier of letters, digits and hyphens
     * @throws IllegalStateException if what was made does not fit the profile: such a package is never written
     */
    public static ExchangePackage of(String identifier, String title, String language, List<Pool> pools) {
        ExchangePackage made = new ExchangePackage();
        made.files.put(TEST, test(identifier, title, pools));
        Markup manifest = new Markup();
        manifest.trusted("<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n");
        manifest.open("manifest", "xmlns", MANIFEST_NAMESPACE, "identifier", identifier + "-manifest")
                .newline();
        manifest.open("metadata")
                .element("schema", "QTI Package")
                .element("schemaversion", "3.0.0")
                .close("metadata")
                .newline();
        manifest.single("organizations").newline().open("resources").newline();
        resource(
                manifest,
                identifier,
                "imsqti_test_xmlv3p0",
                TEST,
                List.of(),
                pools.stream()
                        .flatMap(pool -> pool.items().stream())
                        .map(ExchangeItem::identifier)
                        .toList());
        for (Pool pool : pools) {
            for (ExchangeItem item : pool.items()) {
                ItemMarkup.Written written = ItemMarkup.write(item);
                made.files.put(path(item), written.xml());
                written.figures().forEach(figure -> made.files.put(figure.path(), figure.svg()));
                resource(
                        manifest,
                        item.identifier(),
                        "imsqti_item_xmlv3p0",
                        path(item),
                        written.figures().stream()
                                .map(ItemMarkup.PackedFigure::path)
                                .toList(),
                        List.of());
            }
        }
        made.files.put(
                MANIFEST,
                manifest.close("resources")
                        .newline()
                        .close("manifest")
                        .newline()
                        .toString());
        List<String> faults = ExchangeProfile.faults(made.files);
        if (!faults.isEmpty()) {
            throw new IllegalStateException("the package does not fit its own profile: " + faults.get(0));
        }
        return made;
    }

    private static String path(ExchangeItem item) {
        return "items/" + item.identifier() + ".xml";
    }

    private static void resource(
            Markup manifest,
            String identifier,
            String type,
            String path,
            List<String> others,
            List<String> dependencies) {
        manifest.open("resource", "identifier", identifier, "type", type, "href", path)
                .single("file", "href", path);
        others.forEach(other -> manifest.single("file", "href", other));
        dependencies.forEach(dependency -> manifest.single("dependency", "identifierref", dependency));
        manifest.close("resource").newline();
    }

    /** Without a language of its own: the format gives one to items, not to a test. */
    private static String test(String identifier, String title, List<Pool> pools) {
        Markup out = new Markup();
        out.trusted("<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n");
        out.open("qti-assessment-test", "xmlns", ItemMarkup.NAMESPACE, "identifier", identifier, "title", title)
                .newline();
        out.open("qti-outcome-declaration", "identifier", "SCORE", "cardinality", "single", "base-type", "float")
                .open("qti-default-value")
                .element("qti-value", "0")
                .close("qti-default-value")
                .close("qti-outcome-declaration")
                .newline();
        out.open("qti-test-part", "identifier", "PART", "navigation-mode", "nonlinear", "submission-mode", "individual")
                .newline();
        for (int i = 0; i < pools.size(); i++) {
            Pool pool = pools.get(i);
            out.open(
                            "qti-assessment-section",
                            "identifier",
                            "SECTION_" + (i + 1),
                            "title",
                            pool.title(),
                            "visible",
                            "true")
                    .newline();
            out.single("qti-selection", "select", Integer.toString(pool.select()))
                    .newline();
            out.single("qti-ordering", "shuffle", "true").newline();
            pool.items()
                    .forEach(item -> out.single(
                                    "qti-assessment-item-ref", "identifier", item.identifier(), "href", path(item))
                            .newline());
            out.close("qti-assessment-section").newline();
        }
        out.close("qti-test-part").newline();
        out.open("qti-outcome-processing")
                .open("qti-set-outcome-value", "identifier", "SCORE")
                .open("qti-sum")
                .single("qti-test-variables", "variable-identifier", "SCORE")
                .close("qti-sum")
                .close("qti-set-outcome-value")
                .close("qti-outcome-processing")
                .newline();
        return out.close("qti-assessment-test").newline().toString();
    }

    /** Text of each file by its path, in the order in which they are packed. */
    public Map<String, String> files() {
        return Collections.unmodifiableMap(files);
    }

    /** As a zip archive; nothing is compressed, because compression differs between versions of the platform. */
    public void write(OutputStream to) throws IOException {
        ZipOutputStream zip = new ZipOutputStream(to, StandardCharsets.UTF_8);
        for (Map.Entry<String, String> file : files.entrySet()) {
            byte[] bytes = file.getValue().getBytes(StandardCharsets.UTF_8);
            CRC32 check = new CRC32();
            check.update(bytes);
            ZipEntry entry = new ZipEntry(file.getKey());
            entry.setMethod(ZipEntry.STORED);
            entry.setSize(bytes.length);
            entry.setCompressedSize(bytes.length);
            entry.setCrc(check.getValue());
            entry.setTimeLocal(NO_TIME);
            zip.putNextEntry(entry);
            zip.write(bytes);
            zip.closeEntry();
        }
        zip.finish();
    }
}
