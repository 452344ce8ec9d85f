package ampersheet.render.qti;

import ampersheet.render.qti.ExchangePackage.Contents;
import ampersheet.render.qti.ExchangePackage.Pool;

/** Writes the test that draws from the pools. Without a language: the format gives one to items, not to a test. */
final class TestMarkup {
    private final Contents contents;
    private final QtiMarkup out;

    private TestMarkup(Contents contents, QtiVersion version) {
        this.contents = contents;
        this.out = new QtiMarkup(version);
    }

    static String write(Contents contents, QtiVersion version) {
        return new TestMarkup(contents, version).write();
    }

    private String write() {
        out.root(
                "qti-assessment-test",
                out.version().items(),
                "identifier",
                contents.identifier(),
                "title",
                contents.title());
        outcome("SCORE");
        outcome("MAXSCORE");
        out.open("qti-test-part", "identifier", "PART", "navigation-mode", "nonlinear", "submission-mode", "individual")
                .newline();
        session();
        for (int i = 0; i < contents.pools().size(); i++) {
            section(i + 1, contents.pools().get(i));
        }
        out.close("qti-test-part").newline().open("qti-outcome-processing");
        sum("SCORE");
        sum("MAXSCORE");
        out.close("qti-outcome-processing").newline();
        return out.close("qti-assessment-test").newline().toString();
    }

    /** The most depends on what is drawn, and is summed like the score. */
    private void outcome(String identifier) {
        out.open("qti-outcome-declaration", "identifier", identifier, "cardinality", "single", "base-type", "float")
                .open("qti-default-value")
                .element("qti-value", "0")
                .close("qti-default-value")
                .close("qti-outcome-declaration")
                .newline();
    }

    /** Said in full: left out, a platform shows no feedback and gives one attempt. */
    private void session() {
        ExchangeSession session = contents.session();
        out.single(
                        "qti-item-session-control",
                        "max-attempts",
                        Integer.toString(session.attempts()),
                        "show-feedback",
                        Boolean.toString(session.feedback()),
                        "allow-review",
                        "true",
                        "show-solution",
                        "false",
                        "allow-skipping",
                        "true",
                        "validate-responses",
                        "false")
                .newline();
    }

    private void section(int number, Pool pool) {
        out.open("qti-assessment-section", "identifier", "SECTION_" + number, "title", pool.title(), "visible", "true")
                .newline();
        out.single("qti-selection", "select", Integer.toString(pool.select())).newline();
        out.single("qti-ordering", "shuffle", "true").newline();
        pool.items()
                .forEach(item -> out.single(
                                "qti-assessment-item-ref",
                                "identifier",
                                item.identifier(),
                                "href",
                                ExchangePackage.path(item))
                        .newline());
        out.close("qti-assessment-section").newline();
    }

    private void sum(String outcome) {
        out.open("qti-set-outcome-value", "identifier", outcome)
                .open("qti-sum")
                .single("qti-test-variables", "variable-identifier", outcome)
                .close("qti-sum")
                .close("qti-set-outcome-value");
    }
}
