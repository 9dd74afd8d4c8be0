package org.mainsgate.report;

import java.util.List;
import org.mainsgate.evidence.InForce;
import org.mainsgate.evidence.Instrument;
import org.mainsgate.evidence.Visit;
import org.mainsgate.verdict.Assessment;

/**
 * All that is reported of one instrument.
 *
 * @param setting what it was judged under
 * @param instrument the instrument
 * @param visits what was recorded, earliest first
 * @param assessment what the stage says of it
 * @param setAside what was recorded and does not count
 * @param heads the hashes of the latest closed visits
 * @param photos the pictures that it is recognised by, those that can be read
 */
public record Dossier(
    Setting setting,
    Instrument instrument,
    List<Visit> visits,
    Assessment assessment,
    List<InForce.SetAside> setAside,
    List<String> heads,
    List<Picture> photos) {

  /** Keeps the lists as they are. */
  public Dossier {
    visits = List.copyOf(visits);
    setAside = List.copyOf(setAside);
    heads = List.copyOf(heads);
    photos = List.copyOf(photos);
  }
}
