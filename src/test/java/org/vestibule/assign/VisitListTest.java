package org.vestibule.assign;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.LocalTime;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.vestibule.base.Outcome;

class VisitListTest {

  private static final String HEAD = "visit;patient id;name;birth date;sex;start;end\n";
  private static final String SOUND = "V1;00417;Ash, Ida;1988-04-02;f;2026-03-11 09:00;09:45\n";

  @TempDir Path folder;

  @Test
  void readsAVisit() {
    Visit visit = parse(HEAD + SOUND).orThrow().visits().get(0);
    assertThat(visit.patient())
        .isEqualTo(new Patient("00417", "MILL", "Ash^Ida", LocalDate.of(1988, 4, 2), Sex.FEMALE));
    assertThat(visit.start()).isEqualTo(LocalDateTime.of(2026, 3, 11, 9, 0));
    assertThat(visit.end()).isEqualTo(LocalDateTime.of(2026, 3, 11, 9, 45));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "2026-03-25",
        "2026/03/25",
        "20260325",
        "25.03.2026",
        "25.3.2026",
        "25/03/2026",
        "03/25/2026",
        "25-03-2026",
        "25 March 2026",
        "25 Mar 2026"
      })
  void readsUnambiguousDates(String date) {
    assertThat(CalendarText.date(date)).isEqualTo(Outcome.done(LocalDate.of(2026, 3, 25)));
  }

  @ParameterizedTest
  @ValueSource(strings = {"9:00", "09:00", "09:00:00", "9:00 AM", "9:00 a.m."})
  void readsTimes(String time) {
    assertThat(CalendarText.time(time).orThrow()).isEqualTo(LocalTime.of(9, 0));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          V2;00418;Elm, Bo;03/04/1990;m;2026-03-11 10:00;11:00 | row 3, column birth date: this date can be read with the day or the month first
          V2;00418;Elm, Bo;1990-02-30;m;2026-03-11 10:00;11:00 | row 3, column birth date: there is no such day in the calendar
          V2;00418;Elm, Bo;90-02-03;m;2026-03-11 10:00;11:00 | row 3, column birth date: this is not a date that is understood
          V2;00418;Elm, Bo;;m;2026-03-11;11:00 | row 3, column start: it has no time of day
          V2;00418;Elm, Bo;;m;10:00;11:00 | row 3, column start: it has no date
          V2;00418;Elm, Bo;;m;2026-03-11 10:00;09:00 | row 3, column end: the visit ends before it starts
          V2;00418;Elm, Bo;;m;2026-03-11 10:00;2026-03-13 09:00 | row 3, column end: the visit lasts more than 24 hours
          V2;00418;Elm, Bo;;?;2026-03-11 10:00;11:00 | row 3, column sex: this is not a word that is understood
          V2;00418;;;m;2026-03-11 10:00;11:00 | row 3, column name: it is empty
          V2;00418;a^b^c^d^e^f;;m;2026-03-11 10:00;11:00 | row 3, column name: the parts of this name can't be told apart
          ;00418;Elm, Bo;;m;2026-03-11 10:00;11:00 | row 3, column visit: it is empty
          V2;;Elm, Bo;;m;2026-03-11 10:00;11:00 | row 3, column patient id: it is empty
          v1;00418;Elm, Bo;;m;2026-03-11 10:00;11:00 | row 3, column visit: row 2 has the same key
          V2;00417;Elm, Bo;;m;2026-03-11 10:00;11:00 | row 3, column name: row 2 has the same patient number with another name
          V2;00417;Ash, Ida;1988-04-03;f;2026-03-11 10:00;11:00 | row 3, column birth date: row 2 has the same patient number with another birth date
          V2;00417;Ash, Ida;;m;2026-03-11 10:00;11:00 | row 3, column sex: row 2 has the same patient number with another sex
          V2;418;Elm, Bo;;m;2026-03-11 10:00;11:00 | row 3, column patient id: the number has 3 digits where others in this list have 5: a spreadsheet probably dropped leading zeros
          V2;4,18E+02;Elm, Bo;;m;2026-03-11 10:00;11:00 | row 3, column patient id: a spreadsheet wrote this number with an exponent and lost its digits
          """)
  void refusesWithRowAndColumn(String row, String reason) {
    Outcome<VisitList> read = parse(HEAD + SOUND + row + "\n");
    assertThat(read).isInstanceOf(Outcome.Refused.class);
    assertThat(((Outcome.Refused<VisitList>) read).reason()).isEqualTo(reason);
  }

  @Test
  void missesZerosAlsoWhereNoneIsLeft() {
    String rows = "a;10417;A;;;DATE;09:30\nb;20533;B;;;DATE;09:30\nc;30001;C;;;DATE;09:30\n";
    String day = "2026-03-11 09:00";
    assertThat(parse(HEAD + (rows + "d;417;D;;;DATE;09:30\n").replace("DATE", day)))
        .isInstanceOf(Outcome.Refused.class);
    assertThat(parse(HEAD + (rows + "d;'417;D;;;DATE;09:30\n").replace("DATE", day)).orThrow())
        .extracting(list -> list.visits().get(3).patient().id())
        .isEqualTo("417");
    String growing = "a;998;A;;;DATE;09:30\nb;999;B;;;DATE;09:30\nc;1000;C;;;DATE;09:30\n";
    assertThat(parse(HEAD + growing.replace("DATE", day))).isInstanceOf(Outcome.Done.class);
  }

  @Test
  void flagsSameNamesAndUndividedOnesWithoutRepeatingThem() {
    VisitList list =
        parse(
                HEAD
                    + SOUND
                    + "V2;00418;Ash, Ida;;f;2026-03-11 10:00;11:00\n"
                    + "V3;00419;Bo Elm;;m;2026-03-11 11:00;12:00\n")
            .orThrow();
    assertThat(list.warnings())
        .containsExactly(
            "rows 2 and 3, column name: two patients with different numbers have the same name;"
                + " take care",
            "row 4, column name: family and given name can't be told apart, so all of it is kept"
                + " as the family name; write Family, Given");
    assertThat(list.visits().get(2).patient().name()).isEqualTo("Bo Elm");
    assertThat(list.hasNamesake(list.visits().get(0).patient())).isTrue();
    assertThat(list.hasNamesake(list.visits().get(2).patient())).isFalse();
  }

  @Test
  void joinsWhatRowsSayOfOnePatient() {
    VisitList list = parse(HEAD + "V0;00417;ASH^IDA;;;2026-03-10 09:00;10:00\n" + SOUND).orThrow();
    assertThat(list.ofPatient("00417"))
        .extracting(visit -> visit.patient().birthDate())
        .containsOnly(LocalDate.of(1988, 4, 2));
  }

  @Test
  void appendsToAFileOfAnyDialectAndLeavesTheRest() throws Exception {
    Path file = folder.resolve("visits.csv");
    Charset windows = Charset.forName("windows-1252");
    String before =
        "visit;extra;patient id;name;birth date;sex;start;end\r\n"
            + "V1;x;00417;Grün, Ida;;f;2026-03-11 09:00;09:45";
    Files.write(file, before.getBytes(windows));
    VisitList list = VisitList.append(file, words("V2", "00418", "Öl; \"B\", Bo"), "").orThrow();
    assertThat(list.byKey("v2").orElseThrow().patient().name()).isEqualTo("Öl; \"B\"^Bo");
    String after = Files.readString(file, windows);
    assertThat(after).startsWith(before + "\r\n").endsWith("\r\n");
    assertThat(VisitList.read(file, "").orThrow().visits()).hasSize(2);
    assertThat(folder.toFile().list()).containsExactly("visits.csv");
  }

  @Test
  void appendsNothingThatWouldSpoilTheList() throws Exception {
    Path file = folder.resolve("new").resolve("visits.csv");
    assertThat(VisitList.read(file, "").orThrow()).isEqualTo(VisitList.EMPTY);
    assertThat(VisitList.append(file, words("V1", "00417", "Ash, Ida"), "MILL"))
        .isInstanceOf(Outcome.Done.class);
    byte[] before = Files.readAllBytes(file);
    assertThat(VisitList.append(file, words("V1", "00418", "Elm, Bo"), ""))
        .isInstanceOf(Outcome.Refused.class);
    assertThat(VisitList.append(file, words("V2", "00418", "Elm,\nBo"), ""))
        .isEqualTo(
            Outcome.refused("a visit can't hold line breaks", "enter each field on one line"));
    assertThat(Files.readAllBytes(file)).isEqualTo(before);
  }

  private static VisitWords words(String visit, String id, String name) {
    return new VisitWords(visit, id, "", name, "", "", "2026-03-11 10:00", "10:30", "", "", "", "");
  }

  private static Outcome<VisitList> parse(String text) {
    return VisitList.parse(text.getBytes(StandardCharsets.UTF_8), "list", "MILL");
  }
}
