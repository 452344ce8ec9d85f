package ampersheet.marking;

import ampersheet.sheet.SheetId;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;

/**
 * Other sheets that the class is known to have been given, by what their IDs begin with.
 *
 * @param codes of all of them
 * @param elsewhere of those of other weeks or sets, which are marked for themselves; what is left was given out in the
 *     same place as the sheets at hand, so that an answer to it may be meant for these
 */
public record OtherSheets(Set<String> codes, Set<String> elsewhere) {
    public static final OtherSheets NONE = new OtherSheets(Set.of(), Set.of());

    public OtherSheets {
        codes = Set.copyOf(codes);
        elsewhere = Set.copyOf(elsewhere);
    }

    /**
     * Sheets that were given out.
     *
     * @param place of their week or set
     */
    public record Given(String place, String code) {}

    /** @param code with which the IDs of the sheets at hand begin; where nothing tells their place, none is another */
    public static OtherSheets among(List<Given> given, String code) {
        Set<String> places = new TreeSet<>();
        given.stream().filter(one -> one.code().equals(code)).forEach(one -> places.add(one.place()));
        Set<String> codes = new TreeSet<>();
        Set<String> here = new TreeSet<>();
        for (Given one : given) {
            codes.add(one.code());
            if (places.isEmpty() || places.contains(one.place())) {
                here.add(one.code());
            }
        }
        codes.remove(code);
        Set<String> elsewhere = new TreeSet<>(codes);
        elsewhere.removeAll(here);
        return new OtherSheets(codes, elsewhere);
    }

    boolean areKnown() {
        return !codes.isEmpty();
    }

    /** Whether an ID is one of those of other weeks or sets. */
    boolean haveElsewhere(String id) {
        return SheetId.set(id).filter(elsewhere::contains).isPresent();
    }
}
