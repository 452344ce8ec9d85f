package ampersheet.render.pdf;

import java.io.IOException;
import java.io.StringReader;
import javax.xml.XMLConstants;
import javax.xml.parsers.DocumentBuilderFactory;
import javax.xml.parsers.ParserConfigurationException;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;
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

  /** Tells the problems that begin a page. */
  void breakBefore(PageBreaks breaks) {
    NodeList divisions = nodes.getElementsByTagName("div");
    for (int i = 0; i < divisions.getLength(); i++) {
      Element division = (Element) divisions.item(i);
      if (division.getAttribute("id").startsWith(PrintMarkup.PROBLEM_ID)) {
        breaks.className(division.getAttribute("id").substring(PrintMarkup.PROBLEM_ID.length()))
            .ifPresent(name -> division.setAttribute("class", division.getAttribute("class") + " " + name));
      }
    }
  }
}
