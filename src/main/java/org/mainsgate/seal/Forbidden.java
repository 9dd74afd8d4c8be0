package org.mainsgate.seal;

import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import org.mainsgate.seal.PdfValue.Array;
import org.mainsgate.seal.PdfValue.Dictionary;
import org.mainsgate.seal.PdfValue.Name;
import org.mainsgate.seal.PdfValue.Stream;

/** What pages of ours never hold: anything that acts, asks, hides or comes from elsewhere. */
final class Forbidden {
  private static final Map<String, String> ENTRIES =
      Map.of(
          "JS", "a script",
          "JavaScript", "a script",
          "AA", "an action",
          "OpenAction", "an action",
          "XFA", "a form of another kind",
          "Encrypt", "something encrypted",
          "OCProperties", "content that can be hidden",
          "Collection", "a collection of files",
          "Requirements", "a demand on the reader");
  private static final Map<String, String> SUBTYPES =
      Map.of(
          "RichMedia", "a film or a sound",
          "Screen", "a film or a sound",
          "Movie", "a film or a sound",
          "Sound", "a film or a sound",
          "3D", "a film or a sound",
          "FreeText", "a note over the page",
          "Stamp", "a note over the page",
          "Redact", "a note over the page");
  private static final Set<String> ACTIONS =
      Set.of(
          "JavaScript",
          "Launch",
          "SubmitForm",
          "ImportData",
          "GoToR",
          "GoToE",
          "URI",
          "Hide",
          "Rendition");

  private Forbidden() {}

  /** What is held that must not be, in words. */
  static java.util.List<String> in(byte[] unsigned) {
    Set<String> found = new TreeSet<>();
    Optional<PdfObjects> objects = PdfObjects.read(unsigned);
    objects.ifPresent(all -> all.all().values().forEach(value -> look(value, found)));
    return java.util.List.copyOf(found);
  }

  private static void look(PdfValue value, Set<String> found) {
    if (value instanceof Stream stream) {
      look(stream.dictionary(), found);
    } else if (value instanceof Array array) {
      array.items().forEach(item -> look(item, found));
    } else if (value instanceof Dictionary dictionary) {
      dictionary
          .entries()
          .keySet()
          .forEach(name -> Optional.ofNullable(ENTRIES.get(name)).ifPresent(found::add));
      dictionary
          .get("Subtype")
          .filter(Name.class::isInstance)
          .flatMap(name -> Optional.ofNullable(SUBTYPES.get(((Name) name).text())))
          .ifPresent(found::add);
      dictionary
          .get("S")
          .filter(name -> name instanceof Name action && ACTIONS.contains(action.text()))
          .ifPresent(name -> found.add("an action"));
      dictionary.entries().values().forEach(inner -> look(inner, found));
    }
  }
}
