package ampersheet.render.qti;

import java.io.IOException;
import java.io.InputStream;
import java.io.StringReader;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import javax.xml.XMLConstants;
import javax.xml.transform.Source;
import javax.xml.transform.stream.StreamSource;
import javax.xml.validation.Schema;
import javax.xml.validation.SchemaFactory;
import javax.xml.validation.Validator;
import org.xml.sax.SAXException;
import org.xml.sax.SAXParseException;

/**
 * The part of the format that this program writes, as schemas of its own for each version. They are stricter than the
 * format where that keeps a package from being scored otherwise than the engine would: responses are compared with
 * plain numbers and nothing else, nothing typed is looked at first. They do not take the place of the format's own
 * schemas.
 */
final class ExchangeProfile {
    private final Schema schema;

    private ExchangeProfile(Schema schema) {
        this.schema = schema;
    }

    static ExchangeProfile of(QtiVersion version) {
        return new ExchangeProfile(schema(
                "xml.xsd",
                "mathml.xsd",
                "items-" + version.number() + ".xsd",
                "manifest-" + version.number() + ".xsd"));
    }

    /** Each with file and line; none if the files fit. Drawings are not looked at. */
    List<String> faults(Map<String, String> files) {
        List<String> faults = new ArrayList<>();
        files.forEach((path, text) -> {
            if (path.endsWith(".xml")) {
                check(path, text, faults);
            }
        });
        return faults;
    }

    private void check(String path, String text, List<String> faults) {
        try {
            Validator validator = schema.newValidator();
            validator.setProperty(XMLConstants.ACCESS_EXTERNAL_DTD, "");
            validator.setProperty(XMLConstants.ACCESS_EXTERNAL_SCHEMA, "");
            validator.validate(new StreamSource(new StringReader(text)));
        } catch (SAXParseException fault) {
            faults.add(path + ":" + fault.getLineNumber() + ": " + fault.getMessage());
        } catch (SAXException fault) {
            faults.add(path + ": " + fault.getMessage());
        } catch (IOException impossible) {
            throw new UncheckedIOException(impossible);
        }
    }

    private static Schema schema(String... names) {
        try {
            SchemaFactory factory = SchemaFactory.newInstance(XMLConstants.W3C_XML_SCHEMA_NS_URI);
            factory.setProperty(XMLConstants.ACCESS_EXTERNAL_DTD, "");
            factory.setProperty(XMLConstants.ACCESS_EXTERNAL_SCHEMA, "");
            List<Source> sources = new ArrayList<>();
            for (String name : names) {
                InputStream in = ExchangeProfile.class.getResourceAsStream(name);
                if (in == null) {
                    throw new IllegalStateException(
                            name + " is not on the class path beside " + ExchangeProfile.class.getName());
                }
                sources.add(new StreamSource(in, name));
            }
            return factory.newSchema(sources.toArray(new Source[0]));
        } catch (SAXException fault) {
            throw new IllegalStateException("the profile itself is broken: " + fault.getMessage(), fault);
        }
    }
}
