package ampersheet.browser;

import static org.junit.jupiter.api.Assertions.fail;
import static org.junit.jupiter.api.Assumptions.abort;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.logging.Level;
import org.openqa.selenium.OutputType;
import org.openqa.selenium.WebDriverException;
import org.openqa.selenium.WindowType;
import org.openqa.selenium.chrome.ChromeDriver;
import org.openqa.selenium.chrome.ChromeDriverService;
import org.openqa.selenium.chrome.ChromeOptions;
import org.openqa.selenium.logging.LogEntry;
import org.openqa.selenium.logging.LogType;
import org.openqa.selenium.logging.LoggingPreferences;
import org.openqa.selenium.support.ui.WebDriverWait;

/**
 * A headless browser for tests. Where there is none, or the checker was not compiled, a test that asks for one is
 * skipped; with the environment variable {@value #REQUIRED} it fails instead.
 */
public final class Chromium {
    public static final String REQUIRED = "AMPERSHEET_REQUIRE_BROWSER";
    private static final List<Path> BROWSERS = List.of(Path.of("/usr/bin/chromium"), Path.of("/usr/bin/google-chrome"));
    private static final List<Path> DRIVERS = List.of(Path.of("/usr/bin/chromedriver"));

    private static ChromeDriver kept;

    private Chromium() {}

    /** Skips the test that calls it, or fails it, where no browser can be had. */
    public static void need() {
        if (first(BROWSERS).isEmpty() || first(DRIVERS).isEmpty()) {
            lacking("no Chromium with its driver in /usr/bin");
        }
        if (Chromium.class.getResource("/ampersheet/browser/checker.js") == null) {
            lacking("the checker is not compiled for the browser: build with Maven, without -Dbrowser.phase=none");
        }
    }

    private static void lacking(String what) {
        if (System.getenv(REQUIRED) == null) {
            abort(what);
        }
        fail(what + ", and " + REQUIRED + " is set");
    }

    /**
     * The browser of this process as if it had just been started: one empty tab, nothing kept, nothing emulated. A
     * start takes as long as twenty pages, so that the first test to ask starts it for all, and it ends with the
     * process.
     */
    public static synchronized ChromeDriver fresh() {
        need();
        if (kept == null || !answers(kept)) {
            kept = start();
        }
        ChromeDriver browser = kept;
        Set<String> before = browser.getWindowHandles();
        // All that a test sets by the driver, it sets for a tab.
        String fresh = browser.switchTo().newWindow(WindowType.TAB).getWindowHandle();
        for (String tab : before) {
            browser.switchTo().window(tab);
            browser.close();
        }
        browser.switchTo().window(fresh);
        browser.executeCdpCommand("Network.clearBrowserCookies", Map.of());
        browser.executeCdpCommand("Browser.setDownloadBehavior", Map.of("behavior", "default"));
        forget(browser);
        requestsAndComplaints(browser);
        return browser;
    }

    /** Whether it is still there: a test may have brought it down, which is no fault of the next one. */
    private static boolean answers(ChromeDriver browser) {
        try {
            return !browser.getWindowHandles().isEmpty();
        } catch (WebDriverException gone) {
            return false;
        }
    }

    /** Its folder is the driver's, which takes it away at the end. */
    private static ChromeDriver start() {
        ChromeOptions options = new ChromeOptions();
        options.setBinary(first(BROWSERS).get(0).toFile());
        options.addArguments(
                "--headless=new",
                "--no-sandbox",
                "--disable-gpu",
                "--disable-quic",
                "--no-first-run",
                "--disable-background-networking",
                "--disable-component-update",
                "--disable-sync",
                "--disable-dev-shm-usage",
                "--hide-scrollbars",
                // As for the tests' own Java: what better code gains in pages so short-lived it costs to make.
                "--js-flags=--no-turbofan --no-maglev");
        LoggingPreferences logs = new LoggingPreferences();
        logs.enable(LogType.BROWSER, Level.ALL);
        logs.enable(LogType.PERFORMANCE, Level.ALL);
        options.setCapability("goog:loggingPrefs", logs);
        ChromeDriverService service = new ChromeDriverService.Builder()
                .usingDriverExecutable(first(DRIVERS).get(0).toFile())
                .build();
        ChromeDriver browser = new ChromeDriver(service, options);
        Runtime.getRuntime().addShutdownHook(new Thread(browser::quit));
        // What is slow because others work beside it is no fault.
        browser.manage().timeouts().scriptTimeout(Duration.ofMinutes(3));
        return browser;
    }

