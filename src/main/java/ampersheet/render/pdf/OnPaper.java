package ampersheet.render.pdf;

import ampersheet.figure.Picture;

/** Something drawn on a page; the markup says where and how large. */
interface OnPaper {
    /** In its own units. */
    double width();

    double height();

    void draw(PaperPen pen);

    /** All text in it, for which the fonts must have letters. */
    default String letters() {
        return "";
    }

    /** The drawing of a figure, in pixels. */
    record Drawn(Picture picture) implements OnPaper {
        @Override
        public double width() {
            return picture.width();
        }

        @Override
        public double height() {
            return picture.height();
        }

        @Override
        public void draw(PaperPen pen) {
            picture.draw(pen);
        }

        @Override
        public String letters() {
            return picture.letters();
        }
    }
}
