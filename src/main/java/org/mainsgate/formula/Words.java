package org.mainsgate.formula;

import org.mainsgate.quantity.Dimension;

/** Turns of phrase that complaints and explanations share. */
final class Words {
  private Words() {}

  /** A dimension with its article, such as {@code an area}. */
  static String one(Dimension dimension) {
    String name = dimension.describe();
    if (name.indexOf('^') >= 0 || name.indexOf('·') >= 0) {
      return "a quantity in " + name;
    }
    return ("aeiou".indexOf(name.charAt(0)) >= 0 ? "an " : "a ") + name;
  }

  /** A text with every run of blanks made one space. */
  static String oneLine(String text) {
    return text.strip().replaceAll("\\s+", " ");
  }
}
