package ampersheet.render.pdf;

import java.io.IOException;
import java.io.StringReader;
import java.util.List;
import javax.xml.XMLConstants;
import javax.xml.parsers.DocumentBuilderFactory;
import javax.xml.parsers.ParserConfigurationException;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.Node;
import org.xml.sax.InputSource;
import org.xml.sax.SAXException;

/** The markup of a handout, read once: it is measured in one style and set in another. */
record MarkupTree(Document nodes) {

  static MarkupTree of(String xhtml) {
    try {
      DocumentBuilderFactory factory = DocumentBuilderFactory.newInstance();
      factory.setNamespaceAware(true);
      factory.setFeature(XMLConstants.FEATURE_SECURE_PROCESSING, true);
      factory.setFeature("http://apache.org/xml/features/disallow-doctype-decl", true);
      return new MarkupTree(factory.newDocumentBuilder().parse(new InputSource(new StringReader(xhtml))));
    } catch (ParserConfigurationException | SAXException | IOException failure) {
      throw new IllegalStateException("markup for print that is no XML", failure);
    }
  }

  /** Another style sheet takes the place of the one in the head. */
  void style(String sheet) {
    nodes.getElementsByTagName("style").item(0).setTextContent(sheet);
  }

  /** Tells the elements that begin a page, and what holds them, which would else be kept together. */
  void breakBefore(List<PageBreaks.Start> starts) {
    for (PageBreaks.Start start : starts) {
      mark(start.element(), start.kind().className());
      for (Node holder = start.element().getParentNode(); holder instanceof Element element; holder = element.getParentNode()) {
        mark(element, "divided");
      }
    }
  }

  private static void mark(Element element, String name) {
    String names = element.getAttribute("class");
    if (!(" " + names + " ").contains(" " + name + " ")) {
      element.setAttribute("class", (names + " " + name).strip());
    }
  }
}
