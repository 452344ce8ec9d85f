package ampersheet.answer;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;

class UsualAcceptanceTest {
    @Test
    void theWordsSayWhatIsAccepted() {
        assertEquals("2 %", UsualAcceptance.percent());
        assertEquals("1 K", UsualAcceptance.kelvin());
        assertEquals("three significant figures", UsualAcceptance.figures());
        assertEquals(
                UsualAcceptance.RELATIVE,
                Double.parseDouble(UsualAcceptance.percent().replace(" %", "")) / 100);
    }

    @Test
    void aSlipOfTheDecimalPointIsTheSamePowerWhereverItIsLookedFor() {
        for (int power : DecimalSlips.powers()) {
            assertEquals(Double.parseDouble("1e" + power), DecimalSlips.factor(power));
            assertEquals(Double.parseDouble("1e-" + power), DecimalSlips.factor(-power));
        }
        DecimalSlips.powers()[0] = 4;
        assertEquals(1, DecimalSlips.powers()[0], "nobody changes the list");
    }
}
