package org.vestibule.dicom;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.LocalTime;
import java.time.OffsetDateTime;
import java.util.Arrays;
import java.util.Collection;
import java.util.Iterator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalLong;
import java.util.TreeMap;

/**
 * A data set: elements in ascending order of their tags (PS3.5 7.1).
 *
 * <p>A data set can be changed, but shares nothing: arrays and items are copied when they are put
 * in and when they are taken out. To change an item, take it out, change it and put the sequence
 * again. Where no representation is given it is the dictionary's usual one. Getters of one value
 * give the first; they are empty if the element is absent, has no value, or one of another form.
 */
public final class DataSet implements Iterable<Element> {

  private final TreeMap<Integer, Element> elements = new TreeMap<>(Integer::compareUnsigned);

  /** Puts text values; numbers and tags may be given as text too. */
  public DataSet put(int tag, String... values) {
    return put(Element.ofStrings(tag, Dictionary.vr(tag), List.of(values)));
  }

  /** Puts whole numbers, checked against the representation's range. */
  public DataSet put(int tag, long... numbers) {
    return put(Element.ofIntegers(tag, Dictionary.vr(tag), numbers));
  }

  /** Puts numbers with a fraction, as DS text of at most 16 characters, FL or FD. */
  public DataSet put(int tag, double... numbers) {
    return put(Element.ofNumbers(tag, Dictionary.vr(tag), numbers));
  }

  /** Puts a date as DA. */
  public DataSet put(int tag, LocalDate date) {
    return put(tag, Times.text(date));
  }

  /** Puts a time as TM, with a fraction of a second only if there is one. */
  public DataSet put(int tag, LocalTime time) {
    return put(tag, Times.text(time));
  }

  /** Puts a date and time as DT without an offset. */
  public DataSet put(int tag, LocalDateTime time) {
    return put(tag, Times.text(time));
  }

  /** Puts a date and time as DT with its offset from UTC. */
  public DataSet put(int tag, OffsetDateTime time) {
    return put(tag, Times.text(time));
  }

  /** Puts a sequence of these items. */
  public DataSet put(int tag, DataSet... items) {
    return put(tag, Arrays.asList(items));
  }

  /** Puts a sequence of these items, maybe none. */
  public DataSet put(int tag, Collection<DataSet> items) {
    if (Dictionary.vr(tag) != Vr.SQ) {
      throw Element.unfit(tag, Dictionary.vr(tag), "items");
    }
    List<Value.Item> copies =
        items.stream().map(item -> new Value.Item(item.copy(), false)).toList();
    return put(new Element(tag, Vr.SQ, new Value.Items(copies, false)));
  }

  /** Puts a byte stream, or binary numbers as little-endian bytes. */
  public DataSet put(int tag, byte[] bytes) {
    return put(tag, Dictionary.vr(tag), bytes);
  }

  /** Puts a byte stream with a representation other than the usual one. */
  public DataSet put(int tag, Vr vr, byte[] bytes) {
    if (vr.isText() || vr == Vr.SQ) {
      throw Element.unfit(tag, vr, "bytes");
    }
    return put(new Element(tag, vr, new Value.Binary(Bytes.copyOf(bytes))));
  }

  /** Puts values as text with a representation other than the usual one. */
  public DataSet put(int tag, Vr vr, String... values) {
    return put(Element.ofStrings(tag, vr, List.of(values)));
  }

  /**
   * Puts encapsulated pixel data with an empty Basic Offset Table (PS3.5 A.4); a fragment of odd
   * length is padded with one NUL.
   */
  public DataSet putFragments(int tag, byte[]... fragments) {
    List<Bytes> even =
        Arrays.stream(fragments)
            .map(f -> Bytes.copyOf(f, 0, Math.addExact(f.length, f.length & 1)))
            .toList();
    return put(new Element(tag, Vr.OB, new Value.Fragments(Bytes.NONE, even)));
  }

