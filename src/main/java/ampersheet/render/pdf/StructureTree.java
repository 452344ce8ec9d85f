package ampersheet.render.pdf;

import java.io.IOException;
import java.util.List;
import org.apache.pdfbox.cos.COSArray;
import org.apache.pdfbox.cos.COSBase;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.cos.COSInteger;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDStructureTreeRoot;
import org.apache.pdfbox.pdmodel.documentinterchange.taggedpdf.StandardStructureTypes;
import org.apache.pdfbox.pdmodel.interactive.annotation.PDAnnotation;

/**
 * Joins the tags of several handouts, each laid out by itself, into one tree: every handout a part of the document. The
 * numbers by which pages point into the tree are counted on from handout to handout.
 */
final class StructureTree {
    private final ObjectFile file;
    /** Stand in for objects that are known when all handouts are. */
    private final COSDictionary root = new COSDictionary();

    private final COSDictionary all = new COSDictionary();
    private final COSArray numbers = new COSArray();
    private int next;

    StructureTree(ObjectFile file) {
        this.file = file;
        file.reserve(root);
        file.reserve(all);
    }

    COSDictionary root() {
        return root;
    }

    /**
     * Counts on the numbers of a handout's pages, and hangs its tags into the tree; they are written with the pages.
     *
     * @return the handout's own tag
     */
    COSDictionary take(PDDocument handout) throws IOException {
        PDStructureTreeRoot own = handout.getDocumentCatalog().getStructureTreeRoot();
        COSBase kids = own.getK();
        COSDictionary part = (COSDictionary) (kids instanceof COSArray array ? array.getObject(0) : kids);
        part.setItem(COSName.S, COSName.getPDFName(StandardStructureTypes.PART));
        part.setItem(COSName.P, all);
        formulas(part);
        file.reserve(part);
        COSArray places = own.getParentTree().getCOSObject().getCOSArray(COSName.NUMS);
        for (PDPage page : handout.getPages()) {
            countOn(page.getCOSObject(), COSName.STRUCT_PARENTS);
            for (PDAnnotation annotation : page.getAnnotations()) {
                countOn(annotation.getCOSObject(), COSName.STRUCT_PARENT);
            }
        }
        for (int i = 0; i < places.size(); i += 2) {
            COSBase place = places.getObject(i + 1);
            numbers.add(COSInteger.get(next + places.getInt(i)));
            numbers.add(reference(place));
        }
        next += places.size() / 2;
        return part;
    }

    /**
     * The layout library knows a line of working as an abbreviation with its wording; it is a formula, which is read
     * out as it is spoken.
     */
    private static void formulas(COSDictionary tag) {
        if (tag.containsKey(COSName.E)) {
            tag.setName(COSName.S, StandardStructureTypes.FORMULA);
            tag.setItem(COSName.ALT, tag.getItem(COSName.E));
            tag.removeItem(COSName.E);
        }
        COSBase kids = tag.getDictionaryObject(COSName.K);
        if (kids instanceof COSArray array) {
            for (int i = 0; i < array.size(); i++) {
                formulasIn(array.getObject(i));
            }
        } else {
            formulasIn(kids);
        }
    }

    /** What is no tag is a reference to a page's letters or to an annotation. */
    private static void formulasIn(COSBase kid) {
        if (kid instanceof COSDictionary tag && tag.containsKey(COSName.S)) {
            formulas(tag);
        }
    }

    /** A list of tags becomes an object of its own, so that it need not be kept. */
    private COSBase reference(COSBase place) throws IOException {
        if (place.getKey() == null) {
            file.write(place);
        }
        COSDictionary standIn = new COSDictionary();
        standIn.setKey(place.getKey());
        return standIn;
    }

    private void countOn(COSDictionary holder, COSName number) {
        if (holder.containsKey(number)) {
            holder.setInt(number, next + holder.getInt(number));
        }
    }

    void finish(String language, List<COSBase> parts) throws IOException {
        COSArray kids = new COSArray();
        parts.forEach(kids::add);
        all.setName(COSName.TYPE, "StructElem");
        all.setName(COSName.S, StandardStructureTypes.DOCUMENT);
        all.setItem(COSName.P, root);
        all.setString(COSName.LANG, language);
        all.setItem(COSName.K, kids);
        file.write(all);
        COSDictionary parentTree = new COSDictionary();
        parentTree.setItem(COSName.NUMS, numbers);
        root.setName(COSName.TYPE, "StructTreeRoot");
        root.setItem(COSName.K, all);
        root.setItem(COSName.PARENT_TREE, parentTree);
        root.setInt(COSName.PARENT_TREE_NEXT_KEY, next);
        file.write(root);
    }
}
