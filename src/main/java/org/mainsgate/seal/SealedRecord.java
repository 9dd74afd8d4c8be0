package org.mainsgate.seal;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.util.Collections;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import org.mainsgate.desk.Desk;
import org.mainsgate.evidence.Visit;
import org.mainsgate.report.Dossier;
import org.mainsgate.report.Handover;
import org.mainsgate.report.Json;
import org.mainsgate.report.Pdf;
import org.mainsgate.report.Setting;
import org.mainsgate.report.Sheet;
import org.mainsgate.report.Terms;
import org.mainsgate.ruleset.Shelf;
import org.mainsgate.ruleset.Stage;
import org.mainsgate.source.Complaint;
import org.mainsgate.source.Complaints;
import org.mainsgate.source.Position;
import org.mainsgate.store.BenchFolder;
import org.mainsgate.store.Pack;

/**
 * What a sealed record is made of: the files of the bench, the rules and the terms. The verdict and
 * the pages follow from them alone, when it is sealed and whenever somebody verifies it.
 */
public final class SealedRecord {
  /** The file with the terms. */
  public static final String TERMS = "seal.yaml";

  /** The file with the findings, for programs that can't judge. */
  public static final String FINDINGS = "findings.json";

  private static final String BENCH = "bench/";
  private static final String RULES = "rulesets/";

  private final Map<String, byte[]> files;

  private SealedRecord(Map<String, byte[]> files) {
    this.files = Collections.unmodifiableMap(new TreeMap<>(files));
  }

  /** The record of an instrument under the terms. */
  public static SealedRecord of(Pack pack, Map<String, byte[]> rules, Terms terms) {
    Map<String, byte[]> files = new TreeMap<>(rules);
    pack.files().forEach((path, bytes) -> files.put(BENCH + path, bytes));
    files.put(TERMS, terms.written().getBytes(StandardCharsets.UTF_8));
    return new SealedRecord(files);
  }

  /** The record in a sealed file. */
  public static SealedRecord in(SealedFile sealed) {
    Map<String, byte[]> files = new TreeMap<>(sealed.files());
    files.remove(FINDINGS);
    return new SealedRecord(files);
  }

  /** All files by path. */
  public Map<String, byte[]> files() {
    return files;
  }

  /** The files of the bench, by their paths there. */
  public Pack pack() {
    return new Pack(under(BENCH, true));
  }

  private Map<String, byte[]> under(String folder, boolean cut) {
    Map<String, byte[]> found = new TreeMap<>();
    files.forEach(
        (path, bytes) -> {
          if (path.startsWith(folder)) {
            found.put(cut ? path.substring(folder.length()) : path, bytes);
          }
        });
    return found;
  }

  /** The rules that go with it. */
  public Shelf shelf() {
    return Shelf.of(under(RULES, false));
  }

  /** The terms, or complaints. */
  public Optional<Terms> terms(Complaints complaints) {
    byte[] bytes = files.get(TERMS);
    if (bytes == null) {
      complaints.add(new Position(TERMS, 1, 1), "this does not exist");
      return Optional.empty();
    }
    return Terms.read(TERMS, bytes, complaints);
  }

  /** The instrument judged under the rules that go with it, or complaints. */
  public Optional<Desk.Judged> judged(Terms terms, Complaints complaints) {
    return desk(complaints).flatMap(desk -> judged(desk, terms, complaints));
  }

  /** Its bench, opened under the rules that go with it, or complaints. */
  Optional<Desk> desk(Complaints complaints) {
    return BenchFolder.open(pack(), complaints)
        .filter(folder -> shelf().isReadable(complaints))
        .flatMap(folder -> Desk.open(folder, shelf(), complaints));
  }

  /** The same bench under a profile of another shelf, or complaints. */
  Optional<Desk> desk(Shelf shelf, Shelf.Choice choice, Complaints complaints) {
    return BenchFolder.open(pack(), complaints)
        .flatMap(folder -> Desk.open(folder, shelf, choice, complaints));
  }

