package org.vestibule.assign;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.vestibule.base.Outcome;

/** Lists as spreadsheets and practice programs save them (RFC 4180; the rest common practice). */
class TableTest {

  record Dialect(char separator, Charset charset, boolean mark, String line, boolean sepLine) {}

  static List<Dialect> dialects() {
    List<Dialect> all = new ArrayList<>();
    for (char separator : new char[] {',', ';', '\t'}) {
      for (String line : List.of("\n", "\r\n")) {
        for (boolean sep : List.of(false, true)) {
          all.add(new Dialect(separator, StandardCharsets.UTF_8, false, line, sep));
          all.add(new Dialect(separator, StandardCharsets.UTF_8, true, line, sep));
          all.add(new Dialect(separator, StandardCharsets.UTF_16LE, true, line, sep));
          all.add(new Dialect(separator, StandardCharsets.UTF_16BE, true, line, sep));
          all.add(new Dialect(separator, Charset.forName("windows-1252"), false, line, sep));
        }
      }
    }
    return all;
  }

  @ParameterizedTest
  @MethodSource("dialects")
  void readsEveryDialect(Dialect dialect) {
    String s = String.valueOf(dialect.separator());
    String text =
        (dialect.sepLine() ? "sep=" + s + dialect.line() : "")
            + String.join(s, "FILE", "Teeth", "note", "", "")
            + dialect.line()
            + String.join(s, "a.jpg", "\"11, 21\"", "\"Grüße; \"\"Öl\"\"\nzweite Zeile\"", "", "")
            + dialect.line()
            + dialect.line()
            + String.join(s, " b.jpg ", "16")
            + dialect.line();
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    if (dialect.mark()) {
      bytes.writeBytes("\uFEFF".getBytes(dialect.charset()));
    }
    bytes.writeBytes(text.getBytes(dialect.charset()));
    Manifest manifest = Manifest.parse(bytes.toByteArray(), "list").orThrow();
    assertThat(manifest.rows()).extracting(Manifest.Row::file).containsExactly("a.jpg", "b.jpg");
    assertThat(manifest.rows()).extracting(Manifest.Row::number).containsExactly(2, 4);
    assertThat(manifest.rows().get(0).words().get(PhotoFact.TEETH)).isEqualTo("11, 21");
    assertThat(manifest.rows().get(0).words().get(PhotoFact.NOTE))
        .isEqualTo("Grüße; \"Öl\"\nzweite Zeile");
    assertThat(manifest.rows().get(1).words().get(PhotoFact.TEETH)).isEqualTo("16");
    boolean guessed = dialect.charset().name().startsWith("windows");
    assertThat(manifest.warnings()).hasSize(guessed ? 1 : 0);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          file,teeth,Tooth~a.jpg,1,2 | list has the column teeth twice (columns 2 and 3)
          teeth,view~16,frontal | list has no column file
          file,teeth~a.jpg,16,17 | row 2 has something in its column 3, which has no heading
          file,note~a.jpg,"open | list, row 2: its quotation marks don't pair up
          file,note~a.jpg,ok~b.jpg,"x"y | list, row 3: its quotation marks don't pair up
          ~ | list is empty
          PK\003\004file | list is a spreadsheet's own file, not a text table
          file,teeth~a.jpg,16~b.jpg,12. Nov | row 3, column teeth: a spreadsheet turned the teeth into a date; they probably were 11-12 or 12-11
          file,patient~a.jpg,1.23E+05 | row 2, column patient: a spreadsheet wrote this number with an exponent and lost its digits
          file,view~,frontal | row 2, column file: it is empty
          file,view~a.jpg,frontal~A.JPG,face smiling | row 3, column file: row 2 names the same file and says something else of it
          """)
  void refusesWithRowAndColumn(String text, String reason) {
    Outcome<Manifest> read = parse(text.replace('~', '\n'));
    assertThat(read).isInstanceOf(Outcome.Refused.class);
    assertThat(((Outcome.Refused<Manifest>) read).reason()).isEqualTo(reason);
    assertThat(((Outcome.Refused<Manifest>) read).advice()).isNotBlank();
  }

  @Test
  void warnsOfUnknownColumnsAndRowsThatRepeat() {
    Manifest manifest = parse("file,view,colour\na.jpg,frontal,red\na.jpg,frontal,red\n").orThrow();
    assertThat(manifest.rows()).hasSize(1);
    assertThat(manifest.warnings()).hasSize(2);
    assertThat(manifest.warnings().get(0))
        .startsWith("list: column 3 has a heading that is not known and was not read; known are");
    assertThat(manifest.warnings().get(1)).isEqualTo("rows 2 and 3 say the same of one file");
  }

  @Test
  void matchesRowsByPathOrUniqueName() {
    Manifest manifest = parse("file,view\nday\\a.jpg,x\nB.JPG,y\nc.jpg,z\nd.jpg,w\n").orThrow();
    Manifest.Matches matches =
        manifest.match(
            Map.of(
                "day/a.jpg", "day/a.jpg",
                "day/b.jpg", "day/b.jpg",
                "day/b(1).jpg", "day/b.jpg",
                "one/c.jpg", "one/c.jpg",
                "two/c.jpg", "two/c.jpg"));
    assertThat(matches.rows().keySet()).containsExactlyInAnyOrder("day/a.jpg", "day/b.jpg");
    assertThat(matches.unclear()).containsExactlyInAnyOrder("one/c.jpg", "two/c.jpg");
    assertThat(matches.notes())
        .containsExactly(
            "row 4, column file: several folders hold a file of this name",
            "row 5, column file: no photograph of this name is here");
  }

  private static Outcome<Manifest> parse(String text) {
    return Manifest.parse(text.getBytes(StandardCharsets.UTF_8), "list");
  }
}
