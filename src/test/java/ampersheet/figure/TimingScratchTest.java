package ampersheet.figure;
import org.junit.jupiter.api.Test;
import java.util.Set;
class TimingScratchTest {
  @Test void t() {
    for (int round = 0; round < 3; round++) {
      Panels.all().forEach((n, l) -> { long t = System.nanoTime(); for (int i=0;i<5;i++) ChainFigure.draw(n, l.panel(), l.marks(), "q"); System.out.println(n + " " + (System.nanoTime()-t)/5000 + " us"); });
      Circuits.all().forEach((n, l) -> { long t = System.nanoTime(); for (int i=0;i<20;i++) CircuitFigure.draw(n, l.schematic(), l.labels(), SymbolStyle.IEC, Set.of(), "q"); System.out.println(n + " " + (System.nanoTime()-t)/20000 + " us"); });
      HeatPaths.all().forEach((n, l) -> { long t = System.nanoTime(); for (int i=0;i<20;i++) HeatFigure.draw(n, l.network(), l.labels(), SymbolStyle.IEC, "q"); System.out.println(n + " " + (System.nanoTime()-t)/20000 + " us"); });
    }
  }
}
