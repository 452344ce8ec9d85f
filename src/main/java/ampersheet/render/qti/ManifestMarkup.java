package ampersheet.render.qti;

import ampersheet.render.Markup;
import ampersheet.render.qti.ExchangePackage.Contents;
import ampersheet.render.qti.ExchangePackage.Pool;
import java.util.ArrayList;
import java.util.List;

/** Writes the list of what is in the package, with what a catalogue may tell of each item. */
final class ManifestMarkup {
    private static final String METADATA = "http://ltsc.ieee.org/xsd/LOM";
    private static final String METADATA_SCHEMA = "http://www.imsglobal.org/xsd/imsmd_loose_v1p3p2.xsd";
    private static final String INSTANCE = "http://www.w3.org/2001/XMLSchema-instance";
    private static final String[] DIFFICULTIES = {"very easy", "easy", "medium", "difficult", "very difficult"};

    private final Contents contents;
    private final QtiVersion version;
    private final Markup out = new Markup();

    private ManifestMarkup(Contents contents, QtiVersion version) {
        this.contents = contents;
        this.version = version;
    }

    /** @param figures of each item, in the order of the pools and their items */
    static String write(Contents contents, QtiVersion version, List<List<String>> figures) {
        return new ManifestMarkup(contents, version).write(figures);
    }

    private String write(List<List<String>> figures) {
        QtiVersion.Schema schema = version.manifest();
        out.trusted("<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n");
        out.open(
                        "manifest",
                        "xmlns",
                        schema.namespace(),
                        "xmlns:lom",
                        METADATA,
                        "xmlns:xsi",
                        INSTANCE,
                        "xsi:schemaLocation",
                        schema.namespace() + " " + schema.location() + " " + METADATA + " " + METADATA_SCHEMA,
                        "identifier",
                        contents.identifier() + "-manifest")
                .newline();
        out.open("metadata")
                .element("schema", version.kinds().schema())
                .element("schemaversion", version.kinds().schemaVersion())
                .close("metadata")
                .newline();
        out.single("organizations").newline().open("resources").newline();
        List<String> items = new ArrayList<>();
        contents.items().forEach(item -> items.add(item.identifier()));
        resource(contents.identifier(), version.kinds().test(), ExchangePackage.TEST);
        end(List.of(ExchangePackage.TEST), items);
        resource(styles(), version.kinds().styles(), ExchangePackage.STYLES);
        end(List.of(ExchangePackage.STYLES), List.of());
        int at = 0;
        for (Pool pool : contents.pools()) {
            for (ExchangeItem item : pool.items()) {
                item(item, figures.get(at++));
            }
        }
        return out.close("resources").newline().close("manifest").newline().toString();
    }

    private String styles() {
        return contents.identifier() + "-styles";
    }

    private void resource(String identifier, String type, String path) {
        out.open("resource", "identifier", identifier, "type", type, "href", path);
    }

    private void end(List<String> files, List<String> dependencies) {
        files.forEach(file -> out.single("file", "href", file));
        dependencies.forEach(dependency -> out.single("dependency", "identifierref", dependency));
        out.close("resource").newline();
    }

    private void item(ExchangeItem item, List<String> figures) {
        String path = ExchangePackage.path(item);
        resource(item.identifier(), version.kinds().item(), path);
        metadata(item);
        List<String> files = new ArrayList<>(List.of(path));
        files.addAll(figures);
        end(files, List.of(styles()));
    }

    /** By the general standard for such data, which platforms of both versions of the format read. */
    private void metadata(ExchangeItem item) {
        ExchangeItem.About about = item.about();
        out.open("metadata").open("lom:lom").open("lom:general");
        words("lom:title", item.shown().block().title(), about);
        out.element("lom:language", about.language().code());
        words("lom:keyword", about.skill(), about);
        about.rules().forEach(rule -> words("lom:keyword", rule, about));
        out.close("lom:general").open("lom:educational");
        vocabulary("lom:learningResourceType", "LOMv1.0", "exercise");
        vocabulary("lom:difficulty", "LOMv1.0", DIFFICULTIES[about.level()]);
        out.close("lom:educational");
        classified("competency", List.of(about.skill()), about);
        classified(
                "skill level",
                List.of(about.language().say("print.exchange.level", "level", Integer.toString(about.level()))),
                about);
        classified("idea", about.rules(), about);
        out.close("lom:lom").close("metadata");
    }

    private void classified(String purpose, List<String> entries, ExchangeItem.About about) {
        if (entries.isEmpty()) {
            return;
        }
        out.open("lom:classification");
        vocabulary("lom:purpose", "LOMv1.0", purpose);
        for (String entry : entries) {
            out.open("lom:taxonPath");
            words("lom:source", "Ampersheet", about);
            out.open("lom:taxon");
            words("lom:entry", entry, about);
            out.close("lom:taxon").close("lom:taxonPath");
        }
        out.close("lom:classification");
    }

    private void vocabulary(String element, String source, String value) {
        out.open(element)
                .element("lom:source", source)
                .element("lom:value", value)
                .close(element);
    }

    private void words(String element, String words, ExchangeItem.About about) {
        out.open(element)
                .element("lom:string", words, "language", about.language().code())
                .close(element);
    }
}
