package org.vestibule.dicom;

import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.vestibule.dicom.CharacterSets.CodeElement;

/**
 * Reads one value field with ISO 2022 code extensions (PS3.3 C.12.1.1.2, PS3.5 6.1.2.5): escape
 * sequences choose the code element for low bytes (G0) and for high bytes (G1), and the first
 * term's come back at the end of a line, a value or a component of a name.
 */
final class EscapedText {

  private static final int ESCAPE = 0x1B;
  private static final char UNREADABLE = '\uFFFD';

  private final Vr vr;
  private final @Nullable CodeElement firstLow;
  private final @Nullable CodeElement firstHigh;
  private @Nullable CodeElement low;
  private @Nullable CodeElement high;
  private final StringBuilder text = new StringBuilder();

  EscapedText(List<String> terms, Vr vr) {
    this.vr = vr;
    List<CodeElement> first = CharacterSets.elements(terms.get(0));
    this.firstLow = first.stream().filter(e -> !e.high()).findFirst().orElse(null);
    this.firstHigh = first.stream().filter(CodeElement::high).findFirst().orElse(null);
    this.low = firstLow;
    this.high = firstHigh;
  }

  String read(byte[] raw) {
    int at = 0;
    while (at < raw.length) {
      int b = raw[at] & 0xFF;
      if (b == ESCAPE) {
        at = escape(raw, at);
      } else if (b >= 0x80) {
        at = character(raw, at, high);
      } else if (low != null && low.bytesPerCharacter() == 2 && b > 0x20 && b < 0x7F) {
        at = character(raw, at, low);
      } else {
        at = lowByte(raw, at);
      }
    }
    return text.toString();
  }

  private int escape(byte[] raw, int at) {
    Optional<CodeElement> found = CharacterSets.escapedAt(raw, at + 1);
    if (found.isEmpty()) {
      text.append(UNREADABLE);
      return at + 1;
    }
    if (found.get().high()) {
      high = found.get();
    } else {
      low = found.get();
    }
    return at + 1 + found.get().escape().length();
  }

  private int character(byte[] raw, int at, @Nullable CodeElement element) {
    if (element == null || at + element.bytesPerCharacter() > raw.length) {
      text.append(UNREADABLE);
      return at + 1;
    }
    text.append(new String(raw, at, element.bytesPerCharacter(), element.charset()));
    return at + element.bytesPerCharacter();
  }

  /** A single byte below 80H: a delimiter always stays itself, whatever the code element. */
  private int lowByte(byte[] raw, int at) {
    char c = (char) raw[at];
    if (isDelimiter(c)) {
      text.append(c);
      low = firstLow;
      high = firstHigh;
      return at + 1;
    }
    if (c < 0x20 || low == null || low.bytesPerCharacter() == 2) {
      text.append(c);
      return at + 1;
    }
    return character(raw, at, low);
  }

  private boolean isDelimiter(char c) {
    return switch (c) {
      case '\t', '\n', '\f', '\r' -> true;
      case '\\' -> vr.dividesAtBackslash();
      case '^', '=' -> vr == Vr.PN;
      default -> false;
    };
  }
}
