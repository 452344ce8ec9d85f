package ampersheet.render.qti;

import ampersheet.answer.AnswerKey;
import ampersheet.answer.ProblemKey;
import ampersheet.answer.RightDesigns;
import ampersheet.language.Language;
import ampersheet.quantity.DecimalMarker;
import ampersheet.sheet.Document.ProblemBlock;
import ampersheet.sheet.Document.Steps;
import java.util.List;
import java.util.Optional;

/**
 * One variant of a problem, its numbers frozen.
 *
 * @param identifier of letters, digits and hyphens, unique wherever packages meet
 */
public record ExchangeItem(String identifier, About about, Shown shown, Asked asked) {
    /** Hundredths of a mark. */
    static final double MARK = 100;

    /**
     * What a catalogue tells of it.
     *
     * @param level from 0 to 4
     * @param rules that its working rests on
     */
    public record About(Language language, String skill, int level, List<String> rules) {
        public About {
            rules = List.copyOf(rules);
        }
    }

    /**
     * What a learner sees.
     *
     * @param block as on a sheet, with the units printed
     * @param example the same with other numbers, worked in full, to be read first
     * @param working shown when the item is answered
     */
    public record Shown(ProblemBlock block, Optional<ProblemBlock> example, Steps working, DecimalMarker decimal) {}

    /**
     * What is to be answered, and what that earns.
     *
     * @param places the keys of its places in the order in which they stand in the block, which names them the same
     * @param key of the whole problem, of which they are a part
     * @param marks that each place counts, in hundredths
     * @param tooCoarse what a right answer that is rounded too far earns of them, in hundredths
     * @param designs what is right of each design whose blanks are among the places
     */
    public record Asked(
            List<AnswerKey> places, ProblemKey key, List<Integer> marks, int tooCoarse, List<RightDesigns> designs) {
        public Asked {
            places = List.copyOf(places);
            designs = List.copyOf(designs);
            marks = List.copyOf(marks);
            if (places.isEmpty() || places.size() != marks.size()) {
                throw new IllegalArgumentException(places.size() + " places, " + marks.size() + " marks");
            }
        }

        double most() {
            return marks.stream().mapToInt(Integer::intValue).sum() / MARK;
        }

        double right(int place) {
            return marks.get(place) / MARK;
        }

        /** Rounded to hundredths as marks are. */
        double coarse(int place) {
            return (int) ((marks.get(place) * tooCoarse + MARK / 2) / MARK) / MARK;
        }
    }

    /** {@code A} for the first place; identifiers of its response and its outcomes end in it. */
    static String letter(int place) {
        return Character.toString('A' + place);
    }
}
