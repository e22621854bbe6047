package org.vestibule.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.vestibule.base.Outcome;
import org.vestibule.base.Outcome.Refused;
import org.vestibule.card.CardSheet;
import org.vestibule.flow.Practice;
import org.vestibule.flow.ViewCardWords;
import org.vestibule.words.Language;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Draws view cards. */
@Command(
    name = "views",
    description = {
      "Draw a card for each view named; it can be used again and again.",
      "Photograph it, then take one photograph that shows this."
    })
final class CardsViewsCommand extends PracticeCommand {

  @Parameters(
      paramLabel = "VIEW",
      arity = "1..*",
      description = "The views, such as \"upper occlusal\" or \"right buccal\".")
  private List<String> views = new ArrayList<>();

  @Option(
      names = "--teeth",
      paramLabel = "TEETH",
      description = "The teeth it is about, such as 16, 13-23, \"upper right 6\".")
  private @Nullable String teeth;

  @Option(
      names = "--mirror",
      paramLabel = "STATE",
      description = "none, \"as shot\" (still a mirror image), or corrected (already flipped).")
  private @Nullable String mirror;

  @Option(
      names = "--incisors",
      paramLabel = "EDGE",
      description =
          "Where the incisors lie in the picture as the file stores it, before any rotation: top,"
              + " bottom, left or right.")
  private @Nullable String incisors;

  @Option(
      names = "--stage",
      paramLabel = "WORD",
      description = "before, isolated, prepared, during, after or follow-up.")
  private @Nullable String stage;

  @Option(
      names = "--out",
      required = true,
      paramLabel = "FILE",
      description = "The PDF to write. Nothing is overwritten.")
  private String out = "";

  @Mixin private LanguageOption language = new LanguageOption();

  CardsViewsCommand(Surroundings surroundings) {
    super(surroundings);
  }

  @Override
  boolean leavesNoTrace() {
    return true;
  }

  @Override
  ExitCode run(Practice practice) throws IOException {
    Path file = surroundings().path(out);
    Outcome<Language> said = language.of(practice);
    if (said instanceof Refused<Language> refused) {
      return refuse(refused);
    }
    Outcome<CardSheet> sheet =
        new ViewCardWords(views, teeth, mirror, incisors, stage).draw(practice, said.orThrow());
    if (sheet instanceof Refused<CardSheet> refused) {
      return refuse(refused);
    }
    return CardFile.write(console(), sheet.orThrow(), views.size(), file);
  }
}
