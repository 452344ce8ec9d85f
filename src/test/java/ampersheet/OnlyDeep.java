package ampersheet;

import java.lang.annotation.ElementType;
import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import java.lang.annotation.Target;
import org.junit.jupiter.api.condition.EnabledIfSystemProperty;

/** Takes long, and tells apart what hardly changes: left out of an ordinary build, by name. */
@Target(ElementType.METHOD)
@Retention(RetentionPolicy.RUNTIME)
@EnabledIfSystemProperty(named = "ampersheet.deep", matches = "true", disabledReason = "runs under -Pdeep")
public @interface OnlyDeep {}
