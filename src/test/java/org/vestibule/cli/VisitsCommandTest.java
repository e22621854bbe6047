package org.vestibule.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.vestibule.flow.Practice;
import org.vestibule.flow.TestHome;
import org.vestibule.store.ledger.EventRow;

/** Visits typed by a person: what is wrong is said, and then the list stays as it was. */
class VisitsCommandTest {

  @TempDir Path folder;

  private TestHome home;
  private String before;

  @BeforeEach
  void layOut() throws IOException {
    home = TestHome.in(folder);
    before = list();
  }

  @Test
  void aVisitIsAddedAndListedAndTheLedgerKnowsWhoAddedIt() throws IOException {
    Asked added =
        add(
            "--visit",
            "V3",
            "--patient",
            "P3",
            "--name",
            "Elm, Tobin",
            "--born",
            "1971-11-03",
            "--sex",
            "m",
            "--from",
            "2026-03-13 10:15",
            "--until",
            "2026-03-13 11:00");
    assertThat(added.err()).isEmpty();
    assertThat(added.out()).isEqualTo("Added visit V3.\n");
    assertThat(list()).startsWith(before.stripTrailing());
    assertThat(Asked.of(home, "visits", "list").out())
        .isEqualTo(
            """
            visit  from              to                number  patient           referred by
            V1     2026-03-12 09:00  2026-03-12 10:00  P1      Tallgrass, Orla   -
            V2     2026-03-12 11:00  2026-03-12 12:00  P2      Brightwater, Ned  -
            V3     2026-03-13 10:15  2026-03-13 11:00  P3      Elm, Tobin        -
            """);
    try (Practice practice = home.open()) {
      assertThat(practice.store().ledger().events().latest(1))
          .extracting(EventRow::who, EventRow::what, EventRow::details)
          .containsExactly(org.assertj.core.groups.Tuple.tuple("Ada Example", "visit added", "V3"));
    }
  }

  @Test
  void whatTheListHasNoColumnForIsNotLost() throws IOException {
    List<String> words = full("--referrer", "Mossgrove, Ansel");
    refused(
        words.toArray(String[]::new),
        "the visit list has no column referrer for what was said",
        "add the column to the list's first row, or leave it out");
  }

  @Test
  void withoutAListOneIsBegun() throws IOException {
    Path other = folder.resolve("other");
    Asked none = Asked.in(folder, Map.of(), "visits", "list", "--home", other.toString());
    assertThat(none.out())
        .isEqualTo("No visit is known yet: put a visits.csv into the home folder, or add one.\n");
    assertThat(other).as("looking begins nothing").doesNotExist();
    Asked added =
        Asked.in(
            folder,
            Map.of("VESTIBULE_HOME", "other", "VESTIBULE_BY", "Ada Example"),
            full("visits", "add").toArray(String[]::new));
    assertThat(added.err()).isEmpty();
    assertThat(Files.readString(other.resolve("visits.csv"))).contains("\"V9\"");
  }

  @Test
  void aKeyIsTakenOnce() throws IOException {
    Asked asked = add(changed("--visit", "v1"));
    assertThat(asked.code()).isEqualTo(3);
    assertThat(asked.err())
        .isEqualTo(
            """
            vestibule: there is already a visit "v1".
              What to do: give the new visit another key.
            """);
    assertThat(list()).isEqualTo(before);
  }

  @Test
  void aWindowBackwardsIsRefused() throws IOException {
    refused(
        changed("--until", "2026-03-13 10:00"),
        "the visit list, row 4, column end: the visit ends before it starts",
        "check start and end");
  }

  @Test
  void aDayLongVisitIsRefused() throws IOException {
    refused(
        changed("--until", "2026-03-15 10:00"),
        "the visit list, row 4, column end: the visit lasts more than 24" + " hours",
        "give the patient's time in the chair");
  }

  @Test
  void datesThatCanBeReadInTwoWaysAreRefused() throws IOException {
    refused(changed("--born", "03/04/1980"), "row 4, column birth date", "");
    refused(changed("--born", "1980-02-30"), "row 4, column birth date", "");
    refused(changed("--born", "yesterday"), "row 4, column birth date", "");
    refused(changed("--born", "2027-01-01"), "it lies after the visit", "check the century");
    refused(changed("--from", "2026-03-13"), "it has no time of day", "2026-03-11 09:00");
    refused(changed("--from", "2026-03-13 25:00"), "row 4, column start", "");
  }

  @Test
  void aPatientWithAnotherNameIsRefused() throws IOException {
    refused(
        changed("--patient", "P1"),
        "row 2 has the same patient number with another name",
        "find out whether these are two patients, and correct the list");
  }

  @Test
  void whatMustBeSaidIsAskedFor() throws IOException {
    Asked asked = Asked.by("Ada Example", home, "visits", "add", "--visit", "V9");
    assertThat(asked.code()).isEqualTo(2);
    assertThat(asked.err()).contains("--patient", "--name", "--from", "--until", "--help");
    Asked nobody = Asked.of(home, full("visits", "add").toArray(String[]::new));
    assertThat(nobody.code()).isEqualTo(2);
    assertThat(list()).isEqualTo(before);
  }

  @Test
  void aListThatCannotBeUsedIsNamedByRowAndColumn() throws IOException {
    Files.writeString(
        home.folder().resolve("visits.csv"), before + "V2,P4,\"Elm, Bo\",,,12:00,13:00\n");
    for (String[] command : new String[][] {{"visits", "list"}, {"ingest", "--by", "Ada"}}) {
      Asked asked = Asked.of(home, command);
      assertThat(asked.code()).isEqualTo(3);
      assertThat(asked.err()).contains("the visit list, row 4, column start");
    }
  }

  private void refused(String[] words, String why, String advice) throws IOException {
    Asked asked = add(words);
    assertThat(asked.code()).isEqualTo(3);
    assertThat(asked.out()).isEmpty();
    assertThat(asked.err()).contains(why).contains("  What to do: ").contains(advice);
    assertThat(list()).isEqualTo(before);
  }

  private Asked add(String... words) {
    List<String> all = new ArrayList<>(List.of("visits", "add"));
    all.addAll(List.of(words));
    return Asked.by("Ada Example", home, all.toArray(String[]::new));
  }

  private static String[] changed(String option, String value) {
    List<String> all = full();
    int at = all.indexOf(option);
    all.set(at + 1, value);
    return all.toArray(String[]::new);
  }

  private static List<String> full(String... before) {
    List<String> all = new ArrayList<>(List.of(before));
    all.addAll(
        List.of(
            "--visit",
            "V9",
            "--patient",
            "P9",
            "--name",
            "Elm, Tobin",
            "--born",
            "1971-11-03",
            "--from",
            "2026-03-13 10:15",
            "--until",
            "2026-03-13 11:00"));
    return all;
  }

  private String list() throws IOException {
    return Files.readString(home.folder().resolve("visits.csv"), StandardCharsets.UTF_8);
  }
}
