package ampersheet.command;

import static ampersheet.source.Told.say;

import ampersheet.sheet.Document.Paper;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/** Paper as it lies in a printer, by its name. */
final class PaperName implements ITypeConverter<Paper> {
    @Override
    public Paper convert(String typed) {
        for (Paper paper : Paper.values()) {
            if (!paper.isFolded() && paper.name().equalsIgnoreCase(typed)) {
                return paper;
            }
        }
        throw new TypeConversionException(say("command.paper", "typed", typed));
    }
}
