package ampersheet.browser;

import static org.junit.jupiter.api.Assertions.assertEquals;

import com.deque.html.axecore.results.Results;
import com.deque.html.axecore.selenium.AxeBuilder;
import java.util.List;
import org.openqa.selenium.chrome.ChromeDriver;

/** What holds for any page as it stands in the browser. */
public final class PageAudit {
    private PageAudit() {}

    /**
     * The rules of the axe library for WCAG 2.0 to 2.2, levels A and AA, and for good practice, find nothing. Regions
     * are left out: a link that skips to the problem stands before all of them, as it should.
     */
    public static void accessible(ChromeDriver browser, String which) {
        Results results = new AxeBuilder()
                .withTags(List.of("wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"))
                .disableRules(List.of("region"))
                .analyze(browser);
        List<String> found = results.getViolations().stream()
                .map(rule -> which + ": " + rule.getId() + " " + rule.getHelp() + " "
                        + rule.getNodes().stream()
                                .limit(3)
                                .map(node -> node.getTarget() + " " + node.getFailureSummary())
                                .toList())
                .toList();
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
