package ampersheet.render.qti;

import ampersheet.render.qti.ItemModel.Place;
import java.util.List;

/** Writes an item in one version of the format: declarations, body, processing. */
final class ItemWriter {
    private final ItemModel model;
    private final QtiMarkup out;

    /** @param path in the package */
    record PackedFigure(String path, String svg) {}

    /** @param figures that it shows, as files of their own */
    record Written(String xml, List<PackedFigure> figures) {
        Written {
            figures = List.copyOf(figures);
        }
    }

    private ItemWriter(ItemModel model, QtiVersion version) {
        this.model = model;
        this.out = new QtiMarkup(version);
    }

    static Written write(ItemModel model, QtiVersion version) {
        return new ItemWriter(model, version).write();
    }

    private Written write() {
        ExchangeItem item = model.item();
        out.root(
                "qti-assessment-item",
                out.version().items(),
                "identifier",
                item.identifier(),
                "title",
                item.shown().block().title(),
                "adaptive",
                "false",
                "time-dependent",
                "false",
                "xml:lang",
                item.about().language().code());
        model.places().forEach(this::response);
        String most = ProcessingMarkup.plain(item.asked().most());
        score(out, "SCORE", most, "0");
        score(out, "MAXSCORE", most, most);
        model.outcomes().forEach(this::outcome);
        out.single("qti-stylesheet", "href", "../" + ExchangePackage.STYLES, "type", "text/css")
                .newline();
        ItemBody body = new ItemBody(model, out);
        body.write();
        new ProcessingMarkup(out).write(model.decisions());
        out.close("qti-assessment-item").newline();
        return new Written(out.toString(), body.figures());
    }

    private void response(Place place) {
        out.open(
                        "qti-response-declaration",
                        "identifier",
                        place.response(),
                        "cardinality",
                        "single",
                        "base-type",
                        place.isChoice() ? "identifier" : "float")
                .open("qti-correct-response")
                .element("qti-value", place.correct())
                .close("qti-correct-response")
                .close("qti-response-declaration")
                .newline();
    }

    /** A number from 0 to the most there is. */
    static void score(QtiMarkup out, String identifier, String most, String value) {
        out.open(
                        "qti-outcome-declaration",
                        "identifier",
                        identifier,
                        "cardinality",
                        "single",
                        "base-type",
                        "float",
                        "normal-maximum",
                        most,
                        "normal-minimum",
                        "0")
                .open("qti-default-value")
                .element("qti-value", value)
                .close("qti-default-value")
                .close("qti-outcome-declaration")
                .newline();
    }

    private void outcome(String identifier) {
        out.single(
                        "qti-outcome-declaration",
                        "identifier",
                        identifier,
                        "cardinality",
                        "single",
                        "base-type",
                        "identifier")
                .newline();
    }
}
