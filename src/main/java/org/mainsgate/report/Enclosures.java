package org.mainsgate.report;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.util.ArrayList;
import java.util.Calendar;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.apache.pdfbox.cos.COSArray;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDDocumentCatalog;
import org.apache.pdfbox.pdmodel.PDDocumentNameDictionary;
import org.apache.pdfbox.pdmodel.PDEmbeddedFilesNameTreeNode;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.pdmodel.common.filespecification.PDComplexFileSpecification;
import org.apache.pdfbox.pdmodel.common.filespecification.PDEmbeddedFile;
import org.apache.pdfbox.pdmodel.interactive.annotation.PDAnnotationWidget;
import org.apache.pdfbox.pdmodel.interactive.form.PDAcroForm;
import org.apache.pdfbox.pdmodel.interactive.form.PDSignatureField;

/**
 * What goes with the pages of a sealed record: attached files, and empty fields for signatures.
 *
 * <p>The files are associated with the document as its source (ISO 19005-3, 6.8). The fields have
 * no size and stand outside the structure tree, so that filling one changes nothing that anybody
 * sees or hears.
 *
 * @param files the bytes by path, in their order
 * @param fields the names of the fields, with what each is for, in their order
 */
record Enclosures(Map<String, byte[]> files, Map<String, String> fields) {

  void put(PDDocument document, Calendar on) throws IOException {
    attach(document, on);
    prepare(document);
  }

  private void attach(PDDocument document, Calendar on) throws IOException {
    PDDocumentCatalog catalog = document.getDocumentCatalog();
    Map<String, PDComplexFileSpecification> names = new TreeMap<>();
    COSArray associated = new COSArray();
    for (Map.Entry<String, byte[]> file : files.entrySet()) {
      PDComplexFileSpecification specification = specification(document, file, on);
      names.put(file.getKey(), specification);
      associated.add(specification);
    }
    PDEmbeddedFilesNameTreeNode tree = new PDEmbeddedFilesNameTreeNode();
    tree.setNames(names);
    PDDocumentNameDictionary dictionary = new PDDocumentNameDictionary(catalog);
    dictionary.setEmbeddedFiles(tree);
    catalog.setNames(dictionary);
    catalog.getCOSObject().setItem(COSName.getPDFName("AF"), associated);
  }

  private static PDComplexFileSpecification specification(
      PDDocument document, Map.Entry<String, byte[]> file, Calendar on) throws IOException {
    String path = file.getKey();
    PDEmbeddedFile embedded =
        new PDEmbeddedFile(
            document, new ByteArrayInputStream(file.getValue()), COSName.FLATE_DECODE);
    embedded.setSubtype(subtype(path));
    embedded.setSize(file.getValue().length);
    embedded.setCreationDate(on);
    embedded.setModDate(on);
    PDComplexFileSpecification specification = new PDComplexFileSpecification();
    specification.setFile(path);
    specification.setFileUnicode(path);
    specification.setEmbeddedFile(embedded);
    specification.setEmbeddedFileUnicode(embedded);
    specification.setFileDescription("part of the record: " + path);
    specification.getCOSObject().setName(COSName.getPDFName("AFRelationship"), "Source");
    return specification;
  }

  private static String subtype(String path) {
    if (path.endsWith(".yaml")) {
      return "application/yaml";
    }
    if (path.endsWith(".json")) {
      return "application/json";
    }
    return path.endsWith(".sha256") ? "text/plain" : "image/jpeg";
  }

  private void prepare(PDDocument document) throws IOException {
    PDAcroForm form = new PDAcroForm(document);
    document.getDocumentCatalog().setAcroForm(form);
    form.setSignaturesExist(true);
    form.setAppendOnly(true);
    List<PDSignatureField> made = new ArrayList<>();
    for (Map.Entry<String, String> field : fields.entrySet()) {
      PDSignatureField signature = new PDSignatureField(form);
      signature.setPartialName(field.getKey());
      signature.setAlternateFieldName(field.getValue());
      PDAnnotationWidget widget = signature.getWidgets().get(0);
      widget.setRectangle(new PDRectangle(0, 0, 0, 0));
      widget.setPrinted(true);
      widget.setPage(document.getPage(0));
      document.getPage(0).getAnnotations().add(widget);
      made.add(signature);
    }
    form.setFields(List.copyOf(made));
  }
}
