package ampersheet.browser;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
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

    /**
     * What the browser gives a screen reader is whole: whatever can be reached has a name, so has each picture, and
     * another description; formulas are in words; headings follow each other, none twice in a problem; nothing that can
     * be reached is hidden.
     */
    public static void spoken(ChromeDriver browser, String which) {
        assertEquals(List.of(), AccessibilityTree.faults(browser), which);
        assertEquals(List.of(), browser.executeScript("""
        return Array.from(document.querySelectorAll('a[href], button, input, select, textarea, summary, [tabindex="0"]'))
            .filter(e => e.checkVisibility() && e.closest('[aria-hidden=true]')).map(e => e.outerHTML.slice(0, 120));
        """), which + ": can be reached and is hidden");
    }

    /** Wherever the keyboard leads, it is seen where it is; every control and box has a line around it. */
    public static void focusAndBoxesAreSeen(ChromeDriver browser, String which) {
        // A window in the background shows no focus.
        browser.executeCdpCommand("Emulation.setFocusEmulationEnabled", Map.of("enabled", true));
        assertEquals(List.of(), browser.executeScript("""
        const lineless = (e, style, width, colour) => {
          const its = getComputedStyle(e);
          return its[style] === 'none' || parseFloat(its[width]) < 1
              || its[colour] === getComputedStyle(e.parentElement).backgroundColor;
        };
        const seen = e => e.checkVisibility({visibilityProperty: true}) && e.getClientRects().length > 0;
        const faults = [];
        for (const e of document.querySelectorAll('a[href], button, input, select, textarea, summary, [tabindex="0"]')) {
          if (seen(e) && !e.disabled) {
            e.focus({focusVisible: true, preventScroll: true});
            if (document.activeElement === e && lineless(e, 'outlineStyle', 'outlineWidth', 'outlineColor')) {
              const its = getComputedStyle(e);
              faults.push('focus is not seen at ' + e.outerHTML.slice(0, 100) + ' ' + [its.outlineStyle, its.outlineWidth,
                  its.outlineColor, e.matches(':focus-visible')]);
            }
          }
        }
        document.activeElement.blur();
        for (const e of document.querySelectorAll(
            'button:not(#skill-list button), input[type=text], select, textarea, .caution, .blank, .box, .notice')) {
          const side = e.matches('.notice') ? 'Left' : 'Bottom';
          if (seen(e) && lineless(e, 'border' + side + 'Style', 'border' + side + 'Width', 'border' + side + 'Color')) {
            faults.push('no line around ' + e.outerHTML.slice(0, 100));
          }
        }
        return faults;
        """), which);
    }

    /** Nothing that stays in its place on the screen lies over the field in which one types. */
    public static void nothingCoversAField(ChromeDriver browser, String which) {
        assertEquals(List.of(), browser.executeScript("""
        return Array.from(document.querySelectorAll('input[type=text], textarea:not([readonly])')).filter(e => {
          if (!e.checkVisibility()) return false;
          e.focus();
          const box = e.getBoundingClientRect();
          const top = document.elementFromPoint(box.left + box.width / 2, Math.min(box.top + box.height / 2, innerHeight - 2));
          return box.top < 0 || box.bottom > innerHeight && box.height < innerHeight || !(top === e || e.contains(top));
        }).map(e => e.outerHTML.slice(0, 120));
        """), which);
    }

    /** Nothing sticks out sideways: the page never has to be moved in two directions to be read (SC 1.4.10). */
    public static void noSidewaysScrolling(ChromeDriver browser, String which) {
        assertEquals(List.of(), browser.executeScript("""
        const wide = document.documentElement.clientWidth;
        if (document.documentElement.scrollWidth <= wide) return [];
        const scrollsWithin = e => {
          for (let a = e.parentElement; a && a !== document.body; a = a.parentElement) {
            if (getComputedStyle(a).overflowX !== 'visible') return true;
          }
          return false;
        };
        const out = Array.from(document.querySelectorAll('body *'))
            .filter(e => e.getBoundingClientRect().right > wide + 1 && !scrollsWithin(e));
        return [document.documentElement.scrollWidth + ' px wide: ', ...out.slice(0, 5).map(e => e.outerHTML.slice(0, 120))];
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
