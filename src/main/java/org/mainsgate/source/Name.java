package org.mainsgate.source;

import jakarta.validation.Constraint;
import jakarta.validation.Payload;
import jakarta.validation.ReportAsSingleViolation;
import jakarta.validation.constraints.Pattern;
import java.lang.annotation.ElementType;
import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import java.lang.annotation.Target;

/**
 * An id or tag: 1 to 32 letters, digits, points, underscores and hyphens, a letter or digit first.
 */
@Target({ElementType.FIELD, ElementType.TYPE_USE, ElementType.ANNOTATION_TYPE})
@Retention(RetentionPolicy.RUNTIME)
@Constraint(validatedBy = {})
@Pattern(regexp = "[A-Za-z0-9][A-Za-z0-9._-]{0,31}")
@ReportAsSingleViolation
public @interface Name {

  /** What is wrong and what would be right; see {@link Shapes}. */
  String message() default
      "{typed} can't be a name here|1 to 32 of `A` to `Z`, `a` to `z`, `0` to `9`, `.`, `_`, `-`, a letter or digit first";

  Class<?>[] groups() default {};

  Class<? extends Payload>[] payload() default {};
}
