package org.vestibule.dicom;

import java.nio.ByteBuffer;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;

/** One data element: tag, value representation and value. It never changes. */
public final class Element {

  private final int tag;
  private final Vr vr;
  private final Value value;

  Element(int tag, Vr vr, Value value) {
    this.tag = tag;
    this.vr = vr;
    this.value = value;
  }

  public int tag() {
    return tag;
  }

  public Vr vr() {
    return vr;
  }

  /** The standard's keyword, or the tag in parentheses. */
  public String keyword() {
    return Dictionary.keyword(tag);
  }

  Value value() {
    return value;
  }

  /** True if the element has no value at all, or a sequence no item. */
  public boolean isEmpty() {
    if (value instanceof Value.Items items) {
      return items.items().isEmpty();
    }
    if (value instanceof Value.Fragments fragments) {
      return fragments.fragments().isEmpty();
    }
    if (vr.isText()) {
      return strings().isEmpty();
    }
    return value instanceof Value.Binary binary && binary.bytes().length() == 0;
  }

  /** How many values there are (PS3.5 6.4): a sequence or a byte stream counts as one. */
  public int multiplicity() {
    if (isEmpty()) {
      return 0;
    }
    if (vr.isText()) {
      return strings().size();
    }
    return vr.isBinaryNumber() ? bytes().length() / vr.unitBytes() : 1;
  }

  /**
   * The values as text, without the padding and the spaces that carry no meaning; numbers in
   * decimal, tags as eight hexadecimal digits; nothing for sequences and byte streams.
   */
  public List<String> strings() {
    if (value instanceof Value.Text text) {
      return trimmed(text.values());
    }
    if (value instanceof Value.EncodedText text) {
      return trimmed(text.repertoire().decode(vr, text.bytes()));
    }
    return vr.isBinaryNumber() ? numbers() : List.of();
  }

  private List<String> trimmed(List<String> raw) {
    List<String> values = raw.stream().map(this::trim).toList();
    boolean nothing = values.isEmpty() || (values.size() == 1 && values.get(0).isEmpty());
    return nothing ? List.of() : values;
  }

  private String trim(String raw) {
    int end = raw.length();
    while (end > 0 && (raw.charAt(end - 1) == ' ' || raw.charAt(end - 1) == 0)) {
      end--;
    }
    int start = 0;
    while (vr.ignoresLeadingSpaces() && start < end && raw.charAt(start) == ' ') {
      start++;
    }
    return raw.substring(start, end);
  }

  private List<String> numbers() {
    List<String> numbers = new ArrayList<>();
    ByteBuffer view = bytes().view();
    while (view.remaining() >= vr.unitBytes()) {
      numbers.add(number(view));
    }
    return numbers;
  }

  private String number(ByteBuffer view) {
    return switch (vr) {
      case US -> Integer.toString(Short.toUnsignedInt(view.getShort()));
      case SS -> Short.toString(view.getShort());
      case UL -> Integer.toUnsignedString(view.getInt());
      case SL -> Integer.toString(view.getInt());
      case UV -> Long.toUnsignedString(view.getLong());
      case SV -> Long.toString(view.getLong());
      case FL -> Float.toString(view.getFloat());
      case FD -> Double.toString(view.getDouble());
      case AT -> {
        int group = Short.toUnsignedInt(view.getShort());
        yield Tags.digits(group << 16 | Short.toUnsignedInt(view.getShort()));
      }
      default -> throw new IllegalStateException(vr + " is not a binary number");
    };
  }

  /** The value's bytes, of numbers and byte streams only. */
  Bytes bytes() {
    if (value instanceof Value.Binary binary) {
      return binary.bytes();
    }
    return Bytes.NONE;
  }

  /** The bytes of a byte stream or of binary numbers (little endian); none for other shapes. */
  public byte[] toByteArray() {
    return bytes().toArray();
  }

  /** Copies of a sequence's items. */
  public List<DataSet> items() {
    if (value instanceof Value.Items items) {
      return items.items().stream().map(item -> item.data().copy()).toList();
    }
    return List.of();
  }

