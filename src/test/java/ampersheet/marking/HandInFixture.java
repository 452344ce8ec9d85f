package ampersheet.marking;

import ampersheet.answer.AnswerKey;
import ampersheet.sheet.PlanReader;
import ampersheet.sheet.ProblemSet;
import ampersheet.sheet.Roster;
import ampersheet.sheet.RosterReader;
import ampersheet.sheet.Sheet;
import ampersheet.sheet.SheetMaker;
import ampersheet.template.TemplateFiles;
import ampersheet.template.TemplateLibrary;
import java.io.IOException;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.BiFunction;
import org.junit.jupiter.api.io.TempDir;

/** A small class whose answers come into a folder and are marked there. */
abstract class HandInFixture {
    static final TemplateLibrary LIBRARY = new TemplateLibrary(List.of(TemplateFiles.builtIn()));
    static final ProblemSet SET = ProblemSet.of(PlanReader.read("plan.yaml", """
      title: Lanterns
      seed: handed in
      problems:
        - {template: current-limiting/one-indicator}
        - {template: voltage-dividers/battery-sense}
      """), LIBRARY);
    static final Sheet ONE = new SheetMaker(SET).sheet(1);
    static final Sheet TWO = new SheetMaker(SET).sheet(2);
    static final int PLACES = ONE.places().size();
    static final String HEAD = "sheet,question,answer,seat,save,browser\n";

    @TempDir
    Path folder;

    Roster roster = RosterReader.read("class.csv", "seat,name,email\n1,Ada,a@x\n2,=Bo,b@x\n3,Cem,c@x\n");
    Optional<Marking.NamedText> received = Optional.empty();
    String decisions = "";
    Marking.Marked marked;

    void put(String name, String text) throws IOException {
        put(name, text, StandardCharsets.UTF_8);
    }

    void put(String name, String text, Charset charset) throws IOException {
        Files.write(folder.resolve(name), text.getBytes(charset));
    }

    Map<String, String> mark() {
        Map<String, String> files = new TreeMap<>();
        Marking.Task task = new Marking.Task(
                folder,
                new SheetMaker(SET),
                Optional.empty(),
                roster,
                received,
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                OtherSheets.NONE,
                false);
        marked = Marking.mark(
                decisions.isEmpty() ? task : task.deciding(new Marking.NamedText("decisions.csv", decisions)),
                files::put);
        return files;
    }

    String notes() {
        return String.join(
                "\n", marked.notes().stream().map(note -> note.print()).toList());
    }

    static String right(AnswerKey key) {
        return SimulatedClass.written(key, key.expected());
    }

    /** Lines of a sheet; {@code text} says what stands at a place. */
    static String lines(Sheet sheet, String behind, BiFunction<Integer, AnswerKey, String> text) {
        StringBuilder out = new StringBuilder();
        for (int i = 0; i < sheet.places().size(); i++) {
            AnswerKey key = sheet.places().get(i);
            out.append(sheet.id() + "," + key.question() + ",\"" + text.apply(i, key) + "\"" + behind + "\n");
        }
        return out.toString();
    }

    static String saved(Sheet sheet, String browser, int save, boolean right) {
        return HEAD
                + lines(
                        sheet,
                        "," + sheet.id().seat() + "," + save + "," + browser,
                        (i, key) -> right ? right(key) : 77 + i + " F");
    }

    static String row(String table, String start) {
        return table.lines().filter(line -> line.startsWith(start)).findFirst().orElse("");
    }

    static String question(int place) {
        return ONE.places().get(place).question();
    }
}
