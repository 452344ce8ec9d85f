package ampersheet.browser;

import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.openqa.selenium.chrome.ChromeDriver;

class PageAuditTest {
    @TempDir
    private Path folder;

    @Test
    void aPageWithFaultsIsFoundAndOneWithoutIsNot() throws IOException {
        Chromium.need();
        Path faulty = Files.writeString(
                folder.resolve("faulty.html"),
                "<!DOCTYPE html><title>t</title><main><h1>Pale</h1><p style='color:#ccc'>pale words</p><input></main>");
        Path sound = Files.writeString(
                folder.resolve("sound.html"),
                "<!DOCTYPE html><html lang='en'><title>t</title><main><h1>Dark</h1><p>dark words</p></main>");
        ChromeDriver browser = Chromium.fresh();
        browser.get(faulty.toUri().toString());
        String told = assertThrows(AssertionError.class, () -> PageAudit.accessible(browser, "faulty"))
                .getMessage();
        for (String rule : new String[] {"color-contrast", "html-has-lang", "label"}) {
            assertTrue(told.contains("faulty: " + rule), told);
        }
        browser.get(sound.toUri().toString());
        PageAudit.accessible(browser, "sound");
    }
}
