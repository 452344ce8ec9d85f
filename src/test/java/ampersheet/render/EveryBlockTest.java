package ampersheet.render;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import ampersheet.render.text.TerminalText;
import ampersheet.sheet.Document.Block;
import ampersheet.sheet.Document.BlockVisitor;
import ampersheet.sheet.Document.FigureBlock;
import ampersheet.sheet.Document.Kind;
import ampersheet.sheet.Document.LogoBlock;
import ampersheet.sheet.Document.ProblemBlock;
import ampersheet.source.Languages;
import java.lang.reflect.Method;
import java.lang.reflect.Proxy;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;

class EveryBlockTest {
    @Test
    void everyKindOfBlockIsAMethodThatARendererMustHave() {
        Set<String> kinds = new TreeSet<>();
        for (Class<?> kind : Block.class.getPermittedSubclasses()) {
            kinds.add(kind.getSimpleName());
        }
        Set<String> asked = new TreeSet<>();
        for (Method method : BlockVisitor.class.getMethods()) {
            assertTrue(!method.isDefault() && method.getParameterCount() == 1, method + " lets a renderer forget it");
            asked.add(method.getParameterTypes()[0].getSimpleName());
        }
        assertEquals(kinds, asked);
    }

    @Test
    void everyBlockIsHandedToTheMethodOfItsKind() {
        Set<String> handed = new TreeSet<>();
        BlockVisitor visitor = (BlockVisitor) Proxy.newProxyInstance(
                getClass().getClassLoader(), new Class<?>[] {BlockVisitor.class}, (proxy, method, arguments) -> {
                    assertEquals(method.getParameterTypes()[0], arguments[0].getClass());
                    handed.add(arguments[0].getClass().getSimpleName());
                    return null;
                });
        samples().forEach(block -> block.accept(visitor));
        // Nothing to be seen in a terminal, and so no sample for it.
        new LogoBlock(LogoBlock.WITHIN, "", 1, 1).accept(visitor);
        assertEquals(
                Block.class.getPermittedSubclasses().length, handed.size(), "blocks without a sample: only " + handed);
    }

    @Test
    void aTerminalShowsEveryBlock() {
        for (Block block : samples()) {
            assertTrue(
                    !new TerminalText(Languages.ENGLISH, true)
                            .blocks(List.of(block))
                            .toString()
                            .isBlank(),
                    block + " is not shown");
        }
        FigureBlock figure = (FigureBlock) samples().stream()
                .filter(FigureBlock.class::isInstance)
                .findFirst()
                .orElseThrow();
        assertEquals(
                "",
                new TerminalText(Languages.ENGLISH, false)
                        .blocks(List.of(figure))
                        .toString());
    }

    private static List<Block> samples() {
        List<Block> samples = new ArrayList<>();
        for (Block block : SampleDocuments.hostile(Kind.SHEET, Arrays.asList("one", "two", "three"))
                .blocks()) {
            samples.add(block);
            if (block instanceof ProblemBlock problem) {
                samples.addAll(problem.blocks());
            }
        }
        return samples;
    }
}
