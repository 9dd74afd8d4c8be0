package org.mainsgate.report;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.Arrays;
import java.util.Calendar;
import java.util.GregorianCalendar;
import java.util.List;
import java.util.Locale;
import java.util.TimeZone;
import org.apache.pdfbox.cos.COSArray;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.cos.COSString;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDDocumentInformation;
import org.apache.pdfbox.pdmodel.common.PDMetadata;

/**
 * What a document says of itself, none of it taken from a clock or from chance.
 *
 * @param title the document's title
 * @param subject what it is, in one sentence
 * @param on the date of its making
 */
record Stamp(String title, String subject, LocalDate on) {

  private static final String PRODUCER = "mainsgate";

  /**
   * Replaces everything that a library has put there.
   *
   * @param content what makes this document another one than the next
   */
  void put(PDDocument document, List<byte[]> content) throws IOException {
    PDDocumentInformation information = new PDDocumentInformation();
    information.setTitle(title);
    information.setSubject(subject);
    information.setProducer(PRODUCER);
    information.setCreationDate(midnight());
    information.setModificationDate(midnight());
    document.setDocumentInformation(information);
    PDMetadata metadata =
        new PDMetadata(
            document, new ByteArrayInputStream(packet().getBytes(StandardCharsets.UTF_8)));
    metadata.getCOSObject().setName(COSName.TYPE, "Metadata");
    metadata.getCOSObject().setName(COSName.SUBTYPE, "XML");
    document.getDocumentCatalog().setMetadata(metadata);
    COSArray id = new COSArray();
    COSString identity = new COSString(identity(content));
    id.add(identity);
    id.add(identity);
    document.getDocument().getTrailer().setItem(COSName.ID, id);
  }

  Calendar midnight() {
    Calendar calendar = new GregorianCalendar(TimeZone.getTimeZone("UTC"), Locale.ROOT);
    calendar.setTimeInMillis(on.atStartOfDay(ZoneOffset.UTC).toInstant().toEpochMilli());
    return calendar;
  }

  /** Half of SHA-256 over everything, as long as the format has it. */
  private static byte[] identity(List<byte[]> content) {
    try {
      MessageDigest digest = MessageDigest.getInstance("SHA-256");
      content.forEach(digest::update);
      return Arrays.copyOf(digest.digest(), 16);
    } catch (NoSuchAlgorithmException impossible) {
      throw new IllegalStateException(impossible);
    }
  }

  /**
   * The metadata packet. ISO 19005-3 6.6.2.3 asks for the description of every schema that XMP does
   * not know, and of these is that of ISO 14289-1.
   */
  private String packet() {
    return """
        <?xpacket begin="\uFEFF" id="W5M0MpCehiHzreSzNTczkc9d"?>
        <x:xmpmeta xmlns:x="adobe:ns:meta/">
        <rdf:RDF xmlns:rdf="http://www.w3.org/1999/02/22-rdf-syntax-ns#">
        <rdf:Description rdf:about=""
            xmlns:dc="http://purl.org/dc/elements/1.1/"
            xmlns:xmp="http://ns.adobe.com/xap/1.0/"
            xmlns:pdf="http://ns.adobe.com/pdf/1.3/"
            xmlns:pdfaid="http://www.aiim.org/pdfa/ns/id/"
            xmlns:pdfuaid="http://www.aiim.org/pdfua/ns/id/"
            xmlns:pdfaExtension="http://www.aiim.org/pdfa/ns/extension/"
            xmlns:pdfaSchema="http://www.aiim.org/pdfa/ns/schema#"
            xmlns:pdfaProperty="http://www.aiim.org/pdfa/ns/property#">
        <dc:format>application/pdf</dc:format>
        <dc:title><rdf:Alt><rdf:li xml:lang="x-default">{title}</rdf:li></rdf:Alt></dc:title>
        <dc:description><rdf:Alt><rdf:li xml:lang="x-default">{subject}</rdf:li></rdf:Alt></dc:description>
        <dc:language><rdf:Bag><rdf:li>en</rdf:li></rdf:Bag></dc:language>
        <xmp:CreateDate>{date}</xmp:CreateDate>
        <xmp:ModifyDate>{date}</xmp:ModifyDate>
        <pdf:Producer>{producer}</pdf:Producer>
        <pdfaid:part>3</pdfaid:part>
        <pdfaid:conformance>A</pdfaid:conformance>
        <pdfuaid:part>1</pdfuaid:part>
        <pdfaExtension:schemas><rdf:Bag><rdf:li rdf:parseType="Resource">
        <pdfaSchema:schema>PDF/UA identification</pdfaSchema:schema>
        <pdfaSchema:namespaceURI>http://www.aiim.org/pdfua/ns/id/</pdfaSchema:namespaceURI>
        <pdfaSchema:prefix>pdfuaid</pdfaSchema:prefix>
        <pdfaSchema:property><rdf:Seq><rdf:li rdf:parseType="Resource">
        <pdfaProperty:name>part</pdfaProperty:name>
        <pdfaProperty:valueType>Integer</pdfaProperty:valueType>
        <pdfaProperty:category>internal</pdfaProperty:category>
        <pdfaProperty:description>part of ISO 14289 that the document conforms to</pdfaProperty:description>
        </rdf:li></rdf:Seq></pdfaSchema:property>
        </rdf:li></rdf:Bag></pdfaExtension:schemas>
        </rdf:Description>
        </rdf:RDF>
        </x:xmpmeta>
        <?xpacket end="w"?>
        """
        .replace("{date}", on + "T00:00:00Z")
        .replace("{producer}", PRODUCER)
        .replace("{subject}", escaped(subject))
        .replace("{title}", escaped(title));
  }

  private static String escaped(String text) {
    return text.replace("&", "&amp;").replace("<", "&lt;").replace(">", "&gt;");
  }
}
