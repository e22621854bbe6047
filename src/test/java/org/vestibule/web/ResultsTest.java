package org.vestibule.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.vestibule.flow.Browse;
import org.vestibule.words.Language;

/** How many photographs the page of results says there are. */
class ResultsTest {

  private static String said(Language language, int total, boolean more) {
    return Results.count(
        PageWords.of(language), new Browse.Answer(List.of(), List.of(), total, more));
  }

  @Test
  void whatWasNotCountedToItsEndIsMoreThanWhatWasCounted() {
    assertThat(said(Language.ENGLISH, 1, false)).isEqualTo("1 photograph");
    assertThat(said(Language.ENGLISH, 1000, false)).isEqualTo("1000 photographs");
    assertThat(said(Language.ENGLISH, 1000, true)).isEqualTo("More than 1000 photographs");
    assertThat(said(Language.GERMAN, 1000, true)).isEqualTo("Mehr als 1000 Fotos");
  }
}
