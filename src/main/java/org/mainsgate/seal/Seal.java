package org.mainsgate.seal;

import java.io.IOException;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HexFormat;
import java.util.List;
import java.util.Optional;
import org.mainsgate.signature.Signing;

/** Puts signatures on a record: the first certifies it, up to five more accept it. */
public final class Seal {
  private Seal() {}

  /**
   * Seals an unsigned revision.
   *
   * @param unsigned as {@link SealedRecord#unsigned} makes it
   * @param claimed the time by the signer's clock
   * @throws IOException if the time-stamp authority does not answer
   * @throws IllegalArgumentException if the bytes are no unsigned revision of ours
   */
  public static byte[] certify(byte[] unsigned, Signing signing, Instant claimed)
      throws IOException {
    Layout layout =
        PdfObjects.read(unsigned)
            .flatMap(objects -> Layout.of(unsigned, objects))
            .orElseThrow(() -> new IllegalArgumentException("no unsigned record"));
    return add(layout, unsigned, layout.startOfTable(), 0, signing, claimed);
  }

  /**
   * Adds the signature of somebody who accepts a sealed file.
   *
   * @return empty if five have accepted it before
   * @throws IOException if the time-stamp authority does not answer
   */
  public static Optional<byte[]> accept(SealedFile sealed, Signing signing, Instant claimed)
      throws IOException {
    int index = sealed.signatures().size();
    return index > Layout.ACCEPTANCES
        ? Optional.empty()
        : Optional.of(
            add(sealed.layout(), sealed.bytes(), sealed.lastTable(), index, signing, claimed));
  }

  private static byte[] add(
      Layout layout, byte[] before, int table, int index, Signing signing, Instant claimed)
      throws IOException {
    List<Integer> rooms = new ArrayList<>(Arrays.stream(Revision.ROOMS).boxed().toList());
    if (signing.isStamped()) {
      rooms.remove(0);
    }
    Instant second = claimed.truncatedTo(ChronoUnit.SECONDS);
    String name = signing.certified().name();
    for (int room : rooms) {
      byte[] signed =
          new Revision(index, name, second, room, "").after(layout, before, table).signed();
      byte[] cms = signing.sign(signed);
      if (cms.length <= room) {
        String hex = HexFormat.of().withUpperCase().formatHex(cms);
        return new Revision(index, name, second, room, hex).after(layout, before, table).bytes();
      }
    }
    throw new IOException("the certificates and the time-stamp are longer than a signature may be");
  }
}
