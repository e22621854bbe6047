package org.vestibule.release;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.vestibule.dental.Teeth;
import org.vestibule.dental.Tooth;
import org.vestibule.words.Language;

/** The page's choices: views, and teeth where ISO 3950 has them. */
class HtmlSheetTest {

  private static SheetRow row(String view, int... teeth) {
    List<Tooth> named = Arrays.stream(teeth).mapToObj(iso -> Tooth.ofIso(iso).orThrow()).toList();
    return new SheetRow("copy-01", "R-1", "", view, Teeth.of(named), null, "AAAA", 4, 4);
  }

  private static String page(SheetRow... rows) {
    Sheet sheet =
        new Sheet(
            "Photographs: Teaching",
            List.of("Release 2026-001"),
            List.of(rows),
            new SheetWords(Language.ENGLISH));
    return new String(HtmlSheet.of(sheet, Set.of(Format.JPEG)), StandardCharsets.UTF_8);
  }

  private static List<String> found(String page, String pattern) {
    Matcher matcher = Pattern.compile(pattern).matcher(page);
    return matcher.results().map(result -> result.group(1)).toList();
  }

  /** ISO 3950: quadrants 1 to 4 clockwise as one looks at the patient, 18 at the top left. */
  @Test
  void theChartLiesAsOneLooksAtThePatient() {
    String page = page(row("Frontal", 11));
    String chart = page.substring(page.indexOf("<div class=\"chart\">"));
    assertThat(chart.indexOf("\u2190 patient&#39;s right"))
        .isPositive()
        .isLessThan(chart.indexOf("patient&#39;s left \u2192"));
    assertThat(found(chart, "grid-column:\\d+\" data-iso=\"(\\d+)\""))
        .isEqualTo(
            List.of(
                ("18 17 16 15 14 13 12 11 21 22 23 24 25 26 27 28"
                        + " 48 47 46 45 44 43 42 41 31 32 33 34 35 36 37 38")
                    .split(" ")));
    assertThat(found(chart, "grid-column:(\\d+)\" data-iso=\"[12]"))
        .isEqualTo(List.of("1 2 3 4 5 6 7 8 9 10 11 12 13 14 15 16".split(" ")));
    assertThat(page).contains("the left of this page is the patient&#39;s right");
  }

  @Test
  void milkTeethStandWithinWhereOneIsNamed() {
    String page = page(row("Frontal", 51));
    assertThat(found(page, "grid-column:\\d+\" data-iso=\"([5-8]\\d)\""))
        .isEqualTo(
            List.of("55 54 53 52 51 61 62 63 64 65 85 84 83 82 81 71 72 73 74 75".split(" ")));
    assertThat(found(page, "grid-column:(\\d+)\" data-iso=\"5"))
        .containsExactly("4", "5", "6", "7", "8");
  }

  @Test
  void eachChoiceHasItsButtonItsWordsAndWhatItHides() {
    String page = page(row("Frontal", 11, 21), row("Right buccal"), row("Frontal", 21));
    assertThat(found(page, "<input type=\"radio\" name=\"show\" id=\"(\\w+)\""))
        .containsExactly("all", "v1", "v2", "t11", "t21");
    assertThat(found(page, "<label for=\"(\\w+)\""))
        .containsExactly("all", "v1", "v2", "t11", "t21");
    assertThat(found(page, "<li class=\"([^\"]+)\"")).containsExactly("v1 t11 t21", "v2", "v1 t21");
    assertThat(found(page, "#(\\w+):checked~ul>li:not\\(\\.\\1\\)\\{display:none}"))
        .containsExactly("v1", "v2", "t11", "t21");
    assertThat(found(page, "#(\\w+):focus-visible~nav \\[for=\\1]"))
        .containsExactly("all", "v1", "v2", "t11", "t21");
    assertThat(page)
        .contains("All photographs (3)", "Frontal (2)", "Right buccal (1)")
        .contains("upper left central incisor (21), 2 photographs<")
        .doesNotContain("<script", "http:", "https:");
  }

  /** A patient may have a number as short as a tooth's. */
  @Test
  void aToothsNumberIsNotTakenForAPatients() throws Exception {
    Secrets secrets = new Secrets(Set.of("16", "11"), Set.of());
    byte[] page = page(row("Frontal", 11)).getBytes(StandardCharsets.UTF_8);
    assertThat(new LeakSearch(secrets).find("index.html", page)).isEqualTo(Optional.empty());
    byte[] leak = page(row("16")).getBytes(StandardCharsets.UTF_8);
    assertThat(new LeakSearch(secrets).find("index.html", leak)).isPresent();
  }
}
