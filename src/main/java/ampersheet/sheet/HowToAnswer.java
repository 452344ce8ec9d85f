package ampersheet.sheet;

import ampersheet.answer.Acceptance;
import ampersheet.answer.AnswerKey;
import ampersheet.quantity.Unit;
import ampersheet.sheet.Document.UnitBox;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;

/** The rule at the head of a sheet: it speaks of what is asked there, and of nothing else. */
final class HowToAnswer {
  private static final Unit PERCENT = Unit.parse("%");

  private HowToAnswer() {}

  /** What an answer is, as far as it matters for writing it down. */
  enum Kind {
    /** A number with a unit. */
    QUANTITY(UnitBox.ASKED),
    SHARE(UnitBox.SHARE),
    /** A measured number without a unit: a ratio. */
    RATIO(UnitBox.NONE),
    /** A whole number: how many, or in which place. */
    COUNT(UnitBox.NONE),
    CHOICE(UnitBox.NONE);

    private final UnitBox unitBox;

    Kind(UnitBox unitBox) {
      this.unitBox = unitBox;
    }

    UnitBox unitBox() {
      return unitBox;
    }
  }

  static Kind kind(AnswerKey key) {
    if (key.acceptance() instanceof Acceptance.Choice) {
      return Kind.CHOICE;
    } else if (key.unit().equals(PERCENT)) {
      return Kind.SHARE;
    } else if (!key.unit().symbol().isEmpty()) {
      return Kind.QUANTITY;
    }
    boolean whole = key.acceptance() instanceof Acceptance.Count
        || key.acceptance() instanceof Acceptance.Designed designed && designed.series().isEmpty();
    return whole ? Kind.COUNT : Kind.RATIO;
  }

  static String on(Sheet sheet) {
    Set<Kind> kinds = EnumSet.noneOf(Kind.class);
    boolean preferred = false;
    for (AnswerKey place : sheet.places()) {
      kinds.add(kind(place));
      preferred = preferred || place.acceptance() instanceof Acceptance.Preferred
          || place.acceptance() instanceof Acceptance.Designed designed && designed.series().isPresent();
    }
    return of(kinds, preferred, sheet.plan().unitsPrinted());
  }

  /** @param preferred whether a preferred value is asked that must be met exactly */
  static String of(Set<Kind> kinds, boolean preferred, boolean unitsPrinted) {
    if (kinds.isEmpty()) {
      return "Everything on this sheet is worked: nothing is asked.";
    }
    List<String> sentences = new ArrayList<>();
    List<String> written = new ArrayList<>();
    if (unitsPrinted && (kinds.contains(Kind.QUANTITY) || kinds.contains(Kind.SHARE))) {
      written.add("each number so that it fits the unit printed behind it");
    } else {
      if (kinds.contains(Kind.QUANTITY)) {
        written.add("each quantity with its unit");
      }
      if (kinds.contains(Kind.SHARE)) {
        written.add("a share in percent or as a fraction of one");
      }
    }
    List<String> bare = new ArrayList<>();
    if (kinds.contains(Kind.COUNT)) {
      bare.add("counts and places");
    }
    if (kinds.contains(Kind.RATIO)) {
      bare.add("ratios");
    }
    if (!bare.isEmpty()) {
      written.add(String.join(" and ", bare) + " as bare numbers");
    }
    if (!written.isEmpty()) {
      sentences.add("Write " + String.join(", ", written) + ".");
    }
    if (kinds.contains(Kind.CHOICE)) {
      sentences.add("Where options are given, one is right.");
    }
    sentences.add(exactness(kinds, preferred));
    return String.join(" ", sentences).strip();
  }

  private static String exactness(Set<Kind> kinds, boolean preferred) {
    List<String> exact = new ArrayList<>();
    if (preferred) {
      exact.add("preferred values");
    }
    if (kinds.contains(Kind.COUNT)) {
      exact.add("counts");
    }
    boolean measured = kinds.contains(Kind.QUANTITY) || kinds.contains(Kind.SHARE) || kinds.contains(Kind.RATIO);
    String figures = measured ? "Three significant figures are enough unless a question asks for more" : "";
    String must = exact.isEmpty() ? "" : String.join(" and ", exact) + " must be exact";
    if (figures.isEmpty()) {
      return must.isEmpty() ? "" : Character.toUpperCase(must.charAt(0)) + must.substring(1) + ".";
    }
    return figures + (must.isEmpty() ? "" : "; " + must) + ".";
  }
}
