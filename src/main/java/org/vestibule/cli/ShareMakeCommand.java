package org.vestibule.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.vestibule.base.Outcome;
import org.vestibule.base.Outcome.Refused;
import org.vestibule.flow.Practice;
import org.vestibule.flow.ShareWords;
import org.vestibule.flow.Sharing;
import org.vestibule.store.ledger.ReleaseRow;
import org.vestibule.web.ShareLinks;
import org.vestibule.words.Language;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Makes a link, or the same as a package. */
@Command(
    name = "make",
    description = {
      "Make a link to copies of photographs, or of all photographs of a visit.",
      "Where the practice can't be reached from outside, write the same as a package."
    })
final class ShareMakeCommand extends PersonCommand {

  @Parameters(arity = "0..*", paramLabel = "ID", description = "Photographs, as find prints them.")
  private List<String> ids = List.of();

  @Option(
      names = "--visit",
      paramLabel = "KEY",
      description = "All filed photographs of this visit.")
  private String visit = "";

  @Option(
      names = "--purpose",
      required = true,
      paramLabel = "PURPOSE",
      description =
          "For what: referral, laboratory, insurer, teaching, publication, website, own-copy.")
  private String purpose = "";

  @Option(names = "--for", required = true, paramLabel = "WORDS", description = "For whom.")
  private String recipient = "";

  @Option(
      names = "--asked-by",
      required = true,
      paramLabel = "NAME",
      description = "Who asked for it.")
  private String askedBy = "";

  @Option(
      names = "--why",
      required = true,
      paramLabel = "WORDS",
      description = "Why, in a few words.")
  private String why = "";

  @Option(
      names = "--looked-by",
      paramLabel = "NAME",
      description =
          "Who looked at each picture and found no text that names anybody, and no face where the"
              + " record has none.")
  private String lookedBy = "";

  @Option(
      names = "--days",
      paramLabel = "N",
      description = "For how many days the link is good, 1 to 90; otherwise 14.")
  private int days = 14;

  @Option(
      names = "--second-secret",
      description = "Ask for a second secret, which is printed here and told by another way.")
  private boolean second;

  @Option(
      names = "--package",
      paramLabel = "PLACE",
      description =
          "Write a package to hand over instead of a link: a new folder, or a new file ending in"
              + " .zip.")
  private @Nullable String place;

  @Option(
      names = "--passphrase-file",
      paramLabel = "FILE",
      description = "Encrypt the package's .zip file, as release make does.")
  private @Nullable String passphraseFile;

  @Mixin private LanguageOption language = new LanguageOption();

  ShareMakeCommand(Surroundings surroundings) {
    super(surroundings);
  }

  @Override
  ExitCode run(Practice practice, String by) throws IOException {
    if (ids.isEmpty() == visit.isBlank()) {
      console().complain("vestibule: name photographs by their ids, or a visit with --visit.");
      return ExitCode.WRONG_USE;
    }
    Outcome<List<String>> photos =
        visit.isBlank() ? Outcome.done(ids) : new Sharing(practice).ofVisit(visit);
    if (photos instanceof Refused<List<String>> refused) {
      return refuse(refused);
    }
    ShareWords words =
        new ShareWords(
            purpose,
            photos.orThrow(),
            recipient.strip(),
            askedBy.strip(),
            why.strip(),
            lookedBy.strip());
    return place == null
        ? link(practice, words, by)
        : pack(practice, words, surroundings().path(place), by);
  }

  private ExitCode link(Practice practice, ShareWords words, String by) throws IOException {
    Outcome<ShareLinks.Made> made =
        new ShareLinks(practice)
            .make(words, second, days, ShareLinks.server(practice.settings().web()), by);
    if (made instanceof Refused<ShareLinks.Made> refused) {
      return refuse(refused);
    }
    ShareLinks.Made link = made.orThrow();
    console()
        .say(
            "Link "
                + link.share().number()
                + " to "
                + Counted.of(link.share().photos().size(), "photograph")
                + ", searched and clean, good for "
                + Counted.of(days, "day")
                + ":");
    console().say(link.address());
    if (!link.second().isEmpty()) {
      console().say("The second secret, to be told by another way: " + link.second());
    }
    console().say("This is printed once. Whoever has it can look while \"vestibule serve\" runs.");
    return ExitCode.DONE;
  }

  private ExitCode pack(Practice practice, ShareWords words, Path target, String by)
      throws IOException {
    Path passphrase = passphraseFile == null ? null : surroundings().path(passphraseFile);
    Outcome<Language> said = language.of(practice);
    if (said instanceof Refused<Language> refused) {
      return refuse(refused);
    }
    Outcome<ReleaseRow> made =
        new Sharing(practice).pack(words, target, passphrase, said.orThrow(), by);
    if (made instanceof Refused<ReleaseRow> refused) {
      return refuse(refused);
    }
    console()
        .say(
            "No link was made. Release "
                + made.orThrow().id()
                + ": "
                + Counted.of(made.orThrow().items().size(), "photograph")
                + " in "
                + target.getFileName()
                + ", searched and clean"
                + (passphrase == null ? "." : ", encrypted."));
    console().say("It opens without a network. What is handed over can't be ended from here.");
    return ExitCode.DONE;
  }
}
