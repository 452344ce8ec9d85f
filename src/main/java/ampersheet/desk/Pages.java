package ampersheet.desk;

import freemarker.cache.ClassTemplateLoader;
import freemarker.core.HTMLOutputFormat;
import freemarker.core.TemplateClassResolver;
import freemarker.template.Configuration;
import freemarker.template.SimpleObjectWrapper;
import freemarker.template.TemplateException;
import freemarker.template.TemplateExceptionHandler;
import freemarker.template.TemplateModelException;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import java.util.TimeZone;

/**
 * The desk's own pages. Whatever is put into one is escaped; only what the program itself wrote as HTML is let through,
 * by {@link #html}. A page sees texts, numbers, lists and tables, and no object whose methods it could call.
 */
final class Pages {
    private final Configuration configuration;

    Pages() {
        configuration = new Configuration(Configuration.VERSION_2_3_34);
        configuration.setTemplateLoader(new ClassTemplateLoader(Pages.class, "pages"));
        configuration.setOutputFormat(HTMLOutputFormat.INSTANCE);
        configuration.setRecognizeStandardFileExtensions(true);
        configuration.setObjectWrapper(new SimpleObjectWrapper(Configuration.VERSION_2_3_34));
        configuration.setNewBuiltinClassResolver(TemplateClassResolver.ALLOWS_NOTHING_RESOLVER);
        configuration.setAPIBuiltinEnabled(false);
        configuration.setTemplateExceptionHandler(TemplateExceptionHandler.RETHROW_HANDLER);
        configuration.setLogTemplateExceptions(false);
        configuration.setLocalizedLookup(false);
        configuration.setTemplateUpdateDelayMilliseconds(Long.MAX_VALUE);
        configuration.setNumberFormat("computer");
        configuration.setBooleanFormat("c");
        configuration.setLocale(Locale.ROOT);
        configuration.setTimeZone(TimeZone.getTimeZone("UTC"));
        configuration.setDefaultEncoding("UTF-8");
    }

    /** @param name of a file beside this class, without its ending */
    String fill(String name, Map<String, Object> values) {
        StringWriter out = new StringWriter();
        try {
            configuration.getTemplate(name + ".ftlh").process(values, out);
        } catch (IOException failure) {
            throw new UncheckedIOException(failure);
        } catch (TemplateException failure) {
            throw new IllegalStateException("the page " + name + " cannot be filled: " + failure.getMessage(), failure);
        }
        return out.toString();
    }

    /** What the program's own renderers wrote. */
    static Object html(String written) {
        try {
            return HTMLOutputFormat.INSTANCE.fromMarkup(written);
        } catch (TemplateModelException impossible) {
            throw new IllegalStateException(impossible);
        }
    }

    /** @param namesAndValues by turns */
    static Map<String, Object> values(Object... namesAndValues) {
        Map<String, Object> values = new LinkedHashMap<>();
        for (int i = 0; i < namesAndValues.length; i += 2) {
            values.put((String) namesAndValues[i], namesAndValues[i + 1]);
        }
        return values;
    }
}