  /** The same for one fragment that is not copied: nobody may write into it any more. */
  public DataSet putFragmentAsIs(int tag, byte[] fragment) {
    if ((fragment.length & 1) != 0) {
      return putFragments(tag, fragment);
    }
    List<Bytes> one = List.of(Bytes.owning(fragment));
    return put(new Element(tag, Vr.OB, new Value.Fragments(Bytes.NONE, one)));
  }

  /** Puts an element without a value, as type 2 allows. */
  public DataSet putEmpty(int tag) {
    Vr vr = Dictionary.vr(tag);
    if (vr == Vr.SQ) {
      return put(tag, List.of());
    }
    return put(
        new Element(
            tag, vr, vr.isText() ? new Value.Text(List.of()) : new Value.Binary(Bytes.NONE)));
  }

  /** Puts an element of another data set, in place of any with its tag. */
  public DataSet put(Element element) {
    elements.put(element.tag(), element);
    return this;
  }

  public DataSet remove(int tag) {
    elements.remove(tag);
    return this;
  }

  public boolean contains(int tag) {
    return elements.containsKey(tag);
  }

  public Optional<Element> element(int tag) {
    return Optional.ofNullable(elements.get(tag));
  }

  /** The first value as text; numbers in decimal. */
  public Optional<String> string(int tag) {
    return strings(tag).stream().findFirst();
  }

  /** All values as text; none if absent. */
  public List<String> strings(int tag) {
    return element(tag).map(Element::strings).orElse(List.of());
  }

  /** The first value, if it is a whole number of at most 64 bits with sign. */
  public OptionalLong integer(int tag) {
    Optional<BigDecimal> first = decimal(tag);
    if (first.isEmpty()) {
      return OptionalLong.empty();
    }
    try {
      return OptionalLong.of(first.get().longValueExact());
    } catch (ArithmeticException notWhole) {
      return OptionalLong.empty();
    }
  }

  /** The first value, if it is a number. */
  public OptionalDouble number(int tag) {
    return decimal(tag).map(d -> OptionalDouble.of(d.doubleValue())).orElse(OptionalDouble.empty());
  }

  /** The first value exactly, if it is a finite number. */
  public Optional<BigDecimal> decimal(int tag) {
    return string(tag).flatMap(Numbers::parse);
  }

  /** The first value, if it is a date (DA). */
  public Optional<LocalDate> date(int tag) {
    return string(tag).flatMap(Times::date);
  }

  /** The first value, if it is a time (TM); parts that are left out are zero. */
  public Optional<LocalTime> time(int tag) {
    return string(tag).flatMap(Times::time);
  }

  /** Copies of a sequence's items; none if absent or not a sequence. */
  public List<DataSet> items(int tag) {
    return element(tag).map(Element::items).orElse(List.of());
  }

  /** A copy of a sequence's first item. */
  public Optional<DataSet> item(int tag) {
    return items(tag).stream().findFirst();
  }

  /** The bytes of a byte stream or of binary numbers; none if absent. */
  public byte[] bytes(int tag) {
    return element(tag).map(Element::toByteArray).orElseGet(() -> new byte[0]);
  }

  /** The fragments of encapsulated pixel data; none if absent or not encapsulated. */
  public List<byte[]> fragments(int tag) {
    return element(tag).map(Element::fragments).orElse(List.of());
  }

  public int size() {
    return elements.size();
  }

  public boolean isEmpty() {
    return elements.isEmpty();
  }

  /** A data set of the same elements that can be changed on its own. */
  public DataSet copy() {
    DataSet copy = new DataSet();
    copy.elements.putAll(elements);
    return copy;
  }

  /** The elements in ascending order of their tags; removing through the iterator is refused. */
  @Override
  public Iterator<Element> iterator() {
    return List.copyOf(elements.values()).iterator();
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof DataSet that && elements.equals(that.elements);
  }

  @Override
  public int hashCode() {
    return elements.hashCode();
  }

  /** How many elements, never their values. */
  @Override
  public String toString() {
    return "data set of " + elements.size() + " elements";
  }
}
