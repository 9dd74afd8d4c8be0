package org.mainsgate.report;

import java.awt.geom.AffineTransform;
import java.nio.BufferUnderflowException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;

/**
 * How a camera was held, as it writes that beside the picture (Exif 2.3, tag {@code Orientation}).
 *
 * @param number from 1, upright, to 8
 */
record Orientation(int number) {

  static final Orientation UPRIGHT = new Orientation(1);

  private static final int START = 0xFFD8;
  private static final int APP1 = 0xFFE1;
  private static final int START_OF_SCAN = 0xFFDA;
  private static final int TAG = 0x0112;
  private static final int ENTRY = 12;
  private static final byte[] EXIF = "Exif\0\0".getBytes(StandardCharsets.US_ASCII);

  /** The orientation of a JPEG; upright for all that says nothing or makes no sense. */
  static Orientation of(byte[] photo) {
    try {
      return segments(ByteBuffer.wrap(photo));
    } catch (BufferUnderflowException | IndexOutOfBoundsException | IllegalArgumentException cut) {
      return UPRIGHT;
    }
  }

  /** Whether width and height are exchanged. */
  boolean liesOnItsSide() {
    return number > 4;
  }

  /** What turns a picture of this size upright. */
  AffineTransform upright(int width, int height) {
    return switch (number) {
      case 2 -> new AffineTransform(-1, 0, 0, 1, width, 0);
      case 3 -> new AffineTransform(-1, 0, 0, -1, width, height);
      case 4 -> new AffineTransform(1, 0, 0, -1, 0, height);
      case 5 -> new AffineTransform(0, 1, 1, 0, 0, 0);
      case 6 -> new AffineTransform(0, 1, -1, 0, height, 0);
      case 7 -> new AffineTransform(0, -1, -1, 0, height, width);
      case 8 -> new AffineTransform(0, -1, 1, 0, 0, width);
      default -> new AffineTransform();
    };
  }

  private static Orientation segments(ByteBuffer in) {
    if (Short.toUnsignedInt(in.getShort()) != START) {
      return UPRIGHT;
    }
    for (int marker = next(in); marker != START_OF_SCAN; marker = next(in)) {
      int length = Short.toUnsignedInt(in.getShort()) - Short.BYTES;
      if (marker == APP1 && isExif(in.slice())) {
        return directory(in.slice(in.position() + EXIF.length, length - EXIF.length));
      }
      in.position(in.position() + length);
    }
    return UPRIGHT;
  }

  private static int next(ByteBuffer in) {
    return Short.toUnsignedInt(in.getShort());
  }

  private static boolean isExif(ByteBuffer segment) {
    byte[] start = new byte[EXIF.length];
    segment.get(start);
    return Arrays.equals(start, EXIF);
  }

  /** The first directory of a TIFF. */
  private static Orientation directory(ByteBuffer tiff) {
    tiff.order(tiff.get(0) == 'I' ? ByteOrder.LITTLE_ENDIAN : ByteOrder.BIG_ENDIAN);
    int at = tiff.getInt(4);
    int entries = Short.toUnsignedInt(tiff.getShort(at));
    for (int i = 0; i < entries; i++) {
      int entry = at + Short.BYTES + i * ENTRY;
      int number = tiff.getShort(entry + 8);
      if (tiff.getShort(entry) == TAG && number >= 1 && number <= 8) {
        return new Orientation(number);
      }
    }
    return UPRIGHT;
  }
}
