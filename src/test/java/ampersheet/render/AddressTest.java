package ampersheet.render;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;

class AddressTest {
    @Test
    void placesBesideThePageAndTheWebMayBeLinked() {
        for (String address : List.of(
                "sheets/7KQ-4M2-A.html",
                "../index.html",
                "#problem-1",
                "a.html?x=1:2",
                "https://example.org/a",
                "HTTP://example.org",
                "mailto:desk@example.org")) {
            assertTrue(Address.isAllowed(address), address);
        }
    }

    @Test
    void whatRunsSomethingOrLeavesTheFolderByARootMayNot() {
        for (String address : List.of(
                "javascript:alert(1)",
                "JavaScript:alert(1)",
                "java\nscript:alert(1)",
                " javascript:alert(1)",
                "\u0001javascript:alert(1)",
                "data:text/html,x",
                "vbscript:x",
                "file:///etc/passwd",
                "//example.org/x",
                "\\\\host\\share",
                "blob:x",
                "",
                "a b.html",
                "x:y")) {
            assertFalse(Address.isAllowed(address), address);
        }
    }

    @Test
    void marksThatWouldEndAnAddressAreEncoded() {
        assertEquals("a%28b%29%5B%5D%3C%22%27%7C.html", Address.encoded("a(b)[]<\"'|.html"));
        assertEquals("sheets/7KQ_4-M2.html?x=%20", Address.encoded("sheets/7KQ_4-M2.html?x=%20"));
    }
}
