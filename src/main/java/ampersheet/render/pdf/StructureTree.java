package ampersheet.render.pdf;

import java.util.ArrayList;
import java.util.List;
import org.apache.pdfbox.cos.COSArray;
import org.apache.pdfbox.cos.COSBase;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.cos.COSInteger;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDStructureElement;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDStructureTreeRoot;
import org.apache.pdfbox.pdmodel.documentinterchange.taggedpdf.StandardStructureTypes;
import org.apache.pdfbox.pdmodel.interactive.annotation.PDAnnotation;

/**
 * Joins the tags of several handouts, each laid out by itself, into one tree: every handout a part of the document. The
 * numbers by which pages point into the tree are counted on from handout to handout.
 */
final class StructureTree {
  private static final COSName NUMBERS = COSName.NUMS;

  private final COSArray numbers = new COSArray();
  private int next;

  /**
   * Takes the tree that was just made out of the document, so that the next handout gets one of its own.
   *
   * @param pages those of this handout that have tags
   */
  COSDictionary take(PDDocument document, List<PDPage> pages) {
    PDStructureTreeRoot root = document.getDocumentCatalog().getStructureTreeRoot();
    COSDictionary part = handout(root);
    part.setItem(COSName.S, COSName.getPDFName(StandardStructureTypes.PART));
    COSArray own = root.getParentTree().getCOSObject().getCOSArray(NUMBERS);
    for (int i = 0; i < own.size(); i += 2) {
      numbers.add(COSInteger.get(next + own.getInt(i)));
      numbers.add(own.get(i + 1));
    }
    for (PDPage page : pages) {
      countOn(page.getCOSObject(), COSName.STRUCT_PARENTS);
      for (PDAnnotation annotation : annotations(page)) {
        countOn(annotation.getCOSObject(), COSName.STRUCT_PARENT);
      }
    }
    next += own.size() / 2;
    document.getDocumentCatalog().getCOSObject().removeItem(COSName.STRUCT_TREE_ROOT);
    return part;
  }

  private static COSDictionary handout(PDStructureTreeRoot root) {
    COSBase kids = root.getK();
    COSBase first = kids instanceof COSArray array ? array.getObject(0) : kids;
    return (COSDictionary) first;
  }

  private void countOn(COSDictionary holder, COSName number) {
    if (holder.containsKey(number)) {
      holder.setInt(number, next + holder.getInt(number));
    }
  }

  private static List<PDAnnotation> annotations(PDPage page) {
    try {
      return page.getAnnotations();
    } catch (java.io.IOException broken) {
      throw new java.io.UncheckedIOException("a page just written cannot be read", broken);
    }
  }

  /** Puts the whole tree into the document. */
  void finish(PDDocument document, String language, List<COSDictionary> parts) {
    PDStructureTreeRoot root = new PDStructureTreeRoot();
    PDStructureElement all = new PDStructureElement(StandardStructureTypes.DOCUMENT, root);
    all.setLanguage(language);
    COSArray kids = new COSArray();
    for (COSDictionary part : new ArrayList<>(parts)) {
      part.setItem(COSName.P, all.getCOSObject());
      kids.add(part);
    }
    all.getCOSObject().setItem(COSName.K, kids);
    root.appendKid(all);
    COSDictionary parentTree = new COSDictionary();
    parentTree.setItem(NUMBERS, numbers);
    root.getCOSObject().setItem(COSName.PARENT_TREE, parentTree);
    root.setParentTreeNextKey(next);
    document.getDocumentCatalog().setStructureTreeRoot(root);
  }
}
