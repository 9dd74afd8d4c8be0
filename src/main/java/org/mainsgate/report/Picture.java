package org.mainsgate.report;

import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.util.Iterator;
import java.util.Optional;
import javax.imageio.IIOImage;
import javax.imageio.ImageIO;
import javax.imageio.ImageReader;
import javax.imageio.ImageWriteParam;
import javax.imageio.ImageWriter;
import javax.imageio.stream.ImageInputStream;
import javax.imageio.stream.MemoryCacheImageInputStream;
import javax.imageio.stream.MemoryCacheImageOutputStream;

/**
 * A photo made ready for print: upright colours without transparency, of bounded size, and without
 * anything that the camera wrote beside the picture.
 */
public final class Picture {

  private static final int LONGEST_SIDE = 1000;
  private static final long MOST_PIXELS = 60_000_000;
  private static final float QUALITY = 0.85f;

  private final byte[] jpeg;

  private Picture(byte[] jpeg) {
    this.jpeg = jpeg;
  }

  /** A JPEG or PNG as it came from a camera; empty if it can't be read or is far too large. */
  public static Optional<Picture> of(byte[] photo) {
    try (ImageInputStream in = new MemoryCacheImageInputStream(new ByteArrayInputStream(photo))) {
      Iterator<ImageReader> readers = ImageIO.getImageReaders(in);
      return readers.hasNext() ? read(readers.next(), in, Orientation.of(photo)) : Optional.empty();
    } catch (IOException | RuntimeException unreadable) {
      // The decoders of the JDK throw both on a damaged file; either way there is no picture.
      return Optional.empty();
    }
  }

  /** A picture that was made ready before, as it is; empty if it is none or far too large. */
  public static Optional<Picture> asPrinted(byte[] jpeg) {
    return of(jpeg).map(readable -> new Picture(jpeg.clone()));
  }

  /** The bytes of the JPEG. */
  public byte[] jpeg() {
    return jpeg.clone();
  }

  private static Optional<Picture> read(ImageReader reader, ImageInputStream in, Orientation held)
      throws IOException {
    try {
      reader.setInput(in, true, true);
      long pixels = (long) reader.getWidth(0) * reader.getHeight(0);
      return pixels > MOST_PIXELS
          ? Optional.empty()
          : Optional.of(new Picture(written(drawn(reader.read(0), held))));
    } finally {
      reader.dispose();
    }
  }

  private static BufferedImage drawn(BufferedImage image, Orientation held) {
    int width = image.getWidth();
    int height = image.getHeight();
    double scale = Math.min(1, (double) LONGEST_SIDE / Math.max(width, height));
    int across = size(held.liesOnItsSide() ? height : width, scale);
    int down = size(held.liesOnItsSide() ? width : height, scale);
    BufferedImage result = new BufferedImage(across, down, BufferedImage.TYPE_INT_RGB);
    Graphics2D graphics = result.createGraphics();
    graphics.setColor(Color.WHITE);
    graphics.fillRect(0, 0, across, down);
    graphics.setRenderingHint(
        RenderingHints.KEY_INTERPOLATION, RenderingHints.VALUE_INTERPOLATION_BILINEAR);
    graphics.scale(scale, scale);
    graphics.drawImage(image, held.upright(width, height), null);
    graphics.dispose();
    return result;
  }

  private static int size(int pixels, double scale) {
    return (int) Math.max(1, Math.round(pixels * scale));
  }

  private static byte[] written(BufferedImage image) throws IOException {
    ImageWriter writer = ImageIO.getImageWritersByFormatName("jpeg").next();
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    try (MemoryCacheImageOutputStream stream = new MemoryCacheImageOutputStream(out)) {
      writer.setOutput(stream);
      ImageWriteParam param = writer.getDefaultWriteParam();
      param.setCompressionMode(ImageWriteParam.MODE_EXPLICIT);
      param.setCompressionQuality(QUALITY);
      writer.write(null, new IIOImage(image, null, null), param);
    } finally {
      writer.dispose();
    }
    return out.toByteArray();
  }
}
