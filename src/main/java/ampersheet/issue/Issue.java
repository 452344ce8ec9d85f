package ampersheet.issue;

import ampersheet.page.HomeworkPage;
import ampersheet.problem.Tally;
import ampersheet.render.html.HtmlPage;
import ampersheet.render.pdf.ExtraFont;
import ampersheet.render.markdown.MarkdownPage;
import ampersheet.sheet.ArchivedSheet;
import ampersheet.sheet.ClassIndex;
import ampersheet.sheet.Composer;
import ampersheet.sheet.Document;
import ampersheet.sheet.IssuedArchive;
import ampersheet.sheet.Plan;
import ampersheet.sheet.ProblemSet;
import ampersheet.sheet.Roster;
import ampersheet.sheet.Sheet;
import ampersheet.sheet.SheetMaker;
import ampersheet.template.TemplateLibrary;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** A plan and a class become sheets, keys apart from them, and an index page. */
public final class Issue {
  private Issue() {}

  /**
   * What was issued.
   *
   * @param written files that were new or changed; the others already held what they should
   * @param tallies draws tried and refused, by template
   */
  public record Issued(int sheets, int problemsPerSheet, int written, Path index, Path archive, Map<String, Tally> tallies) {}

  /**
   * Writes {@code sheets/seat-007.html} and {@code .md}, the same in {@code keys/}, an archive of all that the sheets were
   * made from, {@code keys/issued-A7K3M.zip}, and {@code index.html}. Each file is
   * whole or not there, and the same inputs give the same bytes, so that a run may be repeated or taken up again.
   *
   * @throws ampersheet.diagnostic.DiagnosticException with all faults of plan and templates, and if a template has too
   *     few variants for the class, before anything is written; or if a file cannot be written
   */
  public static Issued issue(Plan plan, Roster roster, TemplateLibrary templates, Path out, int threads) {
    return issue(plan, roster, templates, out, threads, false);
  }

  /** @param homework whether each learner also gets a page to answer in, {@code homework/seat-007.html} */
  public static Issued issue(Plan plan, Roster roster, TemplateLibrary templates, Path out, int threads, boolean homework) {
    return issue(ProblemSet.of(plan, templates), roster, out, threads, new Besides(homework, false));
  }

  /**
   * What each learner gets besides sheet and key.
   *
   * @param homework a page to answer in, {@code homework/seat-007.html}
   * @param pdf sheet and key for a printer, {@code sheets/seat-007.pdf} and {@code keys/seat-007.pdf}
   * @param extra font for names on these in letters that the shipped ones lack
   */
  public record Besides(boolean homework, boolean pdf, Optional<ExtraFont> extra) {
    public Besides(boolean homework, boolean pdf) {
      this(homework, pdf, Optional.empty());
    }
  }

  /** @param set with the bins of the workshop, if the sheets shall be built */
  public static Issued issue(ProblemSet set, Roster roster, Path out, int threads, Besides besides) {
    if (besides.pdf()) {
      Handouts.requirePrintable(set.plan(), roster, besides.extra());
    }
    SheetMaker maker = new SheetMaker(set);
    maker.prepare(roster.lastSeat());
    Keeping keeping = new Keeping(set, out.resolve("keys").resolve(IssuedArchive.fileName(set)));
    List<Written> seats = InOrder.map(roster.seats(), threads, seat -> {
      Sheet sheet = maker.sheet(seat.number());
      ArchivedSheet kept = keeping.keep(sheet);
      return issueSeat(sheet, seat, out, besides).keeping(kept);
    });
    List<ClassIndex.Line> lines = seats.stream().map(Written::line).toList();
    Path index = out.resolve("index.html");
    Document page = ClassIndex.compose(maker.set(), lines, maker.tallies());
    int written = seats.stream().mapToInt(Written::files).sum() + write(index, HtmlPage.render(page))
        + keeping.write(seats.stream().map(seat -> seat.kept().orElseThrow()).toList());
    return new Issued(seats.size(), lines.get(0).problems().size(), written, index, keeping.file(), maker.tallies());
  }

  private record Written(ClassIndex.Line line, int files, Optional<ArchivedSheet> kept) {
    Written keeping(ArchivedSheet sheet) {
      return new Written(line, files, Optional.of(sheet));
    }
  }

  private static Written issueSeat(Sheet sheet, Roster.Seat seat, Path out, Besides besides) {
    String name = fileName(seat.number());
    int pages = besides.homework() ? write(out.resolve("homework").resolve(name + ".html"), HomeworkPage.render(sheet, seat.name())) : 0;
    int prints = besides.pdf() ? Handouts.beside(sheet, seat.name(), out, name, besides.extra()) : 0;
    int files = pages + prints + writeBoth(Composer.sheet(sheet, seat.name()), out.resolve("sheets"), name)
        + writeBoth(Composer.key(sheet, seat.name()), out.resolve("keys"), name);
    return new Written(ClassIndex.line(seat, sheet, "sheets/" + name + ".html", "keys/" + name + ".html"), files,
        Optional.empty());
  }

  /** One sheet and its key again, under the names that {@link #issue} gives them; the number of files that changed. */
  public static int again(Sheet sheet, String learner, Path out) {
    return again(Composer.sheet(sheet, learner), Composer.key(sheet, learner), sheet.id().seat(), out);
  }

  /** The same with a sheet and a key that somebody has composed. */
  public static int again(Document sheet, Document key, int seat, Path out) {
    String name = fileName(seat);
    return writeBoth(sheet, out.resolve("sheets"), name) + writeBoth(key, out.resolve("keys"), name);
  }

  private static int writeBoth(Document document, Path folder, String name) {
    return write(folder.resolve(name + ".html"), HtmlPage.render(document))
        + write(folder.resolve(name + ".md"), MarkdownPage.render(document));
  }

  private static int write(Path file, String text) {
    return WholeFile.write(file, text) ? 1 : 0;
  }

  public static String fileName(int seat) {
    return Roster.fileName(seat);
  }
}
