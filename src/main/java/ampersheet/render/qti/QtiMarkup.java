package ampersheet.render.qti;

import ampersheet.render.Markup;

/** Markup of one version of the format, written in the words of 3.0. */
final class QtiMarkup {
    private static final String INSTANCE = "http://www.w3.org/2001/XMLSchema-instance";

    private final QtiVersion version;
    private final Markup out = new Markup();

    QtiMarkup(QtiVersion version) {
        this.version = version;
        out.trusted("<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n");
    }

    QtiVersion version() {
        return version;
    }

    /** For what knows nothing of the format. */
    Markup html() {
        return out;
    }

    /** The outermost element, which says where its schema is. */
    QtiMarkup root(String element, QtiVersion.Schema schema, String... attributes) {
        String[] all = new String[attributes.length + 6];
        String[] named = {
            "xmlns",
            schema.namespace(),
            "xmlns:xsi",
            INSTANCE,
            "xsi:schemaLocation",
            schema.namespace() + " " + schema.location()
        };
        System.arraycopy(named, 0, all, 0, named.length);
        System.arraycopy(attributes, 0, all, named.length, attributes.length);
        return open(element, all).newline();
    }

    QtiMarkup open(String element, String... attributes) {
        out.open(version.element(element), named(element, attributes));
        return this;
    }

    QtiMarkup close(String element) {
        out.close(version.element(element));
        return this;
    }

    QtiMarkup single(String element, String... attributes) {
        out.single(version.element(element), named(element, attributes));
        return this;
    }

    QtiMarkup element(String element, String text, String... attributes) {
        out.element(version.element(element), text, named(element, attributes));
        return this;
    }

    QtiMarkup text(String text) {
        out.text(text);
        return this;
    }

    QtiMarkup line(String text) {
        out.line(text);
        return this;
    }

    QtiMarkup trusted(String markup) {
        out.trusted(markup);
        return this;
    }

    QtiMarkup newline() {
        out.newline();
        return this;
    }

    private String[] named(String element, String[] attributes) {
        if (!element.startsWith("qti-")) {
            return attributes;
        }
        String[] named = attributes.clone();
        for (int i = 0; i < named.length; i += 2) {
            named[i] = version.attribute(named[i]);
        }
        return named;
    }

    @Override
    public String toString() {
        return out.toString();
    }
}
