package org.vestibule.card;

import java.util.List;

/** Printed cards, and what could not be printed as it was given. */
public final class CardSheet {

  private final byte[] pdf;
  private final List<String> warnings;

  CardSheet(byte[] pdf, List<String> warnings) {
    this.pdf = pdf.clone();
    this.warnings = List.copyOf(warnings);
  }

  /** A PDF file, A4 lying, four cards to a page. */
  public byte[] pdf() {
    return pdf.clone();
  }

  /** Sentences without a patient's name. */
  public List<String> warnings() {
    return warnings;
  }
}
