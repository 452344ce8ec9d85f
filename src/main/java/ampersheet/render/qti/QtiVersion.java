package ampersheet.render.qti;

import java.util.Optional;

/**
 * A version of the format, and what it calls things. Both versions say the same with other words: what 3.0 calls
 * {@code qti-text-entry-interaction} and {@code response-identifier} is {@code textEntryInteraction} and
 * {@code responseIdentifier} in 2.1. This program's writers use the words of 3.0, see {@link QtiMarkup}.
 */
public enum QtiVersion {
    V3_0(
            "3.0",
            new Schema(
                    "http://www.imsglobal.org/xsd/imsqtiasi_v3p0",
                    "https://purl.imsglobal.org/spec/qti/v3p0/schema/xsd/imsqti_asiv3p0_v1p0.xsd"),
            new Schema(
                    "http://www.imsglobal.org/xsd/qti/qtiv3p0/imscp_v1p1",
                    "https://purl.imsglobal.org/spec/qti/v3p0/schema/xsd/imsqtiv3p0_imscpv1p2_v1p0.xsd"),
            new Kinds("QTI Package", "3.0.0", "imsqti_item_xmlv3p0", "imsqti_test_xmlv3p0", "css3")),
    V2_1(
            "2.1",
            new Schema(
                    "http://www.imsglobal.org/xsd/imsqti_v2p1",
                    "http://www.imsglobal.org/xsd/qti/qtiv2p1/imsqti_v2p1p1.xsd"),
            new Schema(
                    "http://www.imsglobal.org/xsd/imscp_v1p1",
                    "http://www.imsglobal.org/xsd/qti/qtiv2p1/qtiv2p1_imscpv1p2_v1p0.xsd"),
            new Kinds("QTIv2.1 Package", "1.0.0", "imsqti_item_xmlv2p1", "imsqti_test_xmlv2p1", "webcontent"));

    private static final String PREFIX = "qti-";

    private final String number;
    private final Schema items;
    private final Schema manifest;
    private final Kinds kinds;

    /** A namespace and where its schema is published. */
    record Schema(String namespace, String location) {}

    /** How a manifest names what the package is and what is in it. */
    record Kinds(String schema, String schemaVersion, String item, String test, String styles) {}

    QtiVersion(String number, Schema items, Schema manifest, Kinds kinds) {
        this.number = number;
        this.items = items;
        this.manifest = manifest;
        this.kinds = kinds;
    }

    /** By its number, {@code 3.0} or {@code 2.1}; empty for any other. */
    public static Optional<QtiVersion> numbered(String number) {
        for (QtiVersion version : values()) {
            if (version.number.equals(number)) {
                return Optional.of(version);
            }
        }
        return Optional.empty();
    }

    public String number() {
        return number;
    }

    Schema items() {
        return items;
    }

    Schema manifest() {
        return manifest;
    }

    Kinds kinds() {
        return kinds;
    }

    /** @param name in the words of 3.0; elements of HTML are the same in both */
    String element(String name) {
        return this == V3_0 || !name.startsWith(PREFIX) ? name : camelCase(name.substring(PREFIX.length()));
    }

    /**
     * Of an element of the format itself. The name that a screen reader tells is a label in 2.1, the only attribute
     * there that comes near.
     */
    String attribute(String name) {
        if (this == V3_0 || name.startsWith("xml") || name.startsWith("xsi:")) {
            return name;
        }
        return name.equals("aria-label") ? "label" : camelCase(name);
    }

    /** What is there for those who cannot see the page. */
    String hiddenClass() {
        return this == V3_0 ? "qti-visually-hidden" : "visually-hidden";
    }

    private static String camelCase(String name) {
        StringBuilder out = new StringBuilder(name.length());
        for (int i = 0; i < name.length(); i++) {
            if (name.charAt(i) == '-' && i + 1 < name.length()) {
                i++;
                out.append(Character.toUpperCase(name.charAt(i)));
            } else {
                out.append(name.charAt(i));
            }
        }
        return out.toString();
    }
}
