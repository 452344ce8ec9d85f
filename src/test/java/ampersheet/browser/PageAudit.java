package ampersheet.browser;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import org.openqa.selenium.chrome.ChromeDriver;

/** What holds for any page as it stands in the browser. */
public final class PageAudit {
    /**
     * Put into a page once; run there as it is, since the library's own way opens a window for every page it looks at.
     */
    private static final String AXE = axe();

    private PageAudit() {}

    private static String axe() {
        try (InputStream script = PageAudit.class.getResourceAsStream("/axe.min.js")) {
            return new String(script.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /**
     * The rules of the axe library for WCAG 2.0 to 2.2, levels A and AA, and for good practice, find nothing. Regions
     * are left out: a link that skips to the problem stands before all of them, as it should.
     */
    public static void accessible(ChromeDriver browser, String which) {
        browser.executeScript("if (!window.axe) { " + AXE + " }");
        Object found = browser.executeAsyncScript("""
        const done = arguments[arguments.length - 1];
        axe.run(document, {
          runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'],
          rules: {region: {enabled: false}},
          resultTypes: ['violations']
        }).then(results => done(results.violations.map(rule => arguments[0] + ': ' + rule.id + ' ' + rule.help + ' '
            + rule.nodes.slice(0, 3).map(node => node.target + ' ' + node.failureSummary).join('; '))),
          failure => done(['the audit failed: ' + failure]));
        """, which);
        assertEquals(List.of(), found);
    }

    /** Nothing sticks out sideways: the page never has to be moved in two directions to be read (SC 1.4.10). */
    public static void noSidewaysScrolling(ChromeDriver browser, String which) {
        assertEquals(List.of(), browser.executeScript("""
        const wide = document.documentElement.clientWidth;
        if (document.documentElement.scrollWidth <= wide) return [];
        return Array.from(document.querySelectorAll('body *')).filter(e => e.getBoundingClientRect().right > wide + 1
            && !e.closest('.drawing, .scroll, .equation, .line, .case, pre'))
            .slice(0, 5).map(e => e.outerHTML.slice(0, 120));
        """), which);
    }

    /** Every control is at least 24 CSS pixels high and wide (SC 2.5.8); links in running text are exempt. */
    public static void controlsAreLargeEnough(ChromeDriver browser, String which) {
        assertEquals(List.of(), browser.executeScript("""
        const controls = document.querySelectorAll('button, select, summary, input[type=text], fieldset label');
        return Array.from(controls).filter(e => {
          const box = e.getBoundingClientRect();
          return box.width > 0 && (box.width < 24 || box.height < 24);
        }).map(e => e.outerHTML.slice(0, 120));
        """), which);
    }
}
