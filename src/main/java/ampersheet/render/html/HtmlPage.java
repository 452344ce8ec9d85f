package ampersheet.render.html;

import ampersheet.sheet.Document;

/** A document as one self-contained, accessible HTML file that prints well. */
public final class HtmlPage {
  private HtmlPage() {}

  public static String render(Document document) {
    throw new UnsupportedOperationException("being written");
  }
}
