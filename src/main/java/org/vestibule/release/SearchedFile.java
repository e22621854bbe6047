package org.vestibule.release;

import java.util.ArrayList;
import java.util.List;

/** What of a finished file is searched: all its bytes but coded picture data, and its fields. */
final class SearchedFile {

  final List<byte[]> bytes = new ArrayList<>();
  final List<String> fields = new ArrayList<>();

  void text(String text) {
    fields.add(text);
  }
}
