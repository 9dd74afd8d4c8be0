package org.mainsgate.source;

import jakarta.validation.ConstraintViolation;
import jakarta.validation.ElementKind;
import jakarta.validation.MessageInterpolator;
import jakarta.validation.Path;
import jakarta.validation.TraversableResolver;
import jakarta.validation.Validation;
import jakarta.validation.Validator;
import jakarta.validation.valueextraction.ExtractedValue;
import jakarta.validation.valueextraction.UnwrapByDefault;
import jakarta.validation.valueextraction.ValueExtractor;
import java.lang.annotation.ElementType;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.logging.Level;
import java.util.logging.Logger;
import org.hibernate.validator.HibernateValidator;
import org.jspecify.annotations.Nullable;

/**
 * The check of bound records against the constraints (Jakarta Bean Validation) on their components.
 *
 * <p>A constraint on a {@link Text} is one on its value. Each must bring a message of its own,
 * {@code what|right}: what is wrong and what would be right, as in a {@link Complaint}. In it
 * {@code {typed}} stands for the person's own words in backticks; nothing else is filled in.
 *
 * <p>The validator starts at the first check, which takes longer than all the rest of a short run.
 */
public final class Shapes {

  private static final String TYPED = "{typed}";

  private Shapes() {}

  /**
   * Complains about each value that breaks a constraint, where it stands in the file.
   *
   * @param bean the record that the fields were bound to
   */
  public static void check(Record bean, Fields fields, Complaints complaints) {
    for (ConstraintViolation<Record> violation : Started.VALIDATOR.validate(bean)) {
      Node node = follow(violation.getPropertyPath(), fields);
      String message = violation.getMessage();
      int split = message.indexOf('|');
      if (split < 0) {
        throw new IllegalStateException("a constraint without a message of our own: " + violation);
      }
      String typed = node instanceof Text text ? Visible.quoted(text.value()) : "this";
      String what = message.substring(0, split).replace(TYPED, typed);
      complaints.add(node.at(), what, message.substring(split + 1).replace(TYPED, typed));
    }
  }

  // As far as the path leads: what is wrong with a missing value is said where its fields start.
  private static Node follow(Path path, Fields fields) {
    Node node = fields;
    for (Path.Node step : path) {
      Optional<Node> next = Optional.of(node);
      if (step.getIndex() != null && node instanceof Items items) {
        next = Optional.of(items.items().get(step.getIndex()));
      } else if (step.getKey() != null && node instanceof Fields map) {
        next = map.get(step.getKey().toString());
      }
      if (step.getKind() == ElementKind.PROPERTY
          && next.isPresent()
          && next.get() instanceof Fields inner) {
        next = inner.get(Binder.keyOf(step.getName()));
      }
      if (next.isEmpty()) {
        return node;
      }
      node = next.get();
    }
    return node;
  }

  /** The validator, started when first needed. */
  private static final class Started {

    // Held here, since a logger that nobody holds is forgotten along with its level.
    private static final Logger LOGGER = Logger.getLogger("org.hibernate.validator");

    static final Validator VALIDATOR = start();

    private static Validator start() {
      LOGGER.setLevel(Level.OFF);
      return Validation.byProvider(HibernateValidator.class)
          .providerResolver(() -> List.of(new HibernateValidator()))
          .configure()
          .ignoreXmlConfiguration()
          .messageInterpolator(new OwnWords())
          .traversableResolver(new EverythingInMemory())
          .addValueExtractor(new TextValue())
          .buildValidatorFactory()
          .getValidator();
    }
  }

  /** The constraint on a text is one on its value. */
  @UnwrapByDefault
  private static final class TextValue
      implements ValueExtractor<@ExtractedValue(type = String.class) Text> {

    @Override
    public void extractValues(Text text, ValueReceiver receiver) {
      receiver.value(null, text.value());
    }
  }

  /** Messages are whole sentences of our own, alike in every locale. */
  private static final class OwnWords implements MessageInterpolator {

    @Override
    public String interpolate(String template, Context context) {
      return template;
    }

    @Override
    public String interpolate(String template, Context context, Locale locale) {
      return template;
    }
  }

  /** Nothing of a record is loaded later. */
  private static final class EverythingInMemory implements TraversableResolver {

    @Override
    public boolean isReachable(
        @Nullable Object object, Path.Node property, Class<?> root, Path path, ElementType type) {
      return true;
    }

    @Override
    public boolean isCascadable(
        @Nullable Object object, Path.Node property, Class<?> root, Path path, ElementType type) {
      return true;
    }
  }
}
