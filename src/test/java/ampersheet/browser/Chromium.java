package ampersheet.browser;

import static org.junit.jupiter.api.Assertions.fail;
import static org.junit.jupiter.api.Assumptions.abort;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.openqa.selenium.chrome.ChromeDriver;
import org.openqa.selenium.chrome.ChromeDriverService;
import org.openqa.selenium.chrome.ChromeOptions;

/**
 * A headless browser for tests. Where there is none, or the checker was not compiled, a test that asks for one is skipped;
 * with the environment variable {@value #REQUIRED} it fails instead.
 */
public final class Chromium {
  public static final String REQUIRED = "AMPERSHEET_REQUIRE_BROWSER";
  private static final List<Path> BROWSERS = List.of(Path.of("/usr/bin/chromium"), Path.of("/usr/bin/google-chrome"));
  private static final List<Path> DRIVERS = List.of(Path.of("/usr/bin/chromedriver"));

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

  /** @param profile an empty folder; what pages keep in the browser ends with it */
  public static ChromeDriver open(Path profile, String... moreFlags) {
    need();
    ChromeOptions options = new ChromeOptions();
    options.setBinary(first(BROWSERS).get(0).toFile());
    options.addArguments("--headless=new", "--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run",
        "--disable-background-networking", "--disable-component-update", "--disable-sync", "--disable-dev-shm-usage",
        "--hide-scrollbars", "--user-data-dir=" + profile.toAbsolutePath());
    options.addArguments(moreFlags);
    ChromeDriverService service =
        new ChromeDriverService.Builder().usingDriverExecutable(first(DRIVERS).get(0).toFile()).build();
    return new ChromeDriver(service, options);
  }

  private static List<Path> first(List<Path> candidates) {
    return candidates.stream().filter(Files::isExecutable).limit(1).toList();
  }

  /** A page with nothing but a script in it, as a file. */
  static Path pageOf(String script, Path folder) throws IOException {
    return Files.writeString(folder.resolve("page.html"), "<!DOCTYPE html><meta charset=\"UTF-8\"><title>t</title><script>"
        + script.replace("</script", "<\\/script") + "</script>");
  }
}
