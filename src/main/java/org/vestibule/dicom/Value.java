package org.vestibule.dicom;

import java.util.List;

/** What an element holds, in one of four shapes. */
sealed interface Value {

  /** Text values as they were given; the writer encodes them. */
  record Text(List<String> values) implements Value {
    public Text {
      values = List.copyOf(values);
    }
  }

  /** Text as it stands in a file: bytes with their padding, and how to read them. */
  record EncodedText(Bytes bytes, Repertoire repertoire) implements Value {}

  /** Numbers or a byte stream, little endian, without padding that we would add. */
  record Binary(Bytes bytes) implements Value {}

  /**
   * The items of a sequence.
   *
   * @param undefinedLength whether the file marks the sequence's end instead of giving its length
   */
  record Items(List<Item> items, boolean undefinedLength) implements Value {
    public Items {
      items = List.copyOf(items);
    }
  }

  /** One item; its data set is never handed out, only copies of it. */
  record Item(DataSet data, boolean undefinedLength) {}

  /** Encapsulated pixel data (PS3.5 A.4): the Basic Offset Table, then the fragments. */
  record Fragments(Bytes offsetTable, List<Bytes> fragments) implements Value {
    public Fragments {
      fragments = List.copyOf(fragments);
    }
  }
}
