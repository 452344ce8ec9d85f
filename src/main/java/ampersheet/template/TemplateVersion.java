package ampersheet.template;

import ampersheet.source.Yaml;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.Map;
import java.util.Optional;

/**
 * What the version of a template is made of: the text of its files without what changes no sheet, and the limits that
 * refuse draws.
 */
final class TemplateVersion {
    private TemplateVersion() {}

    /** The text without {@code after}: what is learned before a skill changes no sheet, and so no sheet's ID. */
    static String ofASheet(Yaml.Mapping mapping, String text) {
        StringBuilder left = new StringBuilder();
        int line = 1;
        int from = 0;
        while (from < text.length()) {
            int end = text.indexOf('\n', from) < 0 ? text.length() : text.indexOf('\n', from) + 1;
            if (mapping.flow() || !isAfter(mapping, line)) {
                left.append(text, from, end);
            }
            from = end;
            line++;
        }
        return left.toString();
    }

    /** Whether a line belongs to {@code after}: from its key to the next one's. */
    private static boolean isAfter(Yaml.Mapping mapping, int line) {
        boolean within = false;
        for (Yaml.Entry entry : mapping.entries()) {
            if (entry.key().place().line() <= line) {
                within = entry.key().text().equals("after");
            }
        }
        return within;
    }

    /** Limits decide which draws are refused, so that they belong to the version of the template. */
    static Optional<String> limits(Premises premises) {
        StringBuilder limits = new StringBuilder();
        premises.limits()
                .forEach(limited -> limits.append(limited.limit().id())
                        .append(' ')
                        .append(limited.limit().asFingerprinted())
                        .append('\n'));
        premises.partLimits()
                .forEach(limit -> limits.append(limit.id())
                        .append(' ')
                        .append(limit.asFingerprinted())
                        .append('\n'));
        return limits.isEmpty() ? Optional.empty() : Optional.of(limits.toString());
    }

    /** @param texts by the name of the file */
    static String of(Map<String, String> texts) {
        try {
            MessageDigest digest = MessageDigest.getInstance("SHA-256");
            texts.forEach((file, text) -> {
                byte[] bytes = text.getBytes(StandardCharsets.UTF_8);
                digest.update((file + "\n" + bytes.length + "\n").getBytes(StandardCharsets.UTF_8));
                digest.update(bytes);
            });
            return HexFormat.of().formatHex(digest.digest());
        } catch (NoSuchAlgorithmException impossible) {
            throw new IllegalStateException("every Java platform has SHA-256", impossible);
        }
    }
}