    /** Addresses asked for since the last call, and whatever the browser complained of. */
    public static List<String> requestsAndComplaints(ChromeDriver browser) {
        List<String> seen = new ArrayList<>();
        for (LogEntry entry : browser.manage().logs().get(LogType.PERFORMANCE)) {
            String message = entry.getMessage();
            int url = message.indexOf("\"url\":\"");
            boolean ofTheFirstTab = message.contains("\"documentURL\":\"chrome"); // may still load when a test begins
            if (message.contains("\"Network.requestWillBeSent\"") && url >= 0 && !ofTheFirstTab) {
                seen.add(message.substring(message.indexOf("\"request\":"))
                        .replaceAll(".*?\"url\":\"([^\"]*)\".*", "$1"));
            }
        }
        browser.manage().logs().get(LogType.BROWSER).forEach(entry -> seen.add(entry.getMessage()));
        return seen;
    }

    /** A page on a desk's screen, as on the first visit: nothing is kept of earlier ones, and nothing told of them. */
    public static void openAnew(ChromeDriver browser, Path file) {
        screen(browser, 1280, 900);
        prefer(browser);
        browser.get("about:blank"); // a page may keep what it holds when it is left
        forget(browser);
        requestsAndComplaints(browser);
        browser.get(file.toUri().toString());
        untilReady(browser);
    }

    private static void forget(ChromeDriver browser) {
        browser.executeCdpCommand(
                "Storage.clearDataForOrigin", Map.of("origin", "file://", "storageTypes", "local_storage"));
    }

    /** The script of a page shows what is first after the page has been loaded. */
    public static void untilReady(ChromeDriver browser) {
        new WebDriverWait(browser, Duration.ofSeconds(20)).until(page ->
                (boolean) browser.executeScript("return performance.getEntriesByName('ready').length > 0"));
    }

    /**
     * As a pointer does, in one command instead of a dozen: what is seen, enabled and lies above all else gets the
     * focus and is clicked. That the browser's own pointer does the same, tests show that use it.
     */
    public static void press(ChromeDriver browser, String css) {
        browser.executeScript("""
        const pressed = document.querySelector(arguments[0]);
        if (!pressed || !pressed.checkVisibility({visibilityProperty: true}) || pressed.disabled) {
          throw new Error(arguments[0] + ' cannot be pressed');
        }
        pressed.scrollIntoView({block: 'nearest'});
        const box = pressed.getBoundingClientRect();
        const above = document.elementFromPoint(box.left + box.width / 2, box.top + box.height / 2);
        if (!pressed.contains(above)) {
          throw new Error(arguments[0] + ' lies under ' + (above ? above.outerHTML.slice(0, 100) : 'nothing'));
        }
        pressed.focus({preventScroll: true});
        pressed.click();""", css);
    }

    /** A screen of so many CSS pixels. */
    public static void screen(ChromeDriver browser, int width, int height) {
        browser.executeCdpCommand(
                "Emulation.setDeviceMetricsOverride",
                Map.of("width", width, "height", height, "deviceScaleFactor", 1, "mobile", false));
    }

    /** @param features such as {@code prefers-color-scheme} and {@code dark}, by turns */
    public static void prefer(ChromeDriver browser, String... features) {
        List<Map<String, String>> emulated = new ArrayList<>();
        for (int i = 0; i < features.length; i += 2) {
            emulated.add(Map.of("name", features[i], "value", features[i + 1]));
        }
        browser.executeCdpCommand("Emulation.setEmulatedMedia", Map.of("features", emulated));
    }

    /** A picture of the whole page, to be looked at. */
    public static void picture(ChromeDriver browser, Path file) throws IOException {
        long height = ((Number) browser.executeScript("return document.documentElement.scrollHeight")).longValue();
        long width = ((Number) browser.executeScript("return innerWidth")).longValue();
        screen(browser, (int) width, (int) Math.min(height, 6000));
        Files.createDirectories(file.getParent());
        Files.write(file, browser.getScreenshotAs(OutputType.BYTES));
    }

    private static List<Path> first(List<Path> candidates) {
        return candidates.stream().filter(Files::isExecutable).limit(1).toList();
    }

    /** A page with nothing but a script in it, as a file. */
    static Path pageOf(String script, Path folder) throws IOException {
        return Files.writeString(
                folder.resolve("page.html"),
                "<!DOCTYPE html><meta charset=\"UTF-8\"><title>t</title><script>"
                        + script.replace("</script", "<\\/script") + "</script>");
    }
}
