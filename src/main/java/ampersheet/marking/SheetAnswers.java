package ampersheet.marking;

import static ampersheet.source.Told.say;

import ampersheet.answer.AnswerKey;
import ampersheet.language.Saying;
import ampersheet.sheet.Sheet;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;

/**
 * Everything that came in for one sheet, one answer for each place. Where two hand-ins contradict each other the newer
 * counts, as far as that is known; where it is not, nobody but the instructor can tell, and both are kept. A blank
 * never takes the place of an answer, and a late answer never that of one in time.
 */
final class SheetAnswers {
    /** Each is compared with each other; nobody hands in more often, so that these are no hand-ins. */
    private static final int MOST_HAND_INS = 40;

    private final Sheet sheet;
    private final Map<String, AnswerKey> places = new LinkedHashMap<>();
    private final List<String> lost;
    private final List<HandIn> handIns;
    private final Set<HandIn> disputed = new LinkedHashSet<>();
    private final Map<String, Taken> taken = new LinkedHashMap<>();
    private final Set<String> undecided = new LinkedHashSet<>();
    private final List<SetAside> setAside = new ArrayList<>();
    private final List<ToDecide> toDecide = new ArrayList<>();
    private final Map<HandIn, Replacing> replacing = new LinkedHashMap<>();

    /** @param from the hand-in that it stands in */
    record Taken(TypedAnswer answer, HandIn from) {
        FileNote file() {
            return from.file();
        }
    }

    /** What a hand-in took the place of, or only said again. */
    private static final class Replacing {
        private int answers;
        private int repeated;
        private final TreeSet<String> files = new TreeSet<>();
    }

    /** @param lost questions of the sheet to which no key is at hand */
    SheetAnswers(Sheet sheet, List<String> lost, List<HandIn> cameIn) {
        this.sheet = sheet;
        this.lost = List.copyOf(lost);
        sheet.places().forEach(key -> places.put(key.question(), key));
        this.handIns = withoutOverruled(
                cameIn.stream().map(this::withPlaces).flatMap(Optional::stream).toList());
        if (handIns.size() > MOST_HAND_INS) {
            refuseAll();
            return;
        }
        findDisputes();
        places.keySet().forEach(this::take);
        handIns.forEach(this::note);
        if (!disputed.isEmpty()) {
            tellDispute();
        }
    }

    private void refuseAll() {
        String count = Integer.toString(handIns.size());
        for (HandIn one : handIns) {
            one.all().forEach(answer -> setAside.add(SetAside.ofMany(answer, handIns.size())));
            undecided.addAll(places.keySet());
        }
        HandIn first = handIns.get(0);
        first.file()
                .add(FileFault.error(
                        first.first().place(),
                        Saying.of(
                                "report.file.too-many-hand-ins",
                                "sheet",
                                sheet.id().toString(),
                                "count",
                                count),
                        say("plan.at-most", "most", Integer.toString(MOST_HAND_INS)),
                        say("folder.hand-in.many.next")));
        toDecide.add(new ToDecide(
                List.of(sheet.id().seat()),
                sheet.id().toString(),
                ToDecide.Asked.NOTHING,
                "",
                first.file().shown(),
                first.first().place().line(),
                Saying.of("report.decide.too-many", "count", count),
                List.of(Saying.of("report.decide.take-out"))));
    }

    Optional<Taken> at(String question) {
        return Optional.ofNullable(taken.get(question));
    }

    /** Whether what came in for this place contradicts itself, so that it is not marked. */
    boolean isUndecided(String question) {
        return undecided.contains(question);
    }

    /** What stands there where it is undecided. */
    List<String> contradicting(String question) {
        return isUndecided(question)
                ? handIns.stream()
                        .flatMap(one -> one.typed(question).stream())
                        .map(TypedAnswer::text)
                        .distinct()
                        .toList()
                : List.of();
    }

    /** As they were typed. */
    Map<String, String> typed() {
        Map<String, String> typed = new LinkedHashMap<>();
        taken.forEach((question, answer) -> typed.put(question, answer.answer().text()));
        return typed;
    }

    List<SetAside> setAside() {
        return List.copyOf(setAside);
    }

    List<ToDecide> toDecide() {
        return List.copyOf(toDecide);
    }

    /** Only what there is a place for; printed units taken off. Empty if nothing is left. */
    private Optional<HandIn> withPlaces(HandIn handIn) {
        List<TypedAnswer> fitting = new ArrayList<>();
        for (TypedAnswer written : handIn.all()) {
            AnswerKey key = places.get(written.question());
            if (key != null) {
                fitting.add(written.withText(withoutPrintedUnit(written, key)));
            } else if (!lost.contains(written.question())) {
                handIn.file().add(noPlace(written));
                setAside.add(new SetAside(written, Saying.of("report.aside.no-place")));
            } else if (!written.isBlank()) {
                setAside.add(SetAside.byHand(written));
            }
        }
        return fitting.isEmpty()
                ? Optional.empty()
                : Optional.of(new HandIn(handIn.file(), handIn.origin(), fitting, handIn.isChosen()));
    }

