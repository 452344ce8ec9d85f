package ampersheet.spark;

import ampersheet.issue.Issue;
import ampersheet.issue.Output;
import ampersheet.issue.SlicedIssue;
import ampersheet.sheet.PlanReader;
import ampersheet.sheet.ProblemSet;
import ampersheet.sheet.Roster;
import ampersheet.sheet.RosterReader;
import ampersheet.template.TemplateFiles;
import ampersheet.template.TemplateLibrary;
import java.io.IOException;
import java.io.Serializable;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;

/**
 * What a class is issued from and where to, by names that every machine reads alike: folders that they share.
 *
 * @param templates folder of an author's own; empty for those that the program brings along
 */
public record ClassFiles(String plan, String roster, String templates, String out) implements Serializable {

    Path folder() {
        return Path.of(out);
    }

    ProblemSet set() {
        TemplateFiles files = templates.isEmpty() ? TemplateFiles.builtIn() : TemplateFiles.in(Path.of(templates));
        ProblemSet set = ProblemSet.of(PlanReader.read(plan, text(plan)), new TemplateLibrary(List.of(files)));
        if (!text(plan).contains("seed:")) {
            throw new IllegalArgumentException(
                    plan + " has no seed: of its own, and each machine would draw another; write one into it");
        }
        return set;
    }

    Roster learners() {
        return RosterReader.read(roster, text(roster));
    }

    SlicedIssue sliced() {
        ProblemSet set = set();
        return new SlicedIssue(
                set, set.sitting(learners()), folder(), new Issue.Besides(false, false), Output.Terms.NONE);
    }

    private static String text(String file) {
        try {
            return Files.readString(Path.of(file));
        } catch (IOException unread) {
            throw new UncheckedIOException(file + " cannot be read", unread);
        }
    }
}
