package ampersheet.render.pdf;

import ampersheet.render.Markup;

/** The metadata packet that says what the file is: its title and PDF/UA-1 (ISO 14289-1, clause 5 and 7.1). */
final class Xmp {
    private Xmp() {}

    /** @param tagged whether the file keeps to PDF/UA-1 */
    static String packet(String title, String date, boolean tagged) {
        Markup xmp = new Markup();
        xmp.trusted("<?xpacket begin=\"\uFEFF\" id=\"W5M0MpCehiHzreSzNTczkc9d\"?>\n");
        xmp.open("x:xmpmeta", "xmlns:x", "adobe:ns:meta/").newline();
        xmp.open("rdf:RDF", "xmlns:rdf", "http://www.w3.org/1999/02/22-rdf-syntax-ns#")
                .newline();
        xmp.open(
                        "rdf:Description",
                        "rdf:about",
                        "",
                        "xmlns:dc",
                        "http://purl.org/dc/elements/1.1/",
                        "xmlns:pdfuaid",
                        "http://www.aiim.org/pdfua/ns/id/",
                        "xmlns:xmp",
                        "http://ns.adobe.com/xap/1.0/",
                        "xmlns:pdf",
                        "http://ns.adobe.com/pdf/1.3/")
                .newline();
        if (tagged) {
            xmp.element("pdfuaid:part", "1").newline();
        }
        xmp.open("dc:title")
                .open("rdf:Alt")
                .open("rdf:li", "xml:lang", "x-default")
                .line(title)
                .close("rdf:li")
                .close("rdf:Alt")
                .close("dc:title")
                .newline();
        xmp.element("xmp:CreateDate", date).newline();
        xmp.element("pdf:Producer", "Ampersheet").newline();
        xmp.close("rdf:Description")
                .newline()
                .close("rdf:RDF")
                .newline()
                .close("x:xmpmeta")
                .newline();
        return xmp.trusted("<?xpacket end=\"r\"?>").toString();
    }
}
