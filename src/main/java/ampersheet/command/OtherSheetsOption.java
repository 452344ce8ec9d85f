package ampersheet.command;

import static ampersheet.source.Told.say;

import ampersheet.issue.CourseFolder;
import ampersheet.marking.OtherSheets;
import ampersheet.sheet.CoursePlan;
import ampersheet.sheet.IssuedArchive;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** Which other sheets the class was given, by the archives in its course folder. */
@Command
final class OtherSheetsOption {
    @Option(names = "--others", paramLabel = "MADE", descriptionKey = "command.mark.help.others")
    private Path made;

    /** @param code with which the IDs of the sheets at hand begin */
    OtherSheets than(String code) {
        if (made == null) {
            return OtherSheets.NONE;
        }
        if (!Files.isDirectory(made)) {
            throw new WrongUsage(
                    InputFile.shown(made),
                    say("command.course.unreadable"),
                    say("command.mark.others.expected"),
                    say("command.path.next"));
        }
        CourseFolder.Made ofPlan = new CourseFolder.Made(made);
        List<OtherSheets.Given> given = new ArrayList<>(in(ofPlan));
        for (int week = 1; week <= CoursePlan.MOST_WEEKS; week++) {
            given.addAll(in(ofPlan.ofWeek(week)));
        }
        return OtherSheets.among(given, code);
    }

    private static List<OtherSheets.Given> in(CourseFolder.Made place) {
        List<OtherSheets.Given> given = new ArrayList<>();
        for (Path folder : place.ofArchives()) {
            for (String name : names(folder)) {
                if (CourseFolder.isArchive(name)) {
                    given.add(new OtherSheets.Given(place.folder().toString(), IssuedArchive.set(name)));
                }
            }
        }
        return given;
    }

    private static List<String> names(Path folder) {
        if (!Files.isDirectory(folder)) {
            return List.of();
        }
        try (Stream<Path> files = Files.list(folder)) {
            return files.map(file -> file.getFileName().toString()).sorted().toList();
        } catch (IOException failure) {
            throw new WrongUsage(
                    InputFile.shown(folder),
                    say("command.course.unreadable"),
                    say("command.mark.others.expected"),
                    say("command.path.next"));
        }
    }
}
