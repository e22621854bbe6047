package org.vestibule.dicom;

import java.io.ByteArrayOutputStream;
import java.util.Arrays;
import java.util.List;
import org.vestibule.base.Outcome;

/**
 * Lays a data set down as bytes, little endian, explicit or implicit VR (PS3.5 chapter 7).
 *
 * <p>Text that was read under the same Specific Character Set is written back byte for byte; other
 * text is encoded anew. Sequences keep the way in which they state their end.
 */
public final class DataSetWriter {

  private static final long UNDEFINED = 0xFFFFFFFFL;
  private static final int SHORT_LIMIT = 0xFFFE;

  private static final byte[] NOTHING = new byte[0];

  private final boolean explicit;

  private DataSetWriter(boolean explicit) {
    this.explicit = explicit;
  }

  /** The bytes of a data set, or why it can't be written so. */
  public static Outcome<byte[]> write(DataSet data, TransferSyntax syntax) {
    return write(NOTHING, data, syntax);
  }

  /** The same after bytes that stand before it in one file. */
  static Outcome<byte[]> write(byte[] head, DataSet data, TransferSyntax syntax) {
    try {
      return Outcome.done(
          new DataSetWriter(syntax.isExplicit()).bytes(data, Repertoire.DEFAULT, head));
    } catch (Refusal refusal) {
      return refusal.outcome();
    }
  }

  private byte[] bytes(DataSet data, Repertoire around, byte[] head) {
    Repertoire repertoire = Repertoire.of(data, around);
    Assembly out = new Assembly();
    for (Element element : data) {
      element(element, repertoire, out);
    }
    return out.after(head);
  }

  private void element(Element element, Repertoire repertoire, Assembly out) {
    Value value = element.value();
    if (value instanceof Value.Items items) {
      items(element, items, repertoire, out);
    } else if (value instanceof Value.Fragments fragments) {
      fragments(element, fragments, out);
    } else {
      byte[] bytes = padded(element.vr(), bytes(element, repertoire));
      header(element, bytes.length, out);
      out.writeBytes(bytes);
    }
  }

  private static byte[] bytes(Element element, Repertoire repertoire) {
    if (element.value() instanceof Value.EncodedText text
        && (text.repertoire().equals(repertoire) || !element.vr().followsCharacterSet())) {
      return text.bytes().toArray();
    }
    if (!element.vr().isText()) {
      return element.toByteArray();
    }
    List<String> values = element.strings();
    return repertoire
        .encode(element.vr(), values)
        .orElseThrow(
            () ->
                new Refusal(
                    element + " holds characters that the data set's character set lacks",
                    "set SpecificCharacterSet to ISO_IR 192"));
  }

  private static byte[] padded(Vr vr, byte[] bytes) {
    if ((bytes.length & 1) == 0) {
      return bytes;
    }
    byte[] padded = Arrays.copyOf(bytes, Math.addExact(bytes.length, 1));
    padded[bytes.length] = vr.padding();
    return padded;
  }

  private void items(
      Element element, Value.Items items, Repertoire repertoire, ByteArrayOutputStream out) {
    ByteArrayOutputStream content = new ByteArrayOutputStream();
    for (Value.Item item : items.items()) {
      byte[] bytes = bytes(item.data(), repertoire, NOTHING);
      itemHeader(Tags.Item, item.undefinedLength() ? UNDEFINED : bytes.length, content);
      content.writeBytes(bytes);
      if (item.undefinedLength()) {
        itemHeader(Tags.ItemDelimitationItem, 0, content);
      }
    }
    header(element, items.undefinedLength() ? UNDEFINED : content.size(), out);
    out.writeBytes(content.toByteArray());
    if (items.undefinedLength()) {
      itemHeader(Tags.SequenceDelimitationItem, 0, out);
    }
  }

  private void fragments(Element element, Value.Fragments fragments, Assembly out) {
    if (!explicit) {
      throw new Refusal(
          element + " is encapsulated, which implicit VR can't hold",
          "write it with the transfer syntax of its compression");
    }
    header(element, UNDEFINED, out);
    itemHeader(Tags.Item, fragments.offsetTable().length(), out);
    out.writeBytes(fragments.offsetTable().toArray());
    for (Bytes fragment : fragments.fragments()) {
      itemHeader(Tags.Item, fragment.length(), out);
      out.append(fragment);
    }
    itemHeader(Tags.SequenceDelimitationItem, 0, out);
  }

  private void header(Element element, long length, ByteArrayOutputStream out) {
    tag(element.tag(), out);
    if (!explicit) {
      number(length, 4, out);
      return;
    }
    Vr vr = element.vr();
    out.write(vr.name().charAt(0));
    out.write(vr.name().charAt(1));
    if (vr.hasLongForm()) {
      number(0, 2, out);
      number(length, 4, out);
      return;
    }
    if (length > SHORT_LIMIT) {
      throw new Refusal(
          element + " is " + length + " bytes long, more than " + SHORT_LIMIT, "shorten its value");
    }
    number(length, 2, out);
  }

  private static void itemHeader(int tag, long length, ByteArrayOutputStream out) {
    tag(tag, out);
    number(length, 4, out);
  }

  private static void tag(int tag, ByteArrayOutputStream out) {
    number(Tags.group(tag), 2, out);
    number(Tags.element(tag), 2, out);
  }

  private static void number(long number, int bytes, ByteArrayOutputStream out) {
    for (int i = 0; i < bytes; i++) {
      out.write((int) (number >>> (8 * i)));
    }
  }
}
