package org.mainsgate.agenda;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.mainsgate.ruleset.Kind;
import org.mainsgate.ruleset.Property;
import org.mainsgate.ruleset.Vocabulary;

/**
 * The text of the file of a new instrument: its tag and identity, and as comments what can stand on
 * its plate and which things it may have. Nothing is claimed of it.
 */
public final class InstrumentDraft {
  /** Things that most instruments have, by the kind that the vocabulary may know; custom. */
  private static final Map<String, List<String>> USUAL = usual();

  private InstrumentDraft() {}

  private static Map<String, List<String>> usual() {
    Map<String, List<String>> usual = new LinkedHashMap<>();
    usual.put("lead", List.of("mains-lead"));
    usual.put(
        "exposed_part",
        List.of("front-panel", "case", "handle", "knob-screws", "terminals", "rear-panel"));
    return usual;
  }

  /** The text of the file. */
  public static String of(Vocabulary vocabulary, String tag, String uid, String what) {
    Commented text = new Commented();
    text.comment(0, "What it is, what stands on its plate, and the list of things on it.")
        .comment(0, "Nothing that work can change stands here; that is found in a visit.")
        .line("format: 1")
        .line("tag: " + Commented.quoted(tag))
        .line("uid: " + uid)
        .line("what: " + Commented.quoted(what))
        .open(0, "maker: ...")
        .open(0, "model: ...")
        .open(0, "serial: ...")
        .open(0, "made: about ...")
        .open(0, "photo: photos/front.jpg")
        .open(0, "plate_photo: photos/plate.jpg", "what tells this one from its like")
        .line("")
        .comment(0, "From the plate, as it is written there:")
        .line("plate:");
    for (Property property : vocabulary.of("instrument")) {
      if (property.heading().home() == Property.Home.INSTRUMENT) {
        text.open(2, property.name() + ": " + Form.value(property), property.title());
      }
    }
    text.line("")
        .comment(0, "Every thing that is there, by an id of your own. Take the `# ` away from what")
        .comment(0, "is there, add what is missing, and close each list in a visit (`looked:`).")
        .line("things:");
    vocabulary.listedKinds().forEach(kind -> things(text, kind));
    return text.toString();
  }

  private static void things(Commented text, Kind kind) {
    text.comment(2, kind.plural());
    String id = kind.name().replace('_', '-') + "-1";
    for (String usual : USUAL.getOrDefault(kind.name(), List.of(id))) {
      text.open(2, usual + ": {kind: " + kind.name() + more(kind, usual) + "}");
    }
  }

  /** Its title; or its designator in the diagram, which only a person can say. */
  private static String more(Kind kind, String id) {
    return kind.designated() ? ", designator: \"C?\"" : ", title: " + id.replace('-', ' ');
  }
}
