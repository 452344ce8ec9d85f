package ampersheet.render.pdf;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.ByteArrayInputStream;
import java.util.List;
import java.util.TreeSet;
import org.verapdf.gf.foundry.VeraGreenfieldFoundryProvider;
import org.verapdf.pdfa.Foundries;
import org.verapdf.pdfa.PDFAParser;
import org.verapdf.pdfa.PDFAValidator;
import org.verapdf.pdfa.flavours.PDFAFlavour;
import org.verapdf.pdfa.results.TestAssertion;
import org.verapdf.pdfa.results.ValidationResult;

/**
 * Judges a file by the veraPDF library, the reference checker of PDF/UA-1 (ISO 14289-1, its machine-checkable part).
 */
final class Accessible {
    private Accessible() {}

    static void check(byte[] pdf) throws Exception {
        assertEquals(List.of(), faults(pdf));
    }

    static List<String> faults(byte[] pdf) throws Exception {
        VeraGreenfieldFoundryProvider.initialise();
        try (PDFAParser parser =
                        Foundries.defaultInstance().createParser(new ByteArrayInputStream(pdf), PDFAFlavour.PDFUA_1);
                PDFAValidator judge = Foundries.defaultInstance().createValidator(PDFAFlavour.PDFUA_1, false)) {
            ValidationResult result = judge.validate(parser);
            TreeSet<String> faults = new TreeSet<>();
            for (TestAssertion assertion : result.getTestAssertions()) {
                if (assertion.getStatus() == TestAssertion.Status.FAILED) {
                    faults.add(assertion.getRuleId().getClause() + " " + assertion.getMessage());
                }
            }
            if (!result.isCompliant() && faults.isEmpty()) {
                faults.add("not compliant");
            }
            return List.copyOf(faults);
        }
    }
}
