package org.vestibule.release;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.Base64;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.cos.COSBase;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.cos.COSObject;
import org.apache.pdfbox.cos.COSObjectKey;
import org.apache.pdfbox.cos.COSStream;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.vestibule.dicom.DataSet;
import org.vestibule.dicom.DicomFile;
import org.vestibule.dicom.Element;
import org.vestibule.dicom.Part10Reader;
import org.vestibule.dicom.Tags;
import org.vestibule.dicom.Vr;

/** Opens finished files of each kind for the search. */
final class FileContents {

  private static final Pattern DATA_URI =
      Pattern.compile("data:image/jpeg;base64,([A-Za-z0-9+/=]+)");

  /** Whole values in JSON, and what a picture is called where it isn't shown. */
  private static final Pattern QUOTED = Pattern.compile("(?:alt=|[ \\n])\"([^\"]*)\"");

  private static final Pattern TAG = Pattern.compile("<[^>]*>");
  private static final byte[] PIXEL_DATA = {(byte) 0xE0, 0x7F, 0x10, 0, 'O', 'B'};

  private FileContents() {}

  /** What to search in a file of this name. */
  static SearchedFile of(String name, byte[] bytes) throws IOException {
    SearchedFile searched = new SearchedFile();
    for (String part : name.split("[/.]", -1)) {
      searched.text(part);
    }
    if (name.endsWith(".dcm")) {
      dicom(bytes, searched);
    } else if (name.endsWith(".jpg")) {
      searched.bytes.add(CodedPicture.without(bytes, 0));
    } else if (name.endsWith(".pdf")) {
      pdf(bytes, searched);
    } else {
      text(new String(bytes, StandardCharsets.UTF_8), searched);
    }
    return searched;
  }

  private static void dicom(byte[] bytes, SearchedFile searched) {
    DicomFile file = Part10Reader.read(bytes).orThrow();
    int picture = start(bytes);
    searched.bytes.add(picture < 0 ? bytes : CodedPicture.without(bytes, picture));
    fields(file.meta(), searched);
    fields(file.data(), searched);
  }

  /** Where the codestream begins: behind element head, empty offset table and fragment head. */
  private static int start(byte[] bytes) {
    for (int at = bytes.length - PIXEL_DATA.length; at >= 0; at--) {
      if (Arrays.equals(bytes, at, at + PIXEL_DATA.length, PIXEL_DATA, 0, PIXEL_DATA.length)) {
        int soi = at + 12 + 8 + 8;
        boolean isJpeg =
            soi + 1 < bytes.length
                && (bytes[soi] & 0xFF) == 0xFF
                && (bytes[soi + 1] & 0xFF) == 0xD8;
        return isJpeg ? soi : -1;
      }
    }
    return -1;
  }

  private static void fields(DataSet data, SearchedFile searched) {
    for (Element element : data) {
      if (element.tag() == Tags.PixelData) {
        continue;
      }
      for (String value : isNumberOrTerm(element.vr()) ? List.<String>of() : element.strings()) {
        searched.text(value);
        for (String part : value.split("[\\^=]", -1)) {
          searched.text(part);
        }
      }
      element.items().forEach(item -> fields(item, searched));
    }
  }

  /**
   * Rows, series numbers and terms such as {@code 01} are equal to a patient's number by chance;
   * long ones are found among the bytes.
   */
  private static boolean isNumberOrTerm(Vr vr) {
    return vr.isBinaryNumber() || vr == Vr.IS || vr == Vr.DS || vr == Vr.CS;
  }

  private static void text(String text, SearchedFile searched) {
    StringBuilder rest = new StringBuilder();
    Matcher pictures = DATA_URI.matcher(text);
    int from = 0;
    while (pictures.find()) {
      rest.append(text, from, pictures.start());
      byte[] jpeg = Base64.getDecoder().decode(pictures.group(1));
      searched.bytes.add(CodedPicture.without(jpeg, 0));
      from = pictures.end();
    }
    rest.append(text.substring(from));
    searched.bytes.add(rest.toString().getBytes(StandardCharsets.UTF_8));
    searched.text(plain(rest.toString()));
    Matcher quoted = QUOTED.matcher(rest);
    while (quoted.find()) {
      searched.text(plain(quoted.group(1)));
    }
    for (String line : TAG.matcher(rest).replaceAll("\n").split("\n", -1)) {
      searched.text(plain(line));
    }
  }

  /** Without the references that HTML writes for its own signs. */
  private static String plain(String html) {
    return html.replace("&lt;", "<")
        .replace("&gt;", ">")
        .replace("&quot;", "\"")
        .replace("&#39;", "'")
        .replace("&amp;", "&");
  }

  /** The text as a reader sees it, every stream unpacked, and the file as it is. */
  private static void pdf(byte[] bytes, SearchedFile searched) throws IOException {
    try (PDDocument document = Loader.loadPDF(bytes)) {
      String text = new PDFTextStripper().getText(document);
      searched.text(text);
      text.lines().forEach(searched::text);
      for (COSObjectKey key : document.getDocument().getXrefTable().keySet()) {
        COSObject object = document.getDocument().getObjectFromPool(key);
        COSBase base = object.getObject();
        if (base instanceof COSStream stream) {
          unpacked(stream, searched);
        }
      }
    }
    searched.bytes.add(bytes);
  }

  private static void unpacked(COSStream stream, SearchedFile searched) throws IOException {
    boolean isPicture = COSName.IMAGE.equals(stream.getCOSName(COSName.SUBTYPE));
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    try (InputStream in = isPicture ? stream.createRawInputStream() : stream.createInputStream()) {
      in.transferTo(out);
    }
    byte[] bytes = out.toByteArray();
    searched.bytes.add(isPicture ? CodedPicture.without(bytes, 0) : bytes);
  }
}
