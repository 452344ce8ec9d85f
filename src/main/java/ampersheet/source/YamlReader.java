package ampersheet.source;

import static ampersheet.source.Told.say;

import ampersheet.diagnostic.Diagnostic;
import ampersheet.diagnostic.DiagnosticException;
import ampersheet.diagnostic.Place;
import ampersheet.diagnostic.Printable;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.snakeyaml.engine.v2.api.LoadSettings;
import org.snakeyaml.engine.v2.api.lowlevel.Parse;
import org.snakeyaml.engine.v2.common.ScalarStyle;
import org.snakeyaml.engine.v2.events.AliasEvent;
import org.snakeyaml.engine.v2.events.CollectionStartEvent;
import org.snakeyaml.engine.v2.events.DocumentStartEvent;
import org.snakeyaml.engine.v2.events.Event;
import org.snakeyaml.engine.v2.events.MappingStartEvent;
import org.snakeyaml.engine.v2.events.NodeEvent;
import org.snakeyaml.engine.v2.events.ScalarEvent;
import org.snakeyaml.engine.v2.events.SequenceStartEvent;
import org.snakeyaml.engine.v2.exceptions.Mark;
import org.snakeyaml.engine.v2.exceptions.MarkedYamlEngineException;
import org.snakeyaml.engine.v2.exceptions.ReaderException;
import org.snakeyaml.engine.v2.exceptions.YamlEngineException;

/**
 * Reads YAML 1.2 into a tree with places. The tree is plain: no anchors, aliases, tags or further documents, at most
 * {@value #DEEPEST} levels and {@value #MOST_NODES} nodes, so that no file can swell in memory.
 */
public final class YamlReader {
    /** A template of some hundred lines is far below; more is a mistake or an attack. */
    public static final int MOST_CHARACTERS = 200_000;

    static final int DEEPEST = 12;
    static final int MOST_NODES = 20_000;

    private final SourceText source;
    private final Faults faults;
    private final Iterator<Event> events;
    private int nodes;

    private YamlReader(SourceText source, Faults faults, Iterator<Event> events) {
        this.source = source;
        this.faults = faults;
        this.events = events;
    }

    /** The tree, or empty if the text is not YAML; then {@code faults} tells why. */
    public static Optional<Yaml> read(SourceText source, Faults faults) {
        LoadSettings settings = LoadSettings.builder()
                .setLabel(source.file())
                .setCodePointLimit(MOST_CHARACTERS)
                .build();
        try {
            Iterator<Event> events =
                    new Parse(settings).parseString(source.text()).iterator();
            return new YamlReader(source, faults, events).document();
        } catch (MarkedYamlEngineException fault) {
            Place place =
                    fault.getProblemMark().map(mark -> place(source, mark)).orElse(Place.inFile(source.file()));
            faults.add(YamlFault.told(
                    place,
                    fault.getContext(),
                    fault.getProblem(),
                    fault.getContextMark().map(mark -> mark.getLine() + 1).orElse(place.line())));
        } catch (ReaderException fault) {
            Place place = source.at(source.offsetOfCodePoint(fault.getPosition()));
            faults.error(
                    place,
                    say("plan.yaml.character"),
                    say("plan.yaml.character.expected"),
                    say("plan.yaml.character.next"));
        } catch (DiagnosticException fault) {
            fault.diagnostics().forEach(faults::add);
        } catch (YamlEngineException fault) {
            faults.error(
                    Place.inFile(source.file()),
                    say("plan.yaml.none", "reason", fault.getMessage()),
                    "YAML 1.2",
                    say("plan.yaml.none.next"));
        }
        return Optional.empty();
    }

    private Optional<Yaml> document() {
        Optional<Yaml> root = Optional.empty();
        boolean seen = false;
        while (events.hasNext()) {
            Event event = events.next();
            if (event instanceof DocumentStartEvent) {
                if (seen) {
                    throw new DiagnosticException(Diagnostic.error(
                            start(event),
                            say("plan.yaml.second"),
                            say("plan.yaml.second.expected"),
                            say("plan.yaml.second.next")));
                }
                seen = true;
            } else if (event instanceof NodeEvent node) {
                root = Optional.of(node(node, 1));
            }
        }
        if (root.isEmpty()) {
            faults.error(
                    Place.inFile(source.file()),
                    say("plan.yaml.empty"),
                    say("plan.yaml.empty.expected"),
                    say("plan.yaml.empty.next"));
        }
        return root;
    }

