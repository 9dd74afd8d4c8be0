package org.mainsgate.report;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import org.mainsgate.source.Binder;
import org.mainsgate.source.CalendarDate;
import org.mainsgate.source.Complaints;
import org.mainsgate.source.StrictYaml;
import org.mainsgate.source.Text;

/**
 * What a sealed record is made out for: everything on its pages that does not stand in the bench.
 *
 * @param program the version of the program that made it
 * @param tag the instrument
 * @param stage the id of the stage
 * @param on the day of the verdict
 * @param number which record of this instrument it is, from 1; a higher one supersedes it
 * @param purpose what for
 * @param signer who signs, as their certificate names them
 * @param fingerprint of that certificate, as two people compare it
 * @param to who gets it; empty for a plain record
 * @param said what else was said, in the person's own words
 * @param pictures SHA-256 of each picture as it came from the camera, by its path
 * @param wentOut the record with which it went out, where it has come back
 */
public record Terms(
    String program,
    String tag,
    String stage,
    LocalDate on,
    int number,
    Purpose purpose,
    String signer,
    String fingerprint,
    Optional<String> to,
    Map<Saying, String> said,
    Map<String, String> pictures,
    Optional<WentOut> wentOut) {

  private static final String FORMAT = "1";

  /** Keeps the maps in their order. */
  public Terms {
    said = Collections.unmodifiableMap(new LinkedHashMap<>(said));
    pictures = Collections.unmodifiableMap(new LinkedHashMap<>(pictures));
  }

  /** What a record is for. */
  public enum Purpose {
    RECORD("a record of the state found"),
    SOLD("sold"),
    LENT("lent"),
    RETURNED("returned");

    private final String words;

    Purpose(String words) {
      this.words = words;
    }

    /** In words. */
    public String words() {
      return words;
    }

    /** As it is written in a file and on the command line. */
    public String word() {
      return name().toLowerCase(Locale.ROOT);
    }
  }

  /** What only people can say. */
  public enum Saying {
    UNTIL("until", "to be back by"),
    PLACE("place", "where it is used"),
    USER("user", "who uses it, and was shown how"),
    COMPETENT("competent", "what the user is competent for"),
    SELLER("seller", "who sells it"),
    USE("use", "what the new owner says it is for"),
    PLUG("plug", "what was done to the plug"),
    PLUG_BY("plug_by", "done by"),
    NEXT("next", "to be looked at again by"),
    TELLS("tells", "what the one who brings it back says: used, opened, dropped, wet");

    private final String key;
    private final String words;

    Saying(String key, String words) {
      this.key = key;
      this.words = words;
    }

    /** Its field in the file. */
    public String key() {
      return key;
    }

    /** What it is, in words. */
    public String words() {
      return words;
    }

    /** What was said of it, as a page says it: the words that commands know are written out. */
    String inWords(String text) {
      return switch (this) {
        case PLUG ->
            text.equals("locked") ? "locked in a plug cover" : "cut off, the lead coiled and tied";
        case SELLER -> text.equals("trade") ? "somebody in the way of trade" : "a private person";
        default -> text;
      };
    }
  }

  /**
   * A record that an instrument went out with.
   *
   * @param number its number
   * @param on its day
   * @param heads the hashes of the latest closed visits then
   */
  public record WentOut(int number, LocalDate on, List<String> heads) {
    /** Keeps the list as it is. */
    public WentOut {
      heads = List.copyOf(heads);
    }
  }

  /** What was said of something. */
  public Optional<String> said(Saying what) {
    return Optional.ofNullable(said.get(what));
  }

  /** The same of another day. */
  public Terms on(LocalDate day) {
    return new Terms(
        program,
        tag,
        stage,
        day,
        number,
        purpose,
        signer,
        fingerprint,
        to,
        said,
        pictures,
        wentOut);
  }

  /** The same for another instrument. */
  public Terms forTag(String other) {
    return new Terms(
        program,
        other,
        stage,
        on,
        number,
        purpose,
        signer,
        fingerprint,
        to,
        said,
        pictures,
        wentOut);
  }

  /** The same with something more said. */
  public Terms saying(Saying what, String text) {
    Map<Saying, String> more = new LinkedHashMap<>(said);
    more.put(what, text);
    return new Terms(
        program, tag, stage, on, number, purpose, signer, fingerprint, to, more, pictures, wentOut);
  }

  record File(
      Text format,
      Text program,
      Text tag,
      Text stage,
      Text on,
      Text number,
      Text purpose,
      Text signer,
      Text fingerprint,
      @Nullable Text to,
      Map<String, Text> said,
      Map<String, Text> pictures,
      @Nullable OutFile wentOut) {}

  record OutFile(Text number, Text on, List<Text> heads) {}

  /** The terms as a file: strict YAML, in one form only. */
  public String written() {
    StringBuilder out = new StringBuilder("format: 1\n");
    line(out, "program", program);
    line(out, "tag", tag);
    line(out, "stage", stage);
    line(out, "on", on.toString());
    line(out, "number", String.valueOf(number));
    line(out, "purpose", purpose.word());
    line(out, "signer", signer);
    line(out, "fingerprint", fingerprint);
    to.ifPresent(name -> line(out, "to", name));
    Map<String, String> sayings = new LinkedHashMap<>();
    said.forEach((what, text) -> sayings.put(what.key(), text));
    block(out, "said", sayings);
    block(out, "pictures", pictures);
    wentOut.ifPresent(
        out2 -> {
          out.append("went_out:\n");
          line(out, "  number", String.valueOf(out2.number()));
          line(out, "  on", out2.on().toString());
          out.append("  heads: [")
              .append(String.join(", ", out2.heads().stream().map(Terms::quoted).toList()))
              .append("]\n");
        });
    return out.toString();
  }

  private static void line(StringBuilder out, String key, String value) {
    out.append(key).append(": ").append(quoted(value)).append('\n');
  }

  private static void block(StringBuilder out, String key, Map<String, String> values) {
    if (!values.isEmpty()) {
      out.append(key).append(":\n");
      values.forEach(
          (name, value) ->
              out.append("  ")
                  .append(quoted(name))
                  .append(": ")
                  .append(quoted(value))
                  .append('\n'));
    }
  }

  private static String quoted(String value) {
    return "\"" + value.replace("\\", "\\\\").replace("\"", "\\\"") + "\"";
  }

  /** The terms in a file's bytes, or complaints. */
  public static Optional<Terms> read(String path, byte[] bytes, Complaints complaints) {
    return StrictYaml.readFields(path, bytes, complaints)
        .flatMap(fields -> Binder.bind(fields, File.class, complaints))
        .flatMap(file -> of(file, complaints));
  }

  private static Optional<Terms> of(File file, Complaints complaints) {
    int before = complaints.count();
    if (!file.format().value().equals(FORMAT)) {
      complaints.add(file.format(), "a format that this program does not know", "`1`");
    }
    Map<Saying, String> said = new LinkedHashMap<>();
    for (Map.Entry<String, Text> entry : file.said().entrySet()) {
      List<String> keys = Arrays.stream(Saying.values()).map(Saying::key).toList();
      int index = keys.indexOf(entry.getKey());
      if (index < 0) {
        complaints.addUnknown(entry.getValue().at(), "field", entry.getKey(), keys);
      } else {
        said.put(Saying.values()[index], entry.getValue().value());
      }
    }
    Map<String, String> pictures = new LinkedHashMap<>();
    file.pictures().forEach((path, hash) -> pictures.put(path, hash.value()));
    Optional<LocalDate> on = day(file.on(), complaints);
    Optional<Integer> number = number(file.number(), complaints);
    List<String> words = Arrays.stream(Purpose.values()).map(Purpose::word).toList();
    int purpose = words.indexOf(file.purpose().value());
    if (purpose < 0) {
      complaints.addUnknown(file.purpose().at(), "purpose", file.purpose().value(), words);
    }
    Optional<WentOut> out =
        Optional.ofNullable(file.wentOut()).flatMap(found -> out(found, complaints));
    if (complaints.count() > before) {
      return Optional.empty();
    }
    return Optional.of(
        new Terms(
            file.program().value(),
            file.tag().value(),
            file.stage().value(),
            on.orElseThrow(),
            number.orElseThrow(),
            Purpose.values()[purpose],
            file.signer().value(),
            file.fingerprint().value(),
            Optional.ofNullable(file.to()).map(Text::value),
            said,
            pictures,
            out));
  }

  private static Optional<WentOut> out(OutFile file, Complaints complaints) {
    Optional<LocalDate> on = day(file.on(), complaints);
    Optional<Integer> number = number(file.number(), complaints);
    List<String> heads = new ArrayList<>();
    file.heads().forEach(head -> heads.add(head.value()));
    return on.flatMap(day -> number.map(count -> new WentOut(count, day, heads)));
  }

  private static Optional<LocalDate> day(Text text, Complaints complaints) {
    return checked(text, CalendarDate.Check::isDate, "a calendar date", complaints)
        .map(LocalDate::parse);
  }

  private static Optional<Integer> number(Text text, Complaints complaints) {
    return checked(
            text, value -> value.matches("[1-9][0-9]{0,5}"), "a number from 1 on", complaints)
        .map(Integer::valueOf);
  }

  private static Optional<String> checked(
      Text text, Function<String, Boolean> right, String what, Complaints complaints) {
    if (right.apply(text.value())) {
      return Optional.of(text.value());
    }
    complaints.add(text, "`" + text.value() + "` is not what should stand here", what);
    return Optional.empty();
  }
}
