package org.vestibule.assign;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.vestibule.base.Outcome;

class NamePatternTest {

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      nullValues = "-",
      textBlock =
          """
          {patient}/{date}/*          | 00417/2026-03-11/IMG_1.JPG    | date=2026-03-11 patient=00417
          {patient}/{date}/*          | 00417/2026-03-11/more/x.jpg   | -
          {patient}/**/*              | 00417/a/b/x.jpg               | patient=00417
          {patient}/**/*              | 00417/x.jpg                   | patient=00417
          {patient}_{view}_{teeth}    | 00417_upper-occlusal_16.jpg   | patient=00417 teeth=16 view=upper-occlusal
          {patient}_{view}_{teeth}    | a/00417_upper-occlusal_16.jpg | -
          Photos/{visit}/*            | PHOTOS/V1/x.jpg               | visit=v1
          {patient}.{date}            | 00417.2026-03-11.jpg          | date=2026-03-11 patient=00417
          {patient}_{view}            | 4_1_frontal.jpg               | unclear
          *_{patient}                 | a_b_c.jpg                     | unclear
          a+({patient})               | a+(7).jpg                     | patient=7
          """)
  void readsNames(String pattern, String name, @Nullable String said) {
    String read =
        NamePattern.parse(pattern)
            .orThrow()
            .read(name)
            .map(r -> r.unclear() ? "unclear" : words(r.said()))
            .orElse("-");
    assertThat(read).isEqualTo(said == null ? "-" : said);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          {name}/*              | a name pattern has {name}, which is not known or stands there twice
          {patient}/{patient}   | a name pattern has {patient}, which is not known or stands there twice
          {patient/*            | a name pattern has a brace without its partner
          photos/*              | a name pattern says nothing
          """)
  void refusesPatternsThatMeanNothing(String pattern, String reason) {
    Outcome<NamePattern> parsed = NamePattern.parse(pattern);
    assertThat(parsed).isInstanceOf(Outcome.Refused.class);
    assertThat(((Outcome.Refused<NamePattern>) parsed).reason()).isEqualTo(reason);
  }

  @Test
  void patternsThatDisagreeAreUnclear() {
    NameFacts facts =
        NameFacts.of(
            List.of(
                NamePattern.parse("{patient}/*").orThrow(),
                NamePattern.parse("*/{patient}").orThrow()),
            "1/2.jpg");
    assertThat(facts.unclear()).isTrue();
    assertThat(facts.get("patient")).isEmpty();
  }

  private static String words(Map<String, String> said) {
    StringBuilder words = new StringBuilder();
    new TreeMap<>(said)
        .forEach((place, what) -> words.append(' ').append(place).append('=').append(what));
    return words.toString().strip();
  }
}
