package org.vestibule.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.vestibule.flow.TestHome;
import org.vestibule.samples.Scene;

/** Links for somebody outside: made, listed, ended; or a package where there can be none. */
class ShareCommandTest {

  private static final String WHO = "Reed, Ada";

  @TempDir Path folder;
  private TestHome home;
  private String frontal;

  @BeforeEach
  void file() throws IOException {
    home = TestHome.in(folder);
    Files.writeString(
        folder.resolve("visits.csv"),
        """
        visit,patient id,name,birth date,sex,start,end,referrer,dentist
        V1,P1,"Tallgrass, Orla",1990-01-02,F,2026-03-12 09:00,2026-03-12 10:00,,
        """);
    frontal = home.put("frontal.jpg", Scene.FRONTAL, 1);
    home.manifest("file,visit,view,teeth,mirror\nfrontal.jpg,V1,frontal,11,none\n");
    assertThat(home.ingest().filed()).hasSize(1);
  }

  private void served() throws IOException {
    Files.writeString(
        folder.resolve("vestibule.toml"),
        """
        [web]
        names = ["photos.example"]
        tls = "proxy"
        proxy-header = "X-Forwarded-For"
        """);
  }

  private Asked make(String... more) {
    List<String> words =
        new ArrayList<>(
            List.of(
                "share",
                "make",
                "--purpose",
                "own-copy",
                "--for",
                "the patient",
                "--asked-by",
                "Tallgrass",
                "--why",
                "asked at the desk"));
    words.addAll(List.of(more));
    return Asked.by(WHO, home, words.toArray(String[]::new));
  }

  @Test
  void aLinkIsMadeListedAndEnded() throws IOException {
    served();
    Asked made = make("--visit", "V1", "--days", "3", "--second-secret");
    assertThat(made.err()).isEmpty();
    assertThat(made.out())
        .matches(
            "(?s)Link 1 to 1 photograph, searched and clean, good for 3 days:\\n"
                + "https://photos.example/shared#[A-Za-z0-9_-]{43}\\n"
                + "The second secret, to be told by another way: [a-z2-9]{4}-[a-z2-9]{4}-[a-z2-9]{4}\\n"
                + "This is printed once. Whoever has it can look while \"vestibule serve\" runs.\\n");
    assertThat(Asked.of(home, "share", "list").out()).contains("own-copy", "the patient", "open");
    assertThat(Asked.of(home, "release", "list").out()).contains("the patient");
    Asked ended = Asked.by(WHO, home, "share", "end", "1", "--why", "seen");
    assertThat(ended.out()).isEqualTo("Ended link 1: it shows nothing any more.\n");
    assertThat(Asked.of(home, "share", "list").out()).contains("ended");
    try (var left = Files.list(folder.resolve("shares"))) {
      assertThat(left).isEmpty();
    }
    assertThat(Asked.by(WHO, home, "share", "end", "1").err())
        .isEqualTo("vestibule: link 1 was ended before.\n  What to do: there is nothing to do.\n");
    assertThat(Asked.by(WHO, home, "share", "end", "7").err())
        .isEqualTo(
            """
            vestibule: there is no link 7.
              What to do: "vestibule share list" names all of them.
            """);
  }

  @Test
  void behindAProxyTheMissingAddressIsNamed() throws IOException {
    Files.writeString(folder.resolve("vestibule.toml"), "[web]\ntls = \"proxy\"\n");
    assertThat(make(frontal).err())
        .isEqualTo(
            "vestibule: the pages stand behind a proxy, and the address by which others call it is"
                + " missing, so that a link would lead to this machine alone.\n  What to do: write"
                + " names = [\"photos.example\"] with the proxy's name under [web] in"
                + " vestibule.toml.\n");
    Files.writeString(
        folder.resolve("vestibule.toml"), "[web]\nnames = [\"photos.example\"]\ntls = \"proxy\"\n");
    assertThat(make(frontal).err())
        .isEqualTo(
            "vestibule: the pages stand behind a proxy, and the address of whoever opens a link is"
                + " missing: no header is settled in which the proxy says it, and \"vestibule"
                + " serve\" does not start without one.\n  What to do: write proxy-header ="
                + " \"X-Forwarded-For\" under [web] in vestibule.toml, or the header in which your"
                + " proxy says who asks.\n");
    assertThat(Asked.of(home, "share", "list").out()).isEqualTo("Nothing is shared by link.\n");
  }

  @Test
  void whereNobodyCanComeAPackageIsWritten() {
    assertThat(make(frontal).err())
        .isEqualTo(
            "vestibule: nobody outside this machine can open the pages, so that a link would lead"
                + " nowhere.\n  What to do: write the same as a package to hand over with \"vestibule"
                + " share make --package\", or settle [web] in vestibule.toml first"
                + " (docs/referrer.md).\n");
    Asked packed = make(frontal, "--package", "for-patient.zip");
    assertThat(packed.out())
        .isEqualTo(
            "No link was made. Release 2026-001: 1 photograph in for-patient.zip, searched and"
                + " clean.\nIt opens without a network. What is handed over can't be ended from"
                + " here.\n");
    assertThat(folder.resolve("for-patient.zip")).exists();
    assertThat(Asked.of(home, "share", "list").out()).isEqualTo("Nothing is shared by link.\n");
  }

  @Test
  void whatCantBeSharedIsRefusedInWords() throws IOException {
    served();
    assertThat(make().err())
        .isEqualTo("vestibule: name photographs by their ids, or a visit with --visit.\n");
    assertThat(make("--visit", "V9").err())
        .startsWith("vestibule: no photograph is filed under a visit of this key.\n");
    assertThat(make(frontal, "--days", "91").err())
        .isEqualTo(
            """
            vestibule: a link is good for 1 to 90 days, not 91.
              What to do: name a number of days in between.
            """);
    // Consent is asked as release asks it.
    assertThat(
            Asked.by(
                    WHO,
                    home,
                    "share",
                    "make",
                    frontal,
                    "--purpose",
                    "referral",
                    "--for",
                    "Dr Moss",
                    "--asked-by",
                    "Dr Moss",
                    "--why",
                    "crown")
                .err())
        .contains("gave no consent to: Referral for treatment");
    assertThat(Asked.of(home, "share", "list").out()).isEqualTo("Nothing is shared by link.\n");
  }
}
