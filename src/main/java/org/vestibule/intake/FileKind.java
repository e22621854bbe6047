package org.vestibule.intake;

import java.nio.charset.StandardCharsets;
import java.util.Set;

/** What a file is by its first bytes, whatever its name says (signatures from memory). */
enum FileKind {
  JPEG,
  HEIF,
  PNG,
  GIF,
  WEBP,
  TIFF,
  BMP,
  JPEG_2000,
  JPEG_XL,
  DICOM,
  PDF,
  VIDEO,
  ZEROS,
  OTHER;

  /** How many bytes {@link #of} looks at; DICOM's signature stands behind a preamble. */
  static final int HEAD_BYTES = 132;

  private static final int DICOM_PREAMBLE_BYTES = 128;

  /** Major brands of ISO base media files that hold still pictures (ISO/IEC 23008-12). */
  private static final Set<String> STILL_BRANDS =
      Set.of("heic", "heix", "heim", "heis", "hevc", "hevx", "mif1", "msf1", "avif", "avis");

  private static final byte[] PNG_SIGNATURE = {(byte) 0x89, 'P', 'N', 'G', '\r', '\n', 0x1A, '\n'};

  static FileKind of(byte[] head) {
    if (startsWith(head, 0, new byte[] {(byte) 0xFF, (byte) 0xD8})) {
      return JPEG;
    }
    if (startsWith(head, 4, "ftyp")) {
      return head.length >= 12
              && STILL_BRANDS.contains(new String(head, 8, 4, StandardCharsets.ISO_8859_1))
          ? HEIF
          : VIDEO;
    }
    if (startsWith(head, 0, PNG_SIGNATURE)) {
      return PNG;
    }
    if (startsWith(head, DICOM_PREAMBLE_BYTES, "DICM")) {
      return DICOM;
    }
    return byText(head);
  }

  private static FileKind byText(byte[] head) {
    if (startsWith(head, 0, "GIF8")) {
      return GIF;
    }
    if (startsWith(head, 0, "RIFF")) {
      return startsWith(head, 8, "WEBP") ? WEBP : startsWith(head, 8, "AVI ") ? VIDEO : OTHER;
    }
    if (startsWith(head, 0, "II*\0") || startsWith(head, 0, "MM\0*")) {
      return TIFF;
    }
    if (startsWith(head, 0, "\0\0\0\fJXL ")
        || startsWith(head, 0, new byte[] {(byte) 0xFF, 0x0A})) {
      return JPEG_XL;
    }
    if (startsWith(head, 0, "\0\0\0\fjP  ")) {
      return JPEG_2000;
    }
    if (startsWith(head, 0, "%PDF-")) {
      return PDF;
    }
    if (startsWith(head, 0, "BM") && head.length > 13 && head[6] == 0 && head[8] == 0) {
      return BMP;
    }
    if (startsWith(head, 4, "moov") || startsWith(head, 4, "mdat") || startsWith(head, 4, "wide")) {
      return VIDEO;
    }
    return allZero(head) ? ZEROS : OTHER;
  }

  private static boolean allZero(byte[] head) {
    for (byte b : head) {
      if (b != 0) {
        return false;
      }
    }
    return head.length > 0;
  }

  private static boolean startsWith(byte[] head, int at, String signature) {
    return startsWith(head, at, signature.getBytes(StandardCharsets.ISO_8859_1));
  }

  private static boolean startsWith(byte[] head, int at, byte[] signature) {
    if (head.length < at + signature.length) {
      return false;
    }
    for (int i = 0; i < signature.length; i++) {
      if (head[at + i] != signature[i]) {
        return false;
      }
    }
    return true;
  }
}
