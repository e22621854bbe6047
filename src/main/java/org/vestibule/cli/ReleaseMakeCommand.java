package org.vestibule.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.vestibule.base.Outcome;
import org.vestibule.base.Outcome.Refused;
import org.vestibule.flow.Practice;
import org.vestibule.flow.ReleaseWords;
import org.vestibule.flow.Releasing;
import org.vestibule.release.Format;
import org.vestibule.store.ledger.ReleaseRow;
import org.vestibule.words.Language;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Makes copies for one purpose. */
@Command(
    name = "make",
    description = {
      "Make copies of filed photographs for one purpose, with a sheet and a manifest.",
      "Everything is searched for what must not leave before it gets its name."
    })
final class ReleaseMakeCommand extends PersonCommand {

  @Parameters(arity = "0..*", paramLabel = "ID", description = "Photographs, as find prints them.")
  private List<String> ids = List.of();

  @Option(
      names = "--purpose",
      paramLabel = "PURPOSE",
      description =
          "For what: referral, laboratory, insurer, teaching, publication, website, own-copy.")
  private String purpose = "";

  @Option(names = "--for", paramLabel = "WORDS", description = "For whom the copies are.")
  private String recipient = "";

  @Option(names = "--asked-by", paramLabel = "NAME", description = "Who asked for them.")
  private String askedBy = "";

  @Option(names = "--why", paramLabel = "WORDS", description = "Why, in a few words.")
  private String why = "";

  @Option(
      names = "--looked-by",
      paramLabel = "NAME",
      description =
          "Who looked at each picture and found no text that names anybody, and no face where the"
              + " record has none or a crop is named.")
  private String lookedBy = "";

  @Option(
      names = "--as",
      split = ",",
      paramLabel = "FORMAT",
      description = "dicom, jpeg or both; otherwise jpeg.")
  private Set<Format> formats = EnumSet.of(Format.JPEG);

  @Option(
      names = "--crop",
      paramLabel = "ID=L,T,R,B",
      description =
          "The part of a photograph without the face, as fractions of the picture as it is filed:"
              + " 1a2b3c4d5e=0.1,0.2,0.9,0.8. Less is kept where a block would be cut. Needs"
              + " --looked-by. May be repeated.")
  private Map<String, String> crops = new LinkedHashMap<>();

  @Option(names = "--several-patients", description = "Copies of several patients go together.")
  private boolean severalPatients;

  @Option(
      names = "--again",
      paramLabel = "RELEASE",
      description =
          "Make an earlier release once more, with the same bytes (encrypted, with the same files).")
  private String again = "";

  @Option(
      names = "--to",
      required = true,
      paramLabel = "PLACE",
      description = "A new folder, or a new file ending in .zip. Nothing is overwritten.")
  private String to = "";

  @Option(
      names = "--passphrase-file",
      paramLabel = "FILE",
      description =
          "Encrypt the .zip file with AES-256 by the passphrase in this file, one line of 16"
              + " characters or more. Give it to the receiver by another way.")
  private @Nullable String passphraseFile;

  @Mixin private LanguageOption language = new LanguageOption();

  ReleaseMakeCommand(Surroundings surroundings) {
    super(surroundings);
  }

  @Override
  ExitCode run(Practice practice, String by) throws IOException {
    Path target = surroundings().path(to);
    Outcome<Language> said = language.of(practice);
    if (said instanceof Refused<Language> refused) {
      return refuse(refused);
    }
    Path passphrase = passphraseFile == null ? null : surroundings().path(passphraseFile);
    Releasing releasing = new Releasing(practice);
    Outcome<ReleaseRow> made =
        again.isEmpty()
            ? releasing.make(
                new ReleaseWords(
                    purpose,
                    ids,
                    recipient.strip(),
                    askedBy.strip(),
                    why.strip(),
                    lookedBy.strip(),
                    severalPatients,
                    crops,
                    formats,
                    target,
                    passphrase,
                    said.orThrow()),
                by)
            : releasing.again(again, target, passphrase, by);
    if (made instanceof Refused<ReleaseRow> refused) {
      return refuse(refused);
    }
    ReleaseRow row = made.orThrow();
    console()
        .say(
            "Release "
                + row.id()
                + ": "
                + Counted.of(row.items().size(), "photograph")
                + " in "
                + target.getFileName()
                + ", searched and clean"
                + (passphrase == null ? "." : ", encrypted."));
    return ExitCode.DONE;
  }
}
