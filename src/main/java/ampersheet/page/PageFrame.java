package ampersheet.page;

import ampersheet.language.Language;
import ampersheet.quantity.DecimalMarker;
import ampersheet.render.Markup;
import ampersheet.render.html.Fragment;
import ampersheet.sheet.Plan;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.Base64;
import java.util.List;

/**
 * One file that needs no other: its words, look, data and script. Only this very script may run in it, named by its
 * hash; nothing may be fetched, sent or evaluated.
 */
final class PageFrame {
    private static final String CHECKER = "/ampersheet/browser/checker.js";

    /** The script of a kind of page, and the sentences that it and the checker say: how their keys begin. */
    enum Script {
        PRACTICE(
                "practice.js",
                List.of("list", "number", "common", "reading", "verdict", "practice", "page.practice", "page.scrolls")),
        HOMEWORK("homework.js", List.of("list", "number", "reading", "page.homework", "page.scrolls"));

        private final String file;
        private final List<String> says;

        Script(String file, List<String> says) {
            this.file = file;
            this.says = says;
        }
    }

    /** How a page speaks and writes numbers. */
    record Spoken(Language language, DecimalMarker decimal) {
        static Spoken of(Plan plan) {
            return new Spoken(plan.language(), plan.decimal());
        }
    }

    private PageFrame() {}

    /**
     * @param script of the page: its own, and what it says
     * @param data JSON, for the script to read
     * @param body everything between the start and the data
     */
    static String render(Spoken spoken, String title, String bodyClass, String body, String data, Script script) {
        String code = read(CHECKER) + "\n" + lean(read("common.js")) + lean(read(script.file));
        if (code.contains("</script") || code.contains("<!--")) {
            throw new IllegalStateException("the script would end its own element");
        }
        Markup page = new Markup();
        page.trusted("<!DOCTYPE html>\n")
                .open("html", "lang", spoken.language().code())
                .newline()
                .open("head")
                .newline();
        page.single("meta", "charset", "UTF-8").newline();
        page.single(
                        "meta",
                        "http-equiv",
                        "Content-Security-Policy",
                        "content",
                        "default-src 'none'; script-src 'sha256-" + sha256(code)
                                + "'; style-src 'unsafe-inline'; img-src data:; base-uri 'none'; form-action 'none'")
                .newline();
        page.single("meta", "name", "viewport", "content", "width=device-width, initial-scale=1")
                .newline();
        page.single("meta", "name", "color-scheme", "content", "light dark").newline();
        page.open("title").line(title).close("title").newline();
        page.open("style")
                .newline()
                .trusted(Fragment.style(spoken.language()))
                .trusted(read("page.css"))
                .trusted(body.contains(" class=\"logo\"") ? Fragment.logoStyle() : "")
                .close("style")
                .newline();
        page.close("head").newline().open("body", "class", bodyClass).newline();
        page.trusted(body);
        page.open("script", "type", "application/json", "id", "data")
                .trusted(harmless(data))
                .close("script")
                .newline();
        page.open("script", "type", "application/json", "id", "language")
                .trusted(harmless(sentences(spoken, script)))
                .close("script")
                .newline();
        page.open("script").trusted(code).close("script").newline();
        return page.close("body").newline().close("html").newline().toString();
    }

    private static String sentences(Spoken spoken, Script script) {
        return Json.write(json -> {
            json.writeStartObject();
            json.writeStringField("code", spoken.language().code());
            json.writeStringField("decimal", String.valueOf(spoken.decimal().character()));
            json.writeStringField("sentences", spoken.language().written(script.says));
            json.writeEndObject();
        });
    }

    /** Without what only serves whoever reads the source: indentation, and comments that begin a line. */
    private static String lean(String script) {
        StringBuilder out = new StringBuilder();
        boolean comment = false;
        for (String line : script.split("\n")) {
            String stripped = line.strip();
            comment |= stripped.startsWith("/*");
            if (!comment && !stripped.isEmpty() && !stripped.startsWith("//")) {
                out.append(stripped).append('\n');
            }
            comment &= !stripped.endsWith("*/");
        }
        return out.toString();
    }

    /** The same JSON without anything that could end its element. */
    private static String harmless(String json) {
        return json.replace("</", "<\\/").replace("<!--", "\\u003c!--");
    }

    private static String sha256(String code) {
        try {
            return Base64.getEncoder()
                    .encodeToString(MessageDigest.getInstance("SHA-256").digest(code.getBytes(StandardCharsets.UTF_8)));
        } catch (NoSuchAlgorithmException impossible) {
            throw new IllegalStateException("every Java platform has SHA-256", impossible);
        }
    }

    private static String read(String name) {
        try (InputStream in = PageFrame.class.getResourceAsStream(name)) {
            if (in == null) {
                throw new IllegalStateException(
                        name + " is not on the class path; build with Maven, and without" + " -Dbrowser.phase=none");
            }
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException("cannot read " + name, e);
        }
    }
}
