package org.vestibule.dicom;

import java.util.Optional;

/**
 * The value representations of PS3.5 6.2: how a value is written, how long it may be, with what it
 * is padded.
 */
public enum Vr {
  AE(Form.TEXT, 16, false),
  AS(Form.TEXT, 4, false),
  AT(Form.BINARY, 4, false),
  CS(Form.TEXT, 16, false),
  DA(Form.TEXT, 8, false),
  DS(Form.TEXT, 16, false),
  DT(Form.TEXT, 26, false),
  FD(Form.BINARY, 8, false),
  FL(Form.BINARY, 4, false),
  IS(Form.TEXT, 12, false),
  LO(Form.CODED_TEXT, 64, false),
  LT(Form.CODED_PARAGRAPH, 10240, false),
  OB(Form.BYTES, 1, true),
  OD(Form.BYTES, 8, true),
  OF(Form.BYTES, 4, true),
  OL(Form.BYTES, 4, true),
  OV(Form.BYTES, 8, true),
  OW(Form.BYTES, 2, true),
  /** The limit holds for each of up to three component groups. */
  PN(Form.CODED_TEXT, 64, false),
  SH(Form.CODED_TEXT, 16, false),
  SL(Form.BINARY, 4, false),
  SQ(Form.SEQUENCE, 0, true),
  SS(Form.BINARY, 2, false),
  ST(Form.CODED_PARAGRAPH, 1024, false),
  SV(Form.BINARY, 8, true),
  TM(Form.TEXT, 14, false),
  UC(Form.CODED_TEXT, Integer.MAX_VALUE, true),
  UI(Form.TEXT, 64, false),
  UL(Form.BINARY, 4, false),
  UN(Form.BYTES, 1, true),
  UR(Form.PARAGRAPH, Integer.MAX_VALUE, true),
  US(Form.BINARY, 2, false),
  UT(Form.CODED_PARAGRAPH, Integer.MAX_VALUE, true),
  UV(Form.BINARY, 8, true);

  private enum Form {
    /** Values in the default repertoire, divided by backslashes. */
    TEXT,
    /** One value in the default repertoire. */
    PARAGRAPH,
    /** Values in the data set's character set, divided by backslashes. */
    CODED_TEXT,
    /** One value in the data set's character set. */
    CODED_PARAGRAPH,
    /** Numbers of fixed size. */
    BINARY,
    /** One stream of bytes. */
    BYTES,
    SEQUENCE
  }

  private final Form form;
  private final int size;
  private final boolean longForm;

  Vr(Form form, int size, boolean longForm) {
    this.form = form;
    this.size = size;
    this.longForm = longForm;
  }

  /** The representation that these two letters name. */
  public static Optional<Vr> of(String letters) {
    for (Vr vr : values()) {
      if (vr.name().equals(letters)) {
        return Optional.of(vr);
      }
    }
    return Optional.empty();
  }

  /** True if the value is characters. */
  public boolean isText() {
    return form == Form.TEXT
        || form == Form.PARAGRAPH
        || form == Form.CODED_TEXT
        || form == Form.CODED_PARAGRAPH;
  }

  /** True if the value's bytes depend on Specific Character Set (PS3.5 6.1.2.3). */
  public boolean followsCharacterSet() {
    return form == Form.CODED_TEXT || form == Form.CODED_PARAGRAPH;
  }

  /** True if a backslash in the value divides it into several values (PS3.5 6.4). */
  public boolean dividesAtBackslash() {
    return form == Form.TEXT || form == Form.CODED_TEXT;
  }

  /** True if the value is numbers of {@link #unitBytes} each, any count of them. */
  public boolean isBinaryNumber() {
    return form == Form.BINARY;
  }

  /** True if the value is one stream of bytes. */
  public boolean isBytes() {
    return form == Form.BYTES;
  }

  /** The longest text value in characters; meaningless for other forms. */
  public int maximumCharacters() {
    return size;
  }

  /** The size of one number, or of one word of a byte stream, in bytes; 1 for text. */
  public int unitBytes() {
    return isText() || form == Form.SEQUENCE ? 1 : size;
  }

  /** True if explicit VR writes two reserved bytes and a 32-bit length (PS3.5 7.1.2). */
  public boolean hasLongForm() {
    return longForm;
  }

  /** The byte that makes a value's length even: a space for text, NUL for UI and bytes. */
  public byte padding() {
    return (byte) (isText() && this != UI ? ' ' : 0);
  }

  /** True if spaces before a value carry no meaning, as well as those after it (PS3.5 6.2). */
  boolean ignoresLeadingSpaces() {
    return form == Form.TEXT || this == LO || this == SH;
  }
}
