package org.mainsgate.seal;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.mainsgate.seal.PdfValue.Array;
import org.mainsgate.seal.PdfValue.Chars;
import org.mainsgate.seal.PdfValue.Dictionary;
import org.mainsgate.seal.PdfValue.Reference;

/**
 * What a signature has to know of the unsigned revision.
 *
 * @param end the length of that revision
 * @param startOfTable where its cross-reference stream starts
 * @param size the number of the next object
 * @param catalogNumber the catalog's number
 * @param catalog the catalog
 * @param trailer the values that every revision's trailer repeats
 * @param fields the numbers of the empty signature fields, by their names
 * @param fieldsThemselves the fields, by their names
 */
record Layout(
    int end,
    int startOfTable,
    int size,
    int catalogNumber,
    Dictionary catalog,
    Dictionary trailer,
    Map<String, Integer> fields,
    Map<String, Dictionary> fieldsThemselves) {

  /** The field of the certification, and those of who accepts. */
  static final String CERTIFY = "certify";

  /** How many can accept. */
  static final int ACCEPTANCES = 5;

  /** The names of the fields, in the order in which they are signed. */
  static final List<String> FIELDS =
      List.of(CERTIFY, "accept-1", "accept-2", "accept-3", "accept-4", "accept-5");

  /** The layout of a file of one revision, if it has exactly our empty fields. */
  static Optional<Layout> of(byte[] bytes, PdfObjects objects) {
    Optional<Integer> number =
        objects.trailer().get("Root").map(root -> root instanceof Reference r ? r.number() : -1);
    Optional<Dictionary> catalog = objects.dictionary(objects.trailer(), "Root");
    Map<String, Integer> fields = new LinkedHashMap<>();
    Map<String, Dictionary> themselves = new LinkedHashMap<>();
    catalog
        .flatMap(found -> objects.dictionary(found, "AcroForm"))
        .flatMap(form -> form.get("Fields"))
        .flatMap(objects::resolved)
        .ifPresent(list -> collect(list, objects, fields, themselves));
    Optional<Dictionary> trailer = trailer(objects.trailer());
    if (number.isEmpty()
        || catalog.isEmpty()
        || catalog.get().get("Perms").isPresent()
        || trailer.isEmpty()
        || !List.copyOf(fields.keySet()).equals(FIELDS)) {
      return Optional.empty();
    }
    return Optional.of(
        new Layout(
            bytes.length,
            objects.startOfTable(),
            objects.size(),
            number.get(),
            catalog.get(),
            trailer.get(),
            fields,
            themselves));
  }

  private static void collect(
      PdfValue list,
      PdfObjects objects,
      Map<String, Integer> fields,
      Map<String, Dictionary> themselves) {
    if (list instanceof Array array) {
      for (PdfValue item : array.items()) {
        if (item instanceof Reference reference
            && objects.all().get(reference.number()) instanceof Dictionary field
            && field.says("FT", "Sig")
            && field.get("V").isEmpty()
            && field.get("T").orElse(field) instanceof Chars name) {
          fields.put(name.decoded(), reference.number());
          themselves.put(name.decoded(), field);
        } else {
          fields.put("", 0);
        }
      }
    }
  }

  private static Optional<Dictionary> trailer(Dictionary table) {
    Map<String, PdfValue> kept = new LinkedHashMap<>();
    for (String name : List.of("Root", "Info", "ID")) {
      table.get(name).ifPresent(value -> kept.put(name, value));
    }
    return Optional.of(new Dictionary(kept)).filter(found -> found.entries().size() == 3);
  }
}
