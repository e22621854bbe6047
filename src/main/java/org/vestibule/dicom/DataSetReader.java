package org.vestibule.dicom;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.vestibule.base.Outcome;

/**
 * Reads a data set, little endian, explicit or implicit VR (PS3.5 chapter 7).
 *
 * <p>Nothing is allocated before its length is known to lie inside the bytes given; nesting and the
 * number of elements are bounded. Group lengths (gggg,0000) are retired and dropped.
 */
public final class DataSetReader {

  static final int DEEPEST = 32;
  static final int MOST_ELEMENTS = 1_000_000;

  private final Source source;
  private int elements;

  private DataSetReader(Source source) {
    this.source = source;
  }

  /** The data set that these bytes hold, or where and why they can't be one. */
  public static Outcome<DataSet> read(byte[] bytes, TransferSyntax syntax) {
    return read(new Source(bytes, 0, bytes.length), syntax);
  }

  static Outcome<DataSet> read(Source source, TransferSyntax syntax) {
    try {
      DataSetReader reader = new DataSetReader(source);
      Scope scope = new Scope(syntax.isExplicit(), Repertoire.DEFAULT, null, 0);
      return Outcome.done(reader.dataSet(scope, source.end(), false));
    } catch (Refusal refusal) {
      return refusal.outcome();
    }
  }

  /** What holds for the data set being read. */
  private record Scope(
      boolean explicit, Repertoire repertoire, @Nullable DataSet around, int depth) {

    Scope inside(DataSet data) {
      return new Scope(explicit, Repertoire.of(data, repertoire), data, depth + 1);
    }

    Scope implicit() {
      return new Scope(false, repertoire, around, depth);
    }
  }

  /** Reads elements up to the end, or past the item delimiter if one is due. */
  private DataSet dataSet(Scope scope, long end, boolean delimited) {
    if (scope.depth() > DEEPEST) {
      throw source.refusal("sequences are nested more than " + DEEPEST + " deep");
    }
    DataSet data = new DataSet();
    long last = -1;
    while (source.position() < end) {
      int tag = source.tag();
      if (delimited && tag == Tags.ItemDelimitationItem) {
        source.zeroLength();
        return data;
      }
      long order = Integer.toUnsignedLong(tag);
      if (order <= last) {
        throw source.refusal(Tags.text(tag) + " comes after " + Tags.text((int) last));
      }
      last = order;
      element(tag, data, scope, end);
    }
    if (delimited) {
      throw source.refusal("an item has no end");
    }
    return data;
  }

  private void element(int tag, DataSet data, Scope scope, long end) {
    if (++elements > MOST_ELEMENTS) {
      throw source.refusal("there are more than " + MOST_ELEMENTS + " elements");
    }
    if (Tags.group(tag) == 0xFFFE) {
      throw source.refusal(Tags.text(tag) + " stands outside a sequence");
    }
    Vr vr = scope.explicit() ? source.vr(tag) : implicitVr(tag, data, scope);
    long length = scope.explicit() && !vr.hasLongForm() ? source.uint16() : source.uint32();
    Value value =
        length == Source.UNDEFINED
            ? undefined(tag, vr, scope.inside(data), end)
            : defined(tag, vr, length, scope.inside(data), end);
    if (Tags.element(tag) != 0) {
      data.put(new Element(tag, value instanceof Value.Items ? Vr.SQ : vr, value));
    }
  }

  private Value defined(int tag, Vr vr, long length, Scope scope, long end) {
    long stop = source.stop(tag, length, end);
    if (vr == Vr.SQ) {
      return items(scope, stop, false);
    }
    if (vr.isBinaryNumber() && length % vr.unitBytes() != 0) {
      throw source.refusal(
          Tags.text(tag) + " is " + length + " bytes long, no multiple of " + vr.unitBytes());
    }
    if ((length & 1) != 0) {
      throw source.refusal(Tags.text(tag) + " has the odd length " + length);
    }
    Bytes bytes = source.bytes((int) length);
    return vr.isText() ? new Value.EncodedText(bytes, scope.repertoire()) : new Value.Binary(bytes);
  }

  private Value undefined(int tag, Vr vr, Scope scope, long end) {
    if (vr == Vr.SQ) {
      return items(scope, end, true);
    }
    if (vr == Vr.UN) {
      return items(scope.implicit(), end, true);
    }
    if (scope.explicit() && (vr == Vr.OB || vr == Vr.OW)) {
      return fragments(end);
    }
    throw source.refusal(Tags.text(tag) + " " + vr + " has no length");
  }

  private Value items(Scope scope, long end, boolean delimited) {
    List<Value.Item> items = new ArrayList<>();
    while (source.position() < end) {
      int tag = source.tag();
      if (delimited && tag == Tags.SequenceDelimitationItem) {
        source.zeroLength();
        return new Value.Items(items, true);
      }
      if (tag != Tags.Item) {
        throw source.refusal("an item was due but " + Tags.text(tag) + " stands there");
      }
      if (++elements > MOST_ELEMENTS) {
        throw source.refusal("there are more than " + MOST_ELEMENTS + " elements");
      }
      long length = source.uint32();
      boolean open = length == Source.UNDEFINED;
      long stop = open ? end : source.stop(tag, length, end);
      items.add(new Value.Item(dataSet(scope, stop, open), open));
    }
    if (delimited) {
      throw source.refusal("a sequence has no end");
    }
    return new Value.Items(items, false);
  }

  private Value fragments(long end) {
    List<Bytes> parts = new ArrayList<>();
    while (source.position() < end) {
      int tag = source.tag();
      long length = source.uint32();
      if (tag == Tags.SequenceDelimitationItem && length == 0) {
        Bytes offsets = parts.isEmpty() ? Bytes.NONE : parts.remove(0);
        return new Value.Fragments(offsets, parts);
      }
      if (tag != Tags.Item) {
        throw source.refusal("a fragment was due but " + Tags.text(tag) + " stands there");
      }
      if ((length & 1) != 0) {
        throw source.refusal("a fragment has the odd length " + length);
      }
      source.stop(tag, length, end);
      parts.add(source.bytes((int) length));
    }
    throw source.refusal("the encapsulated pixel data have no end");
  }

  /** PS3.5 A.1: the dictionary's, decided by other elements where it leaves a choice. */
  private static Vr implicitVr(int tag, DataSet data, Scope scope) {
    List<Vr> vrs = Dictionary.entry(tag).map(Dictionary.Entry::vrs).orElse(List.of());
    if (vrs.contains(Vr.OW)) {
      return Vr.OW;
    }
    if (vrs.contains(Vr.US) && vrs.contains(Vr.SS)) {
      return isSigned(data, scope) ? Vr.SS : Vr.US;
    }
    return Dictionary.vr(tag);
  }

  private static boolean isSigned(DataSet data, Scope scope) {
    DataSet describing =
        !data.contains(Tags.PixelRepresentation) && scope.around() != null ? scope.around() : data;
    return describing.integer(Tags.PixelRepresentation).orElse(0) == 1;
  }
}
