package ampersheet.reference;

import ampersheet.template.TemplateFiles;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/** Counts what the published values cover, as Markdown. */
final class Coverage {
    static final String START = "## What is covered";
    private static final List<String> KINDS =
            List.of("template", "circuit", "heat", "chain", "diode", "transient", "series", "reading");

    private Coverage() {}

    /** Every built-in template with the number of rows that work it. */
    static Map<String, Integer> rowsByTemplate(List<ReferenceCheck> checks) {
        Map<String, Integer> rows = new TreeMap<>();
        TemplateFiles.builtIn().names().forEach(name -> rows.put(name, 0));
        for (ReferenceCheck check : checks) {
            if (check.subject() instanceof Subject.Template template) {
                rows.merge(template.template(), 1, Integer::sum);
            }
        }
        return rows;
    }

    static String table(List<ReferenceCheck> checks) {
        StringBuilder out = new StringBuilder(START).append("\n\n");
        byKind(checks, out);
        byTemplate(checks, out);
        bySource(checks, out);
        return out.toString();
    }

    private static void byKind(List<ReferenceCheck> checks, StringBuilder out) {
        Map<String, Map<String, Integer>> counts = new LinkedHashMap<>();
        for (ReferenceCheck check : checks) {
            Map<String, Integer> ofFile = counts.computeIfAbsent(check.file(), file -> new TreeMap<>());
            ofFile.merge(check.subject().kind(), 1, Integer::sum);
            ofFile.merge("all", 1, Integer::sum);
        }
        List<String> kinds = new ArrayList<>(KINDS);
        kinds.add("all");
        out.append("Rows by file and kind:\n\n| File | ")
                .append(String.join(" | ", kinds))
                .append(" |\n| --- |")
                .append(" ---: |".repeat(kinds.size()))
                .append('\n');
        Map<String, Integer> sums = new TreeMap<>();
        counts.forEach((file, ofFile) -> {
            ofFile.forEach((kind, rows) -> sums.merge(kind, rows, Integer::sum));
            line(file, kinds, ofFile, out);
        });
        line("all", kinds, sums, out);
    }

    private static void line(String name, List<String> kinds, Map<String, Integer> counts, StringBuilder out) {
        out.append("| ").append(name).append(" |");
        kinds.forEach(kind -> out.append(' ')
                .append(counts.containsKey(kind) ? counts.get(kind) : "")
                .append(" |"));
        out.append('\n');
    }

    private static void byTemplate(List<ReferenceCheck> checks, StringBuilder out) {
        out.append("\nRows that work a built-in template, both routes:\n\n| Template | Rows |\n| --- | ---: |\n");
        rowsByTemplate(checks)
                .forEach((template, rows) -> out.append("| ")
                        .append(template)
                        .append(" | ")
                        .append(rows)
                        .append(" |\n"));
    }

    private static void bySource(List<ReferenceCheck> checks, StringBuilder out) {
        Map<String, Map<String, Integer>> sources = new TreeMap<>();
        for (ReferenceCheck check : checks) {
            sources.computeIfAbsent(check.source(), source -> new TreeMap<>())
                    .merge(check.status() + ", " + check.grade(), 1, Integer::sum);
        }
        out.append("\nSources, with how they were established and their grade:\n\n| Source | Status, grade | Rows |\n"
                + "| --- | --- | ---: |\n");
        sources.forEach((source, statuses) -> statuses.forEach((status, rows) -> out.append("| ")
                .append(source.replace("|", "\\|"))
                .append(" | ")
                .append(status)
                .append(" | ")
                .append(rows)
                .append(" |\n")));
    }
}
