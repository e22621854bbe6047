package org.vestibule.dicom;

import java.nio.charset.Charset;
import java.util.List;
import java.util.Optional;
import org.vestibule.base.ResourceTable;

/** The character sets that PS3.3 C.12.1.1.2 defines, from the table {@code character-sets.csv}. */
final class CharacterSets {

  /**
   * One code element.
   *
   * @param term the term without code extensions; empty if there is none
   * @param extensionTerm the term with code extensions; empty if there is none
   * @param high true if it is designated to G1 (bytes with the high bit), false for G0
   * @param escape what follows ESC to designate it
   * @param bytesPerCharacter 1 or 2
   */
  record CodeElement(
      String term,
      String extensionTerm,
      boolean high,
      String escape,
      int bytesPerCharacter,
      Charset charset) {}

  private static final String RESOURCE = "character-sets.csv";

  private static final class Table {
    static final List<CodeElement> ELEMENTS = load();
  }

  private CharacterSets() {}

  /** The charset of a term that stands alone, without code extensions. */
  static Optional<Charset> alone(String term) {
    return Table.ELEMENTS.stream()
        .filter(e -> e.term().equals(term) && !term.isEmpty())
        .map(CodeElement::charset)
        .findFirst();
  }

  /** The code elements of a term with or without code extensions; none if it isn't known. */
  static List<CodeElement> elements(String term) {
    String name = term.isEmpty() ? "ISO 2022 IR 6" : term;
    return Table.ELEMENTS.stream()
        .filter(e -> !e.escape().isEmpty())
        .filter(e -> e.extensionTerm().equals(name) || e.term().equals(name))
        .toList();
  }

  /** The code element whose escape sequence stands at this place, just after an ESC. */
  static Optional<CodeElement> escapedAt(byte[] bytes, int at) {
    return Table.ELEMENTS.stream()
        .filter(e -> !e.escape().isEmpty() && startsWith(bytes, at, e.escape()))
        .findFirst();
  }

  private static boolean startsWith(byte[] bytes, int at, String escape) {
    if (at + escape.length() > bytes.length) {
      return false;
    }
    for (int i = 0; i < escape.length(); i++) {
      if (bytes[at + i] != escape.charAt(i)) {
        return false;
      }
    }
    return true;
  }

  private static List<CodeElement> load() {
    return ResourceTable.lines(CharacterSets.class, RESOURCE).stream()
        .map(line -> line.split(",", -1))
        .map(
            c ->
                new CodeElement(
                    c[0],
                    c[1],
                    c[2].equals("G1"),
                    c[3],
                    Integer.parseInt(c[4]),
                    Charset.forName(c[5])))
        .toList();
  }
}
