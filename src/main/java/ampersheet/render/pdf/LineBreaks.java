package ampersheet.render.pdf;

import com.openhtmltopdf.extend.FSTextBreaker;
import java.text.BreakIterator;
import java.util.Locale;

/** Where a line may end: as elsewhere, but not within the unit °C, nor before what a number is divided by. */
final class LineBreaks implements FSTextBreaker {
    private final BreakIterator places = BreakIterator.getLineInstance(Locale.US);
    private String text = "";

    @Override
    public void setText(String newText) {
        text = newText;
        places.setText(newText);
    }

    @Override
    public int next() {
        int place = places.next();
        while (place > 0 && place < text.length() && isKept(text.charAt(place - 1), text.charAt(place))) {
            place = places.next();
        }
        return place;
    }

    private static boolean isKept(char before, char after) {
        return before == '°' && after == 'C' || before == '/' && after == '(';
    }
}
