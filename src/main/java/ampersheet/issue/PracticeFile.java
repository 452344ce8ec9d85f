package ampersheet.issue;

import static ampersheet.source.Told.say;

import ampersheet.page.PracticePage;
import ampersheet.page.PracticeSet;
import ampersheet.sheet.ProblemSet;
import ampersheet.template.ProblemTemplate;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;

/** A plan becomes one page to practise its skills with. */
public final class PracticeFile {
    private PracticeFile() {}

    /** @param bytes of the page */
    public record Written(int skills, int bytes) {}

    /**
     * The page is whole or not there.
     *
     * @param variants problems of each skill
     * @throws ampersheet.diagnostic.DiagnosticException if a template has too few variants, or the file cannot be
     *     written
     */
    public static Written write(ProblemSet set, int variants, Path out, Output.Terms terms) {
        try (Output output = Output.file(out, ".html", terms)) {
            output.require(List.of(out));
            int skills = (int) set.sources().values().stream()
                    .map(ProblemTemplate::skill)
                    .distinct()
                    .count();
            PracticeSet practice =
                    PracticeSet.of(set, variants, () -> terms.progress().made(say("folder.making.skills"), skills));
            byte[] page = PracticePage.render(practice).getBytes(StandardCharsets.UTF_8);
            output.write(out, page);
            output.finish();
            return new Written(practice.skills().size(), page.length);
        }
    }
}
