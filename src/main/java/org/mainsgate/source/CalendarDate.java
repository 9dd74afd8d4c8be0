package org.mainsgate.source;

import jakarta.validation.Constraint;
import jakarta.validation.ConstraintValidator;
import jakarta.validation.ConstraintValidatorContext;
import jakarta.validation.Payload;
import java.lang.annotation.ElementType;
import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import java.lang.annotation.Target;
import java.time.LocalDate;
import java.time.YearMonth;
import java.time.format.DateTimeParseException;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/** A date of the calendar, {@code yyyy-MM-dd}, that exists: {@code 2026-02-30} does not. */
@Target({ElementType.FIELD, ElementType.TYPE_USE, ElementType.ANNOTATION_TYPE})
@Retention(RetentionPolicy.RUNTIME)
@Constraint(validatedBy = CalendarDate.Check.class)
public @interface CalendarDate {

  /** What is wrong and what would be right; see {@link Shapes}. */
  String message() default "{typed} is not a calendar date|year-month-day, such as `2026-11-25`";

  Class<?>[] groups() default {};

  Class<? extends Payload>[] payload() default {};

  /** Judges a date; leaves one that is not there alone. */
  final class Check implements ConstraintValidator<CalendarDate, String> {

    private static final Pattern SHAPE = Pattern.compile("[0-9]{4}-[0-9]{2}-[0-9]{2}");

    @Override
    public boolean isValid(@Nullable String value, ConstraintValidatorContext context) {
      if (value == null) {
        return true;
      }
      if (!SHAPE.matcher(value).matches()) {
        return false;
      }
      return exists(value, context);
    }

    /** Whether a text is such a date, where no bean is validated. */
    public static boolean isDate(String value) {
      try {
        return SHAPE.matcher(value).matches() && LocalDate.parse(value) != null;
      } catch (DateTimeParseException noSuchDay) {
        return false;
      }
    }

    private static boolean exists(String value, ConstraintValidatorContext context) {
      int year = Integer.parseInt(value.substring(0, 4));
      int month = Integer.parseInt(value.substring(5, 7));
      int day = Integer.parseInt(value.substring(8));
      if (month < 1 || month > 12) {
        return refuse("a month from `01` to `12`", context);
      }
      int last = YearMonth.of(year, month).lengthOfMonth();
      return (1 <= day && day <= last) || refuse("a day from `01` to `" + last + "`", context);
    }

    private static boolean refuse(String right, ConstraintValidatorContext context) {
      context.disableDefaultConstraintViolation();
      context
          .buildConstraintViolationWithTemplate("{typed} does not exist|" + right)
          .addConstraintViolation();
      return false;
    }
  }
}
