package ampersheet.template;

import ampersheet.formula.Spelling;
import ampersheet.language.Language;
import ampersheet.source.Languages;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.concurrent.ConcurrentHashMap;

/**
 * All templates at hand: the program's own and, before them, those of an author's folders, so that an author's template
 * takes the place of one with the same name. Each is read when first asked for, and then kept.
 */
public final class TemplateLibrary {
    private final Map<String, TemplateFiles> sources = new TreeMap<>();
    private final Map<Asked, ProblemTemplate> read = new ConcurrentHashMap<>();

    private record Asked(String name, Language language) {}

    /** @param sources those further ahead take precedence */
    public TemplateLibrary(List<TemplateFiles> sources) {
        for (TemplateFiles source : sources) {
            source.names().forEach(name -> this.sources.putIfAbsent(name, source));
        }
    }

    /** {@code family/name}, sorted. */
    public List<String> names() {
        return List.copyOf(sources.keySet());
    }

    /** Those that have words in a language, or their file for them at least. */
    public List<String> names(Language language) {
        return language.equals(Languages.ENGLISH)
                ? names()
                : names().stream()
                        .filter(name -> source(name).files(name).contains(TemplateFiles.problem(language)))
                        .toList();
    }

    public boolean has(String name) {
        return sources.containsKey(name);
    }

    /**
     * @throws IllegalArgumentException if there is no such template
     * @throws ampersheet.diagnostic.DiagnosticException with all faults of the template at once
     */
    public ProblemTemplate template(String name) {
        return template(name, Languages.ENGLISH);
    }

    /**
     * The same with its words in a language.
     *
     * @throws IllegalArgumentException if there is no such template
     * @throws ampersheet.diagnostic.DiagnosticException with all faults of the template at once; one of them that it
     *     has no words in this language
     */
    public ProblemTemplate template(String name, Language language) {
        TemplateFiles source = source(name);
        return read.computeIfAbsent(new Asked(name, language), asked -> TemplateReader.read(source, name, language));
    }

    /**
     * The files that a template's version in a language depends on, by name: its data, its statement, and the words of
     * the language.
     *
     * @throws IllegalArgumentException if there is no such template
     */
    public Map<String, String> texts(String name, Language language) {
        TemplateFiles source = source(name);
        Map<String, String> texts = new TreeMap<>();
        for (String file : source.files(name)) {
            boolean own = file.equals(TemplateFiles.problem(language))
                    || file.equals(Reading.STATEMENT + "." + language.code() + Reading.STATEMENT_END);
            if (own || file.equals(TemplateFiles.PROBLEM) || file.equals(Reading.STATEMENT + Reading.STATEMENT_END)) {
                source.text(name, file).ifPresent(text -> texts.put(file, text));
            }
        }
        return texts;
    }

    /** Text of the file of limits beside a template's family; empty if there is none. */
    public Optional<String> limits(String name) {
        return source(name).limits();
    }

    private TemplateFiles source(String name) {
        TemplateFiles source = sources.get(name);
        if (source == null) {
            throw new IllegalArgumentException("no template " + name);
        }
        return source;
    }

    /** The name that someone who wrote {@code name} most likely meant: a slip away, or the same without its family. */
    public Optional<String> nearest(String name) {
        List<String> sameWithoutFamily = new ArrayList<>();
        for (String known : sources.keySet()) {
            if (known.substring(known.indexOf('/') + 1).equals(name.substring(name.lastIndexOf('/') + 1))) {
                sameWithoutFamily.add(known);
            }
        }
        return sameWithoutFamily.size() == 1
                ? Optional.of(sameWithoutFamily.get(0))
                : Spelling.nearest(name, sources.keySet());
    }
}