    /**
     * Where the instructor said which hand-in counts, one that contradicts it counts for nothing, not even in its gaps.
     */
    private List<HandIn> withoutOverruled(List<HandIn> all) {
        if (all.stream().noneMatch(HandIn::isChosen)) {
            return all;
        }
        List<HandIn> counting = new ArrayList<>();
        for (HandIn one : all) {
            boolean overruled =
                    !one.isChosen() && all.stream().anyMatch(other -> other.isChosen() && one.contradicts(other));
            if (overruled) {
                one.all().forEach(answer -> setAside.add(SetAside.dismissed(answer)));
            } else {
                counting.add(one);
            }
        }
        return counting;
    }

    // What counts

    private void findDisputes() {
        for (HandIn one : handIns) {
            for (HandIn other : handIns) {
                boolean unordered =
                        one != other && one.contradicts(other) && !one.isBefore(other) && !other.isBefore(one);
                if (unordered && handIns.stream().noneMatch(newer -> settles(newer, one, other))) {
                    disputed.add(one);
                }
            }
        }
    }

    /**
     * Whether a hand-in is newer than two that contradict each other, and says itself what they contradict each other
     * about.
     */
    private boolean settles(HandIn newer, HandIn one, HandIn other) {
        return one.isBefore(newer)
                && other.isBefore(newer)
                && places.keySet().stream()
                        .filter(question -> one.contradicts(other, question))
                        .allMatch(question -> newer.to(question).isPresent());
    }

    private void take(String question) {
        List<HandIn> given = handIns.stream()
                .filter(handIn -> handIn.to(question).isPresent())
                .toList();
        if (given.isEmpty()) {
            handIns.stream()
                    .filter(handIn -> handIn.has(question))
                    .findFirst()
                    .ifPresent(handIn -> taken.put(question, new Taken(blank(handIn, question), handIn)));
            return;
        }
        List<HandIn> newest = given.stream()
                .filter(handIn -> given.stream()
                        .noneMatch(other -> handIn.contradicts(other, question) && handIn.isBefore(other)))
                .toList();
        if (newest.isEmpty() || !agree(newest, question)) {
            undecided.add(question);
            disputed.addAll(newest.isEmpty() ? given : List.of());
            keepAll(given, question);
            return;
        }
        HandIn counts = newest.get(0);
        TypedAnswer answer = counts.to(question).orElseThrow();
        taken.put(question, new Taken(answer, counts));
        given.stream().filter(other -> other != counts).forEach(other -> leave(other, counts, question));
    }

    private TypedAnswer blank(HandIn handIn, String question) {
        return handIn.all().stream()
                .filter(answer -> answer.question().equals(question))
                .findFirst()
                .orElseThrow();
    }

    /** A hand-in that is disputed may be a stranger's: alone it settles nothing. */
    private boolean agree(List<HandIn> newest, String question) {
        boolean same = newest.stream()
                .allMatch(one -> !one.isTornAbout(question) && !one.contradicts(newest.get(0), question));
        boolean undisputed = newest.stream().anyMatch(one -> !disputed.contains(one));
        return same
                && (undisputed
                        || disputed.stream().allMatch(one -> one.to(question).isPresent()));
    }

    private void keepAll(List<HandIn> given, String question) {
        for (HandIn one : given) {
            List<String> others = given.stream()
                    .filter(other -> other != one)
                    .map(other -> other.file().shown())
                    .distinct()
                    .toList();
            one.typed(question).forEach(answer -> setAside.add(SetAside.contradicted(answer, others)));
            if (one.isTornAbout(question)) {
                tellTorn(one, question);
            }
        }
    }

    private void leave(HandIn other, HandIn counts, String question) {
        Replacing of = replacing.computeIfAbsent(counts, handIn -> new Replacing());
        TypedAnswer answer = other.to(question).orElseThrow();
        if (!other.contradicts(counts, question)) {
            Replacing said = replacing.computeIfAbsent(other, handIn -> new Replacing());
            said.repeated++;
            said.files.add(counts.file().shown());
            return;
        }
        if (other.file().isLate() && !counts.file().isLate()) {
            setAside.add(SetAside.late(answer));
            other.file()
                    .add(FileFault.warning(
                            answer.place(),
                            Saying.of(
                                    "report.file.in-time-before",
                                    "question",
                                    question,
                                    "file",
                                    counts.file().shown()),
                            say("folder.hand-in.late.next")));
            return;
        }
        setAside.add(SetAside.replaced(
                answer,
                counts.file().shown(),
                counts.to(question).orElseThrow().place().line()));
        of.answers++;
        of.files.add(other.file().shown());
    }