  /** The instrument judged there, or complaints. */
  static Optional<Desk.Judged> judged(Desk desk, Terms terms, Complaints complaints) {
    Optional<Stage> stage = desk.rules().stage(terms.stage());
    if (stage.isEmpty()) {
      complaints.addUnknown(
          new Position(TERMS, 1, 1), "stage", terms.stage(), desk.rules().stages().keySet());
      return Optional.empty();
    }
    Setting setting = new Setting(desk.bench(), desk.rules(), false, stage.get(), terms.on());
    Desk.Sighting sighting = desk.sight(terms.tag(), setting);
    for (Complaint found : sighting.stored().complaints().sorted()) {
      complaints.add(found.at(), found.what(), found.right(), found.nearest());
    }
    return sighting.judged();
  }

  /** The record as it was when the instrument went out, if it has come back. */
  private Optional<Dossier> then(Terms terms, List<Visit> visits) {
    if (terms.wentOut().isEmpty()) {
      return Optional.empty();
    }
    Terms.WentOut out = terms.wentOut().get();
    Set<String> known = ancestors(visits, out.heads());
    Map<String, byte[]> earlier = new LinkedHashMap<>(files);
    for (Visit visit : visits) {
      if (visit.closing().filter(closing -> known.contains(closing.hash())).isEmpty()) {
        earlier.keySet().removeIf(path -> path.contains("/" + visit.id() + ".yaml"));
      }
    }
    return new SealedRecord(earlier)
        .judged(dated(terms, out.on()), new Complaints())
        .map(Desk.Judged::dossier);
  }

  private static Terms dated(Terms terms, LocalDate on) {
    return new Terms(
        terms.program(),
        terms.tag(),
        terms.stage(),
        on,
        terms.number(),
        terms.purpose(),
        terms.signer(),
        terms.fingerprint(),
        terms.to(),
        terms.said(),
        terms.pictures(),
        Optional.empty());
  }

  private static Set<String> ancestors(List<Visit> visits, List<String> heads) {
    Set<String> known = new HashSet<>(heads);
    boolean more = true;
    while (more) {
      more = false;
      for (Visit visit : visits) {
        if (visit.closing().filter(closing -> known.contains(closing.hash())).isPresent()) {
          more |= known.addAll(visit.closing().get().after());
        }
      }
    }
    return known;
  }

  /** What hand-over there is of it, once it is judged. */
  public Handover handover(Desk.Judged judged, Terms terms) {
    return new Handover(judged.dossier(), judged.evidence(), terms);
  }

  /** The canonical findings. */
  public static String findings(Desk.Judged judged) {
    Dossier dossier = judged.dossier();
    return Json.of(dossier.setting(), List.of(dossier), List.of());
  }

  /**
   * The unsigned revision: the pages, the attached files and the empty fields.
   *
   * @throws IllegalArgumentException if something can't be printed; see {@link Pdf#complaints}
   */
  public byte[] unsigned(Desk.Judged judged, Terms terms, Pdf pdf) throws IOException {
    Map<String, byte[]> attached = new TreeMap<>(files);
    attached.put(FINDINGS, findings(judged).getBytes(StandardCharsets.UTF_8));
    return pdf.unsigned(sheet(judged, terms), terms.on(), attached, fields());
  }

  /** The pages in words. */
  public Sheet sheet(Desk.Judged judged, Terms terms) {
    Optional<Dossier> then = then(terms, judged.dossier().visits());
    return Sheet.of(judged.dossier(), handover(judged, terms).page(then));
  }

  static Map<String, String> fields() {
    Map<String, String> fields = new LinkedHashMap<>();
    for (String name : Layout.FIELDS) {
      fields.put(
          name,
          name.equals(Layout.CERTIFY)
              ? "seal of whoever made this record"
              : "signature of somebody who knows what it says, "
                  + name.substring("accept-".length()));
    }
    return fields;
  }
}
