package org.vestibule.dicom;

import java.nio.ByteBuffer;
import java.nio.CharBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;

/**
 * How text is read under one value of Specific Character Set (PS3.3 C.12.1.1.2).
 *
 * <p>A byte that the set doesn't define is read as U+FFFD, the replacement character.
 *
 * @param terms the values of Specific Character Set; none for the default repertoire
 */
record Repertoire(List<String> terms) {

  static final Repertoire DEFAULT = new Repertoire(List.of());
  static final Repertoire UTF_8 = new Repertoire(List.of("ISO_IR 192"));

  Repertoire {
    terms = List.copyOf(terms);
  }

  /** The repertoire of a data set, or the one around it if it states none. */
  static Repertoire of(DataSet data, Repertoire around) {
    List<String> terms = data.strings(Tags.SpecificCharacterSet);
    return terms.isEmpty() ? around : new Repertoire(terms);
  }

  /** The values that these bytes hold, padding included. */
  List<String> decode(Vr vr, Bytes bytes) {
    byte[] raw = bytes.toArray();
    String text = text(vr, raw);
    return vr.dividesAtBackslash() ? List.of(text.split("\\\\", -1)) : List.of(text);
  }

  private String text(Vr vr, byte[] raw) {
    if (!vr.followsCharacterSet() || terms.isEmpty()) {
      return new String(raw, StandardCharsets.US_ASCII);
    }
    Optional<Charset> alone = charset();
    if (alone.isPresent() && !terms.get(0).equals("ISO_IR 13")) {
      return new String(raw, alone.get());
    }
    return new EscapedText(terms, vr).read(raw);
  }

  /** These values as bytes without padding; empty if this repertoire can't be written with them. */
  Optional<byte[]> encode(Vr vr, List<String> values) {
    String text = String.join("\\", values);
    Optional<Charset> charset =
        vr.followsCharacterSet() ? charset() : Optional.of(StandardCharsets.US_ASCII);
    try {
      ByteBuffer encoded =
          charset.orElse(StandardCharsets.US_ASCII).newEncoder().encode(CharBuffer.wrap(text));
      byte[] bytes = new byte[encoded.remaining()];
      encoded.get(bytes);
      return Optional.of(bytes);
    } catch (CharacterCodingException unfit) {
      return Optional.empty();
    }
  }

  private Optional<Charset> charset() {
    if (terms.isEmpty()) {
      return Optional.of(StandardCharsets.US_ASCII);
    }
    if (terms.size() > 1) {
      return Optional.empty();
    }
    return equals(UTF_8) ? Optional.of(StandardCharsets.UTF_8) : CharacterSets.alone(terms.get(0));
  }
}
