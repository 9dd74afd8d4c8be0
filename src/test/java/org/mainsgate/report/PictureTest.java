package org.mainsgate.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class PictureTest {

  /** Where the corner that is at the top left of the stored picture belongs (Exif 2.3, 4.6.4). */
  @ParameterizedTest
  @CsvSource({
    "1, 60, 30, left, top",
    "2, 60, 30, right, top",
    "3, 60, 30, right, bottom",
    "4, 60, 30, left, bottom",
    "5, 30, 60, left, top",
    "6, 30, 60, right, top",
    "7, 30, 60, right, bottom",
    "8, 30, 60, left, bottom"
  })
  void aPhotoIsTurnedUpright(int number, int width, int height, String across, String down)
      throws IOException {
    BufferedImage upright = shown(exif(marked(), number));
    assertEquals(width, upright.getWidth());
    assertEquals(height, upright.getHeight());
    int x = across.equals("left") ? 4 : width - 5;
    int y = down.equals("top") ? 4 : height - 5;
    assertTrue(isDark(upright, x, y), () -> "the corner is not at " + across + ", " + down);
    assertFalse(isDark(upright, width - 1 - x, height - 1 - y));
  }

  @Test
  void anOrientationThatMakesNoSenseIsUpright() throws IOException {
    for (int number : new int[] {0, 9, 255}) {
      assertEquals(Orientation.UPRIGHT, Orientation.of(exif(marked(), number)));
    }
    byte[] whole = exif(marked(), 6);
    assertEquals(new Orientation(6), Orientation.of(whole));
    for (int length = 0; length < 30; length++) {
      assertEquals(Orientation.UPRIGHT, Orientation.of(Arrays.copyOf(whole, length)));
    }
  }

  @Test
  void nothingThatTheCameraWroteIsKept() throws IOException {
    byte[] jpeg = Picture.of(exif(marked(), 6)).orElseThrow().jpeg();
    assertFalse(new String(jpeg, StandardCharsets.ISO_8859_1).contains("Exif"));
  }

  @Test
  void aLargePhotoIsMadeSmaller() throws IOException {
    BufferedImage large = new BufferedImage(3000, 2000, BufferedImage.TYPE_INT_RGB);
    BufferedImage shown = shown(bytes(large, "png"));
    assertEquals(1000, shown.getWidth());
    assertEquals(667, shown.getHeight());
  }

  @Test
  void whatIsTransparentBecomesWhite() throws IOException {
    BufferedImage clear = new BufferedImage(10, 10, BufferedImage.TYPE_INT_ARGB);
    assertEquals(Color.WHITE.getRGB(), shown(bytes(clear, "png")).getRGB(5, 5));
  }

  @Test
  void aPictureFarTooLargeIsRefusedByItsHeader() throws IOException {
    byte[] png = bytes(new BufferedImage(1, 1, BufferedImage.TYPE_BYTE_GRAY), "png");
    ByteBuffer header = ByteBuffer.wrap(png);
    header.putInt(16, 60_000);
    header.putInt(20, 60_000);
    assertTrue(Picture.of(png).isEmpty());
  }

  @Test
  void bytesThatAreNoPictureAreRefused() {
    assertTrue(Picture.of(new byte[0]).isEmpty());
    assertTrue(Picture.of("GIF89a".getBytes(StandardCharsets.US_ASCII)).isEmpty());
    assertTrue(Picture.of(Arrays.copyOf(Samples.png(), 60)).isEmpty());
  }

  private static BufferedImage marked() {
    BufferedImage image = new BufferedImage(60, 30, BufferedImage.TYPE_INT_RGB);
    Graphics2D graphics = image.createGraphics();
    graphics.setColor(Color.WHITE);
    graphics.fillRect(0, 0, 60, 30);
    graphics.setColor(Color.BLACK);
    graphics.fillRect(0, 0, 10, 10);
    graphics.dispose();
    return image;
  }

  private static byte[] exif(BufferedImage image, int orientation) throws IOException {
    byte[] jpeg = bytes(image, "jpeg");
    ByteBuffer exif = ByteBuffer.allocate(2 + 2 + 6 + 8 + 2 + 12 + 4);
    exif.putShort((short) 0xFFE1).putShort((short) (exif.capacity() - 2));
    exif.put("Exif\0\0MM".getBytes(StandardCharsets.US_ASCII)).putShort((short) 42).putInt(8);
    exif.putShort((short) 1).putShort((short) 0x0112).putShort((short) 3).putInt(1);
    exif.putShort((short) orientation).putShort((short) 0).putInt(0);
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    out.write(jpeg, 0, 2);
    out.write(exif.array());
    out.write(jpeg, 2, jpeg.length - 2);
    return out.toByteArray();
  }

  private static byte[] bytes(BufferedImage image, String format) throws IOException {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    assertTrue(ImageIO.write(image, format, out));
    return out.toByteArray();
  }

  private static BufferedImage shown(byte[] photo) throws IOException {
    byte[] jpeg = Picture.of(photo).orElseThrow().jpeg();
    return ImageIO.read(new ByteArrayInputStream(jpeg));
  }

  private static boolean isDark(BufferedImage image, int x, int y) {
    return new Color(image.getRGB(x, y)).getGreen() < 100;
  }
}
