package ampersheet.formula;

import static org.junit.jupiter.api.Assertions.assertEquals;

import ampersheet.source.Languages;
import org.junit.jupiter.api.Test;

class SymbolTest {
    @Test
    void namesPrintAsTheTradeWritesThem() {
        String[][] table = {
            {"Vs", "V", "s"},
            {"V", "V", ""},
            {"R1", "R", "1"},
            {"Ifeed", "I", "feed"},
            {"Imin", "I", "min"},
            {"R_th", "R", "th"},
            {"V_out", "V", "out"},
            {"V_s_max", "V", "s,max"},
            {"x", "x", ""},
            {"fs", "f", "s"},
            {"theta_JA", "\u03b8", "JA"},
            {"thetaJA", "\u03b8", "JA"},
            {"theta", "\u03b8", ""},
            {"tau", "\u03c4", ""},
            {"eta", "\u03b7", ""},
            {"rho20", "\u03c1", "20"},
            {"alpha_Cu", "\u03b1", "Cu"},
            {"Omega", "\u03a9", ""},
            {"dT", "\u0394T", ""},
            {"delta_T", "\u0394T", ""},
            {"deltaT", "\u0394T", ""},
            {"dTD", "\u0394T", "D"},
            {"delta_T_max", "\u0394T", "max"},
            {"delta_t", "\u0394t", ""},
            {"dt", "\u0394t", ""},
            {"delta", "\u03b4", ""},
            {"delta_max", "\u03b4", "max"},
            {"Delta_T", "\u0394", "T"},
            {"d", "d", ""},
            {"d1", "d", "1"},
            {"columns", "columns", ""},
            {"row", "row", ""},
            {"bit_time", "bit time", ""},
            {"number", "number", ""},
            {"n_tiles", "n", "tiles"},
            {"chip", "chip", ""},
            {"pixels", "pixels", ""},
        };
        for (String[] row : table) {
            assertEquals(new Symbol(row[1], row[2]), Symbol.of(row[0]), row[0]);
        }
    }

    @Test
    void aSymbolMayBeWrittenInGreek() {
        assertEquals(new Symbol("\u0394T", "J"), Symbol.of("\u0394T_J"));
        assertEquals(new Symbol("\u0394", "max"), Symbol.of("\u0394_max"));
        assertEquals(new Symbol("\u03b8", "JA"), Symbol.of("\u03b8_JA"));
    }

    @Test
    void plainTextJoinsLetterAndSubscriptWithAnUnderline() {
        assertEquals("V_s", Symbol.of("Vs").plain());
        assertEquals("\u0394T", Symbol.of("dT").plain());
    }

    @Test
    void symbolsAreReadAloud() {
        assertEquals("V s", Spoken.symbol(Symbol.of("Vs"), Languages.ENGLISH));
        assertEquals("theta JA", Spoken.symbol(Symbol.of("theta_JA"), Languages.ENGLISH));
        assertEquals("delta T D", Spoken.symbol(Symbol.of("dTD"), Languages.ENGLISH));
        assertEquals("columns", Spoken.symbol(Symbol.of("columns"), Languages.ENGLISH));
    }
}
