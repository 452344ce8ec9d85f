package ampersheet.sheet;

import ampersheet.formula.PlainText;
import ampersheet.language.Language;
import ampersheet.sheet.Document.Block;
import ampersheet.sheet.Document.Prose;
import ampersheet.sheet.Document.StepBlock;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/** Signs in a working that not every first course has; said once on a sheet or key, where one is met first. */
enum FormulaSign {
    PARALLEL("∥", "sheet.sign.parallel"),
    FLOOR("⌊", "sheet.sign.floor"),
    CEILING("⌈", "sheet.sign.ceiling"),
    REMAINDER(" mod ", "sheet.sign.remainder");

    private final String printed;
    private final String says;

    FormulaSign(String printed, String says) {
        this.printed = printed;
        this.says = says;
    }

    /**
     * What the signs of these lines mean; empty where they have none that is new.
     *
     * @param met those that were explained further up, to which these are added
     */
    static Optional<Block> explained(List<StepBlock> lines, Set<FormulaSign> met, Language language) {
        List<String> meanings = new ArrayList<>();
        for (FormulaSign sign : values()) {
            if (lines.stream().anyMatch(sign::standsIn) && met.add(sign)) {
                meanings.add(language.say(sign.says));
            }
        }
        return meanings.isEmpty()
                ? Optional.empty()
                : Optional.of(new Prose(language.say("sheet.sign", "signs", String.join("; ", meanings))));
    }

    private boolean standsIn(StepBlock line) {
        return line.formula()
                        .filter(formula ->
                                PlainText.symbolic(formula, line.notation()).contains(printed))
                        .isPresent()
                || line.condition()
                        .filter(condition ->
                                PlainText.symbolic(condition, line.notation()).contains(printed))
                        .isPresent();
    }
}
