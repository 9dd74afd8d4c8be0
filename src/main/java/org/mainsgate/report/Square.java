package org.mainsgate.report;

import io.nayuki.qrcodegen.QrCode;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import javax.imageio.ImageIO;

/** A text as a QR code (ISO/IEC 18004), black on white with its quiet zone, as a PNG. */
final class Square {
  private static final int QUIET = 4;
  private static final int DOT = 4;

  private Square() {}

  static byte[] of(String text) {
    QrCode code = QrCode.encodeText(text, QrCode.Ecc.MEDIUM);
    int size = (code.size + 2 * QUIET) * DOT;
    BufferedImage image = new BufferedImage(size, size, BufferedImage.TYPE_INT_RGB);
    for (int y = 0; y < size; y++) {
      for (int x = 0; x < size; x++) {
        boolean dark = code.getModule(x / DOT - QUIET, y / DOT - QUIET);
        image.setRGB(x, y, dark ? 0 : 0xFFFFFF);
      }
    }
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    try {
      ImageIO.write(image, "png", out);
    } catch (IOException e) {
      throw new IllegalStateException("a picture that can't be written to memory", e);
    }
    return out.toByteArray();
  }
}
