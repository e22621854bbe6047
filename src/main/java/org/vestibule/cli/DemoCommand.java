package org.vestibule.cli;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.vestibule.base.Outcome;
import org.vestibule.base.Outcome.Done;
import org.vestibule.base.Outcome.Refused;
import org.vestibule.check.CheckReport;
import org.vestibule.flow.Ingest;
import org.vestibule.flow.IngestReport;
import org.vestibule.flow.IngestRequest;
import org.vestibule.flow.Practice;
import org.vestibule.flow.Settings;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Shows the whole job on an invented practice. */
@Command(
    name = "demo",
    mixinStandardHelpOptions = true,
    description = {
      "Show the whole job on an invented practice, in a fresh folder:",
      "take in a camera roll, see what is filed and what waits, check every object, find."
    })
final class DemoCommand implements Callable<Integer> {

  private static final String PERSON = "Bettany Tinderbell";
  private static final List<String> QUESTIONS = List.of("16 occlusal", "46 before");

  private final Surroundings surroundings;
  private final Console console;

  @Option(
      names = "--folder",
      paramLabel = "FOLDER",
      description = "Where the practice is made; it must not be there yet.")
  private @Nullable String folder;

  @Option(
      names = "--samples",
      paramLabel = "FOLDER",
      description = "The invented practice's photographs and lists; they come with the program.")
  private @Nullable String samples;

  @Mixin TraceOption trace = new TraceOption();

  DemoCommand(Surroundings surroundings) {
    this.surroundings = surroundings;
    this.console = surroundings.console();
  }

  @Override
  public Integer call() throws IOException {
    Path home = fresh();
    Path from = samplesFolder();
    if (Files.exists(home) || !Files.isDirectory(from.resolve("roll"))) {
      console.complain(
          Files.exists(home)
              ? "vestibule: " + home.getFileName() + " is already there; name another --folder."
              : "vestibule: the samples are not where they should be; name them with --samples.");
      return ExitCode.REFUSED.number();
    }
    lay(from, home);
    Outcome<Settings> settings = SettingsFile.read(home, surroundings.zone());
    Outcome<Practice> opened = Practice.open(home, settings.orThrow(), surroundings.clock(), true);
    try (Practice practice = opened.orThrow()) {
      return run(practice, home).number();
    }
  }

  private Path fresh() {
    if (folder != null) {
      return surroundings.path(folder);
    }
    Path home = surroundings.path("vestibule-demo");
    for (int i = 2; Files.exists(home); i++) {
      home = surroundings.path("vestibule-demo-" + i);
    }
    return home;
  }

  private Path samplesFolder() {
    String distribution = System.getProperty("vestibule.distribution", ".");
    return samples == null ? Path.of(distribution, "samples") : surroundings.path(samples);
  }

  private static void lay(Path from, Path home) throws IOException {
    Path inbox = Files.createDirectories(home.resolve("inbox"));
    try (Stream<Path> roll = Files.list(from.resolve("roll"))) {
      for (Path file : roll.sorted().toList()) {
        Files.copy(file, inbox.resolve(String.valueOf(file.getFileName())));
      }
    }
    Files.copy(from.resolve("manifest.csv"), inbox.resolve("manifest.csv"));
    Files.copy(from.resolve("visits.csv"), home.resolve("visits.csv"));
    Files.writeString(
        home.resolve(SettingsFile.NAME),
        """
        [practice]
        name = "Crooked Lantern Dental"
        zone = "Europe/Vienna"
        patient-ids-from = "CROOKED-LANTERN"

        [quality]
        # The drawn photographs are small; a phone's are not.
        megapixels = 0.5
        """,
        StandardCharsets.UTF_8);
  }

  private ExitCode run(Practice practice, Path home) throws IOException {
    console.wrapped(
        0,
        "Crooked Lantern Dental is an invented practice. Its camera roll lies in "
            + home.getFileName()
            + "/inbox: "
            + "what a phone saved in two days, with a list of visits and a manifest in which the"
            + " assistant wrote what each photograph shows. Vestibule takes it in.");
    Outcome<IngestReport> report =
        Ingest.run(
            practice,
            new IngestRequest(
                    home.resolve("inbox"),
                    home.resolve("inbox").resolve("manifest.csv"),
                    PERSON,
                    false,
                    false)
                .onAllProcessors(),
            (done, of, name) -> console.progress((done + 1) + " of " + of + "  " + name));
    console.progressDone();
    if (report instanceof Refused<IngestReport> refused) {
      console.complain("vestibule: " + refused.sentence() + ".");
      return ExitCode.REFUSED;
    }
    new IngestPrinter(console).print(((Done<IngestReport>) report).value(), false);
    boolean sound = check(home.resolve("objects"));
    for (String question : QUESTIONS) {
      console.heading("Finding \"" + question + "\"");
      FindPrinter.find(console, practice, question);
    }
    next(home);
    return sound ? ExitCode.DONE : ExitCode.DAMAGE;
  }

  private boolean check(Path objects) throws IOException {
    console.heading("Every object checked against the DICOM standard's table");
    int files = 0;
    int sound = 0;
    try (Stream<Path> all = Files.walk(objects)) {
      for (Path file : all.filter(f -> f.toString().endsWith(".dcm")).sorted().toList()) {
        CheckReport report =
            CheckReport.of(String.valueOf(file.getFileName()), Files.readAllBytes(file));
        files++;
        sound += report.passes() ? 1 : 0;
        if (!report.passes()) {
          console.say(report.words().stripTrailing());
        }
      }
    }
    console.say(sound + " of " + Counted.of(files, "object") + " conform.");
    return sound == files;
  }

  private void next(Path home) {
    String at = " --home " + home.getFileName();
    console.heading("What to try next");
    console.say("vestibule look YOUR-FOLDER            your own photographs; changes nothing");
    console.say("vestibule waiting --sheet w.html" + at);
    console.say("vestibule find \"upper right 6\"" + at);
    console.say("vestibule file c5b9ebe376 --trim --by \"Your Name\"" + at);
    console.say("vestibule verify" + at);
    console.say("vestibule release make --help            copies that leave the practice");
  }
}
