package ampersheet.template;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;

/** Where template files come from: the program's own jar, or a folder of the author's. */
public interface TemplateFiles {
  /** Names {@code family/name} of every folder with a {@code problem.yaml}, sorted. */
  List<String> names();

  /**
   * Text of a file of a template.
   *
   * @param file a plain file name; one with a slash or {@code ..} is refused
   */
  Optional<String> text(String template, String file);

  /** How places in the file are named in diagnostics. */
  String shown(String template, String file);

  /** The templates in the program's jar. */
  static TemplateFiles builtIn() {
    throw new UnsupportedOperationException("being written");
  }

  /** Templates below a folder, laid out {@code family/name/problem.yaml}. */
  static TemplateFiles in(Path folder) {
    throw new UnsupportedOperationException("being written");
  }
}
