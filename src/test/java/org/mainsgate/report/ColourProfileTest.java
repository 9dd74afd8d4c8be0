package org.mainsgate.report;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.awt.color.ICC_ColorSpace;
import java.awt.color.ICC_Profile;
import org.junit.jupiter.api.Test;

class ColourProfileTest {

  /** The JDK's own sRGB is the judge of ours. */
  @Test
  void theProfileThatShipsIsSrgb() {
    ICC_ColorSpace ours =
        new ICC_ColorSpace(ICC_Profile.getInstance(Resources.read("/report/srgb.icc")));
    for (int red = 0; red <= 255; red += 51) {
      for (int green = 0; green <= 255; green += 51) {
        for (int blue = 0; blue <= 255; blue += 51) {
          float[] colour = {red / 255f, green / 255f, blue / 255f};
          float[] shown = ours.toRGB(colour);
          for (int i = 0; i < 3; i++) {
            assertEquals(colour[i], shown[i], 1.5f / 255);
          }
        }
      }
    }
  }
}