  /** True if this is encapsulated pixel data (PS3.5 A.4). */
  public boolean isEncapsulated() {
    return value instanceof Value.Fragments;
  }

  /** Copies of the fragments of encapsulated pixel data, without the Basic Offset Table. */
  public List<byte[]> fragments() {
    if (value instanceof Value.Fragments fragments) {
      return fragments.fragments().stream().map(Bytes::toArray).toList();
    }
    return List.of();
  }

  /** The Basic Offset Table of encapsulated pixel data as bytes, mostly none. */
  public byte[] offsetTable() {
    return value instanceof Value.Fragments f ? f.offsetTable().toArray() : new byte[0];
  }

  /** An element of whole numbers, checked against what the representation can hold. */
  static Element ofIntegers(int tag, Vr vr, long[] numbers) {
    if (vr == Vr.IS || vr == Vr.DS) {
      return new Element(
          tag, vr, new Value.Text(Arrays.stream(numbers).mapToObj(Long::toString).toList()));
    }
    if (!vr.isBinaryNumber() || vr == Vr.AT) {
      throw unfit(tag, vr, "whole numbers");
    }
    byte[] bytes = Numbers.room(vr, numbers.length);
    ByteBuffer buffer = Numbers.littleEndian(bytes);
    for (long number : numbers) {
      Numbers.putInteger(tag, vr, number, buffer);
    }
    return new Element(tag, vr, new Value.Binary(Bytes.copyOf(bytes)));
  }

  /** An element of numbers with a fraction. */
  static Element ofNumbers(int tag, Vr vr, double[] numbers) {
    if (vr == Vr.DS) {
      return new Element(
          tag,
          vr,
          new Value.Text(Arrays.stream(numbers).mapToObj(Numbers::decimalString).toList()));
    }
    if (vr != Vr.FL && vr != Vr.FD) {
      throw unfit(tag, vr, "numbers with a fraction");
    }
    byte[] bytes = Numbers.room(vr, numbers.length);
    ByteBuffer buffer = Numbers.littleEndian(bytes);
    for (double number : numbers) {
      Numbers.putReal(vr, number, buffer);
    }
    return new Element(tag, vr, new Value.Binary(Bytes.copyOf(bytes)));
  }

  /** An element of values written as text, whatever the representation. */
  static Element ofStrings(int tag, Vr vr, List<String> values) {
    if (vr.isText()) {
      if (!vr.dividesAtBackslash() && values.size() > 1) {
        throw unfit(tag, vr, "more than one value");
      }
      return new Element(tag, vr, new Value.Text(values));
    }
    if (!vr.isBinaryNumber()) {
      throw unfit(tag, vr, "text");
    }
    byte[] bytes = Numbers.room(vr, values.size());
    ByteBuffer buffer = Numbers.littleEndian(bytes);
    for (String number : values) {
      Numbers.putText(tag, vr, number, buffer);
    }
    return new Element(tag, vr, new Value.Binary(Bytes.copyOf(bytes)));
  }

  static IllegalArgumentException unfit(int tag, Vr vr, String what) {
    return new IllegalArgumentException(
        Dictionary.keyword(tag)
            + " "
            + Tags.text(tag)
            + " has value representation "
            + vr
            + ", which doesn't take "
            + what);
  }

  /** Equal in tag, representation and value; how a file delimits its sequences is no matter. */
  @Override
  public boolean equals(Object other) {
    if (!(other instanceof Element that) || tag != that.tag || vr != that.vr) {
      return false;
    }
    if (vr.isText()) {
      return strings().equals(that.strings());
    }
    return value instanceof Value.Items
        ? that.value instanceof Value.Items && items().equals(that.items())
        : value.equals(that.value);
  }

  @Override
  public int hashCode() {
    return Objects.hash(tag, vr);
  }

  /** Keyword, tag and representation, never the value. */
  @Override
  public String toString() {
    return keyword() + " " + Tags.text(tag) + " " + vr;
  }
}
