package org.mainsgate.report;

import org.apache.fontbox.FontBoxFont;
import org.apache.fontbox.ttf.TrueTypeFont;
import org.apache.pdfbox.pdmodel.font.CIDFontMapping;
import org.apache.pdfbox.pdmodel.font.FontMapper;
import org.apache.pdfbox.pdmodel.font.FontMapping;
import org.apache.pdfbox.pdmodel.font.PDCIDSystemInfo;
import org.apache.pdfbox.pdmodel.font.PDFontDescriptor;
import org.jspecify.annotations.Nullable;

/** The refusal to print in a font that does not ship with the program. */
enum NoSystemFonts implements FontMapper {
  /** The one there is. */
  INSTANCE;

  @Override
  public FontMapping<TrueTypeFont> getTrueTypeFont(
      String name, @Nullable PDFontDescriptor descriptor) {
    throw refused(name);
  }

  @Override
  public FontMapping<FontBoxFont> getFontBoxFont(
      String name, @Nullable PDFontDescriptor descriptor) {
    throw refused(name);
  }

  @Override
  public CIDFontMapping getCIDFont(
      String name, @Nullable PDFontDescriptor descriptor, @Nullable PDCIDSystemInfo system) {
    throw refused(name);
  }

  private static IllegalStateException refused(String name) {
    return new IllegalStateException("a page asks for the font " + name);
  }
}
