package ampersheet.render.markdown;

import ampersheet.sheet.Document;

/** A document as Markdown that reads well as plain text. */
public final class MarkdownPage {
  private MarkdownPage() {}

  public static String render(Document document) {
    throw new UnsupportedOperationException("being written");
  }
}
