package org.vestibule.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.security.SecureRandom;
import java.time.LocalDate;
import org.vestibule.base.Outcome;
import org.vestibule.base.Outcome.Refused;
import org.vestibule.flow.CardBook;
import org.vestibule.flow.DrawnCards;
import org.vestibule.flow.NamesOnCards;
import org.vestibule.flow.Practice;
import org.vestibule.words.Language;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Draws the visit cards of a day. */
@Command(
    name = "visits",
    description = {
      "Draw a card for each visit of a day. Its code holds a token drawn by chance, nothing of the"
          + " patient.",
      "Photograph it before the first and after the last photograph of the visit."
    })
final class CardsVisitsCommand extends PersonCommand {

  @Option(
      names = "--day",
      required = true,
      paramLabel = "YYYY-MM-DD",
      description = "The day of the visits.")
  private LocalDate day = LocalDate.EPOCH;

  @Option(
      names = "--names",
      paramLabel = "none|initials|full",
      description =
          "How much of the patients' names people can read on the cards; none if not said.")
  private NamesOnCards names = NamesOnCards.NONE;

  @Option(
      names = "--out",
      required = true,
      paramLabel = "FILE",
      description = "The PDF to write. Nothing is overwritten.")
  private String out = "";

  @Mixin private LanguageOption language = new LanguageOption();

  CardsVisitsCommand(Surroundings surroundings) {
    super(surroundings);
  }

  @Override
  boolean mayBegin() {
    return true;
  }

  @Override
  ExitCode run(Practice practice, String by) throws IOException {
    Path file = surroundings().path(out);
    Outcome<Language> said = language.of(practice);
    if (said instanceof Refused<Language> refused) {
      return refuse(refused);
    }
    Outcome<DrawnCards> drawn =
        new CardBook(practice).draw(day, names, said.orThrow(), new SecureRandom(), by);
    if (drawn instanceof Refused<DrawnCards> refused) {
      return refuse(refused);
    }
    DrawnCards cards = drawn.orThrow();
    ExitCode end = CardFile.write(console(), cards.sheet(), cards.cards(), file);
    for (String visit : cards.without()) {
      console().complain("vestibule: visit " + visit + " has no card: list and record disagree.");
      console().complain("  What to do: \"visits list\" says about what; put that right first.");
    }
    return end == ExitCode.DONE && !cards.without().isEmpty() ? ExitCode.NEEDS_A_PERSON : end;
  }
}
