package org.vestibule.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.Charset;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.vestibule.flow.TestHome;
import org.vestibule.samples.Scene;

/** Consents as people type them and as lists hold them. */
class ConsentCommandTest {

  @TempDir Path folder;
  private TestHome home;

  @BeforeEach
  void layOut() throws IOException {
    home = TestHome.in(folder);
    home.put("frontal.jpg", Scene.FRONTAL, 1);
    home.manifest("file,visit,view,mirror\nfrontal.jpg,V1,frontal,none\n");
    assertThat(home.ingest().filed()).hasSize(1);
  }

  private Asked ask(String... args) {
    return Asked.by("Reed, Ada", home, args);
  }

  private void assertRefused(Asked asked, String words) {
    assertThat(asked.err()).isEqualTo(words);
    assertThat(asked.code()).isEqualTo(3);
    assertThat(Asked.of(home, "consent", "list").out()).isEqualTo("No consent is recorded yet.\n");
  }

  @Test
  void aListIsTakenWholeOrNotAtAll() throws IOException {
    Files.writeString(
        folder.resolve("consents.csv"),
        """
        patient,purpose,given,until,face,form,guardian,of age
        P1,teaching,2026-03-01,2027-03-01,yes,form 3,,
        P1,website,01.03.2026,,no,form 3,,
        """);
    assertRefused(
        ask("consent", "import", "consents.csv"),
        """
        vestibule: consents.csv, row 3: the day on which the consent was given reads "01.03.2026".
          What to do: write it as YYYY-MM-DD; no row was taken.
        """);
    Files.writeString(
        folder.resolve("consents.csv"),
        """
        patient,purpose,given,until,face,form,guardian,of age
        P1,teaching,2026-03-01,2027-03-01,yes,form 3,,
        P1,website,2026-03-01,,no,form 3,"Tallgrass, Una",18
        """);
    assertThat(ask("consent", "import", "consents.csv").out()).isEqualTo("Recorded 2 consents.\n");
    assertThat(Asked.of(home, "consent", "list").out())
        .isEqualTo(
            """
            patient  purpose   what   on          until       face  form    recorded by
            P1       teaching  given  2026-03-01  2027-03-01  yes   form 3  Reed, Ada
            P1       website   given  2026-03-01  -           no    form 3  Reed, Ada
            """);
  }

  /** As spreadsheets of many countries save it: semicolons, Windows-1252. */
  @Test
  void aSpreadsheetsListIsReadLikeTheOthers() throws IOException {
    Files.write(
        folder.resolve("consents.csv"),
        "Patient;Purpose;Given;Form;Guardian;Of-Age\r\nP1;teaching;2026-03-01;f\u00fcr 3;;\r\n"
            .getBytes(Charset.forName("windows-1252")));
    assertThat(ask("consent", "import", "consents.csv").out()).isEqualTo("Recorded 1 consent.\n");
    assertThat(Asked.of(home, "consent", "list").out()).contains("f\u00fcr 3");
  }

  /** An old list read in again must not bring back what a patient took back. */
  @Test
  void aConsentOlderThanItsWithdrawalIsRefused() throws IOException {
    Files.writeString(
        folder.resolve("consents.csv"),
        """
        patient,purpose,given,until,face,form,guardian,of age
        P1,teaching,2026-03-01,,no,form 3,,
        """);
    assertThat(ask("consent", "import", "consents.csv").code()).isZero();
    ask("consent", "withdraw", "--patient", "P1", "--purpose", "teaching", "--on", "2026-03-05");
    assertThat(ask("consent", "import", "consents.csv").err())
        .isEqualTo(
            """
        vestibule: consents.csv, row 2: the patient took this consent back on 2026-03-05, and it was given no later than that.
          What to do: ask the patient again, and record the day on which they agree again; no row was taken.
        """);
    Files.writeString(folder.resolve("consents.csv"), "patient,purpose\n");
    assertThat(ask("consent", "import", "consents.csv").err())
        .isEqualTo(
            """
        vestibule: consents.csv has no row.
          What to do: write a header with the columns patient, issuer, purpose, given, until, face, form, guardian, of age, and a row for each.
        """);
  }

  /** P1 is of 1990; by this setting she was a minor on the day (the site's law decides). */
  @Test
  void aMinorsConsentNeedsAGuardian() throws IOException {
    Files.writeString(folder.resolve("vestibule.toml"), "[practice]\nage-of-majority = 30\n");
    assertThat(
            ask(
                    "consent",
                    "add",
                    "--patient",
                    "P1",
                    "--purpose",
                    "teaching",
                    "--given",
                    "2020-01-01",
                    "--form",
                    "form 3")
                .err())
        .isEqualTo(
            """
            vestibule: the patient was younger than 30 on that day, and nobody signed for them.
              What to do: name who signed with --guardian; if your law lets this patient sign, set practice.age-of-majority in the settings.
            """);
    assertThat(
            ask(
                    "consent",
                    "add",
                    "--patient",
                    "P1",
                    "--purpose",
                    "teaching",
                    "--given",
                    "2020-01-02",
                    "--form",
                    "form 3")
                .code())
        .isZero();
  }

  @Test
  void aListWithOtherColumnsIsRefused() throws IOException {
    Files.writeString(folder.resolve("consents.csv"), "who,what\nP1,teaching\n");
    assertRefused(
        ask("consent", "import", "consents.csv"),
        """
        vestibule: consents.csv has no column patient.
          What to do: its first row must name the columns: patient, issuer, purpose, given, until, face, form, guardian, of age.
        """);
    Files.writeString(folder.resolve("consents.csv"), "patient,purpose,gardian\nP1,teaching,Una\n");
    assertRefused(
        ask("consent", "import", "consents.csv"),
        """
        vestibule: consents.csv: column 3 has a heading that is not known.
          What to do: name the columns patient, issuer, purpose, given, until, face, form, guardian, of age.
        """);
    assertRefused(
        ask("consent", "import", "none.csv"),
        "vestibule: there is no file none.csv.\n  What to do: check the name of the list.\n");
  }

  @Test
  void aGuardianGoesWithTheAgeAtWhichThePatientIsAsked() {
    assertRefused(
        ask(
            "consent",
            "add",
            "--patient",
            "P1",
            "--purpose",
            "teaching",
            "--given",
            "2026-03-01",
            "--form",
            "form 3",
            "--guardian",
            "Tallgrass, Una"),
        """
        vestibule: a guardian signed, and the age from which the patient is asked is not said.
          What to do: say at how many years people are of age by your local law.
        """);
    assertRefused(
        ask(
            "consent",
            "add",
            "--patient",
            "P9",
            "--purpose",
            "teaching",
            "--given",
            "2026-03-01",
            "--form",
            "form 3"),
        """
        vestibule: no patient with this number is on record.
          What to do: check the number; a patient is on record once a photograph or a visit is.
        """);
  }
}