    private Yaml node(NodeEvent event, int depth) {
        nodes++;
        if (nodes > MOST_NODES || depth > DEEPEST) {
            throw new DiagnosticException(Diagnostic.error(
                    start(event),
                    nodes > MOST_NODES ? say("plan.yaml.many") : say("plan.yaml.deep"),
                    say(
                            "plan.yaml.many.expected",
                            "most",
                            Integer.toString(MOST_NODES),
                            "deepest",
                            Integer.toString(DEEPEST)),
                    say("plan.yaml.many.next")));
        }
        if (event instanceof AliasEvent) {
            throw new DiagnosticException(Diagnostic.error(
                    start(event),
                    say("plan.yaml.alias"),
                    say("plan.yaml.alias.expected"),
                    say("plan.yaml.alias.next")));
        }
        if (event.getAnchor().isPresent()) {
            throw new DiagnosticException(Diagnostic.error(
                    start(event),
                    say("plan.yaml.anchor"),
                    say("plan.yaml.anchor.expected"),
                    say("plan.yaml.anchor.next")));
        }
        if (event instanceof ScalarEvent scalar) {
            refuseTag(event, scalar.getTag());
            return scalar(scalar);
        }
        refuseTag(event, ((CollectionStartEvent) event).getTag());
        return event instanceof SequenceStartEvent ? sequence(event, depth) : mapping((MappingStartEvent) event, depth);
    }

    private void refuseTag(NodeEvent event, Optional<String> tag) {
        if (tag.isPresent()) {
            throw new DiagnosticException(Diagnostic.error(
                    start(event), say("plan.yaml.tag"), say("plan.yaml.tag.expected"), say("plan.yaml.tag.next")));
        }
    }

    private Yaml sequence(NodeEvent event, int depth) {
        List<Yaml> items = new ArrayList<>();
        for (Event next = events.next(); next instanceof NodeEvent node; next = events.next()) {
            items.add(node(node, depth + 1));
        }
        return new Yaml.Sequence(List.copyOf(items), start(event));
    }

    private Yaml mapping(MappingStartEvent event, int depth) {
        List<Yaml.Entry> entries = new ArrayList<>();
        Map<String, Place> firsts = new TreeMap<>();
        for (Event next = events.next(); next instanceof NodeEvent node; next = events.next()) {
            if (!(node instanceof ScalarEvent)) {
                throw new DiagnosticException(Diagnostic.error(
                        start(node),
                        say("plan.yaml.key"),
                        say("plan.yaml.key.expected"),
                        say("plan.yaml.key.next", "list", "[", "group", "{")));
            }
            Yaml.Scalar key = (Yaml.Scalar) node(node, depth + 1);
            Yaml value = node((NodeEvent) events.next(), depth + 1);
            Place first = firsts.putIfAbsent(key.text(), key.place());
            if (first != null) {
                faults.error(
                        key.place(),
                        say("plan.yaml.twice", "key", key.text()),
                        say("plan.yaml.twice.expected", "line", Integer.toString(first.line())),
                        say("plan.yaml.twice.next"));
            } else {
                entries.add(new Yaml.Entry(key, value));
            }
        }
        return new Yaml.Mapping(List.copyOf(entries), event.isFlow(), start(event));
    }

    private Yaml.Scalar scalar(ScalarEvent event) {
        String value = event.getValue();
        int start = offset(event.getStartMark().orElseThrow());
        int end = offset(event.getEndMark().orElseThrow());
        char style = style(event.getScalarStyle());
        Yaml.Scalar scalar =
                new Yaml.Scalar(value, style == ' ', source, ScalarOrigin.of(source.text(), start, end, value, style));
        refuseActing(scalar);
        return scalar;
    }

    /** An escape in quotes can stand for anything, also for what no file may hold as it is. */
    private void refuseActing(Yaml.Scalar scalar) {
        String text = scalar.text();
        for (int i = 0; i < text.length(); i += Character.charCount(text.codePointAt(i))) {
            int c = text.codePointAt(i);
            if (c != '\n' && Printable.acts(c)) {
                faults.error(
                        scalar.at(i),
                        say("plan.yaml.acting", "character", Printable.line(Character.toString(c))),
                        say("plan.yaml.acting.expected"),
                        say("plan.yaml.acting.next"));
                return;
            }
        }
    }

    private static char style(ScalarStyle style) {
        return switch (style) {
            case DOUBLE_QUOTED -> '"';
            case SINGLE_QUOTED -> '\'';
            case LITERAL -> '|';
            case FOLDED -> '>';
            default -> ' ';
        };
    }

    private Place start(Event event) {
        return place(source, event.getStartMark().orElseThrow());
    }

    private int offset(Mark mark) {
        return source.offsetOfCodePoint(mark.getIndex());
    }

    private static Place place(SourceText source, Mark mark) {
        return source.at(source.offsetOfCodePoint(mark.getIndex()));
    }
}
