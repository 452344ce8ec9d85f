package ampersheet.model;

import ampersheet.formula.Expression;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;

/**
 * One idealisation dropped: what the models are with what happens really.
 *
 * @param named as it goes on after "with": {@code a source of 0.1 Ω}
 * @param values other values for names that the models take, over givens, constants and steps
 * @param series resistance in series with a part, at its first terminal
 * @param beside resistance across a part
 * @param draws current drawn beside a part, from its first terminal to its second
 * @param warms watts into a node of the heat path, besides what is there
 * @param within shares by which the values of names may lie off, each up or down
 */
public record Reality(
        String named,
        Map<String, Expression> values,
        Map<String, Expression> series,
        Map<String, Expression> beside,
        Map<String, Expression> draws,
        Map<String, Expression> warms,
        Map<String, Expression> within) {
    /** Names that may lie off at once: every corner is solved. */
    public static final int MOST_CORNERS = 5;

    public Reality {
        values = inOrder(values);
        series = inOrder(series);
        beside = inOrder(beside);
        draws = inOrder(draws);
        warms = inOrder(warms);
        within = inOrder(within);
    }

    /** A copy that keeps the order of the template: {@link Map#copyOf} would have another order in every run. */
    private static Map<String, Expression> inOrder(Map<String, Expression> map) {
        return Collections.unmodifiableMap(new LinkedHashMap<>(map));
    }
}
