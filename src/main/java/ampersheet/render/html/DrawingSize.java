package ampersheet.render.html;

import ampersheet.figure.Picture;

/** The size of a drawing in CSS pixels. */
record DrawingSize(int width, int height) {
    private static final int PHONE = 400;

    /** The room beside the givens is about 410; a drawing may shrink to four fifths. */
    private static final int BESIDE_GIVENS = 520;

    static DrawingSize of(Picture picture) {
        return new DrawingSize((int) picture.width(), (int) picture.height());
    }

    /** Too wide to stand beside the givens without its lettering becoming too small to read. */
    boolean isWide() {
        return width > BESIDE_GIVENS;
    }

    /** So wide that on a phone it had better scroll than shrink to the screen. */
    boolean scrollsOnAPhone() {
        return width > PHONE;
    }
}