    // What is said of it

    private void note(HandIn handIn) {
        Replacing of = replacing.getOrDefault(handIn, new Replacing());
        TypedAnswer first = handIn.first();
        String id = sheet.id().toString();
        String files = String.join(", ", of.files);
        if (of.answers > 0) {
            handIn.file()
                    .add(FileFault.warning(
                            first.place(),
                            Saying.count("report.file.again", of.answers, "sheet", id, "files", files),
                            say("folder.hand-in.replaced.next")));
        }
        boolean counts = taken.values().stream().anyMatch(one -> one.from() == handIn);
        if (of.repeated > 0 && !counts && !disputed.contains(handIn)) {
            handIn.file()
                    .add(FileFault.warning(
                            first.place(),
                            Saying.of("report.file.repeats", "sheet", id, "files", files),
                            say("folder.hand-in.repeats.next")));
        }
        if (handIn.all().stream().anyMatch(TypedAnswer::onSheet)) {
            noteMissing(handIn, first);
        }
    }

    private void tellDispute() {
        for (HandIn one : disputed) {
            List<String> others = disputed.stream()
                    .filter(other -> other != one && one.contradicts(other))
                    .map(other -> other.file().shown())
                    .distinct()
                    .toList();
            List<String> about = places.keySet().stream()
                    .filter(question -> disputed.stream().anyMatch(other -> one.contradicts(other, question)))
                    .toList();
            String files = String.join(", ", others);
            String questions = String.join(", ", about);
            one.file()
                    .add(FileFault.error(
                            one.first().place(),
                            Saying.of(
                                    "report.file.dispute",
                                    "sheet",
                                    sheet.id().toString(),
                                    "files",
                                    files,
                                    "questions",
                                    questions),
                            say("folder.hand-in.dispute.expected"),
                            say("folder.hand-in.dispute.next")));
            toDecide.add(new ToDecide(
                    List.of(sheet.id().seat()),
                    one.origin().sheet(),
                    ToDecide.Asked.NOTHING,
                    "",
                    one.file().shown(),
                    one.first().place().line(),
                    Saying.of("report.decide.dispute", "files", files, "questions", questions),
                    List.of(Saying.of(
                            "report.decide.whose",
                            "counts",
                            Decision.Kind.COUNTS.word(),
                            "dismissed",
                            Decision.Kind.DOES_NOT_COUNT.word()))));
        }
    }

    private void tellTorn(HandIn one, String question) {
        List<TypedAnswer> said = one.typed(question);
        TypedAnswer last = said.get(said.size() - 1);
        one.file()
                .add(FileFault.error(
                        last.place(),
                        Saying.of(
                                "report.file.torn",
                                "question",
                                question,
                                "sheet",
                                sheet.id().toString()),
                        say("folder.hand-in.torn.expected"),
                        say("folder.hand-in.torn.next")));
        said.forEach(answer -> toDecide.add(new ToDecide(
                List.of(sheet.id().seat()),
                one.origin().sheet(),
                ToDecide.Asked.of(sheet, places.get(question)),
                answer.text(),
                one.file().shown(),
                answer.place().line(),
                Saying.of("report.decide.torn"),
                List.of(Saying.of("report.decide.which", "read-as", Decision.Kind.READ_AS.word())))));
    }

    private void noteMissing(HandIn handIn, TypedAnswer first) {
        List<String> missing = places.keySet().stream()
                .filter(question -> !handIn.has(question))
                .toList();
        if (!missing.isEmpty()) {
            handIn.file()
                    .add(FileFault.error(
                            first.place(),
                            Saying.count(
                                    "report.file.lost-places", missing.size(), "questions", String.join(", ", missing)),
                            say("folder.hand-in.no-place.expected"),
                            say("folder.hand-in.no-place.next")));
        }
    }

    private FileFault noPlace(TypedAnswer answer) {
        boolean known = sheet.problemWith(answer.question()).isPresent();
        List<String> names = List.copyOf(places.keySet());
        return FileFault.error(
                answer.place(),
                known
                        ? Saying.of("report.file.worked-out", "question", answer.question())
                        : Saying.of("report.file.no-such-question"),
                say("folder.hand-in.questions", "questions", String.join(", ", names)),
                known ? say("folder.hand-in.from-example.next") : say("folder.hand-in.question.next"));
    }

    /** On a filled-in sheet the unit may still stand behind the place. */
    private static String withoutPrintedUnit(TypedAnswer answer, AnswerKey key) {
        String unit = key.unit().symbol();
        String text = answer.text();
        if (!answer.onSheet() || !key.unitPrinted() || unit.isEmpty() || !text.endsWith(unit)) {
            return text;
        }
        String rest = text.substring(0, text.length() - unit.length());
        return rest.isBlank() || Character.isWhitespace(rest.charAt(rest.length() - 1)) ? rest.strip() : text;
    }
}
