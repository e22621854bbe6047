package org.vestibule.cli;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.vestibule.assign.PersonWords;
import org.vestibule.assign.PhotoFact;
import picocli.CommandLine.Option;

/** What a person says about a photograph. */
final class FactsOptions {

  @Option(names = "--visit", paramLabel = "KEY", description = "The visit, by its key in the list.")
  private @Nullable String visit;

  @Option(
      names = "--patient",
      paramLabel = "NUMBER",
      description = "The patient's number, if only one visit of theirs fits the time.")
  private @Nullable String patient;

  @Option(
      names = "--view",
      paramLabel = "WORDS",
      description = "The view, such as \"upper occlusal\" or \"right buccal\".")
  private @Nullable String view;

  @Option(
      names = "--teeth",
      paramLabel = "TEETH",
      description =
          "The teeth it is about, such as 16, 13-23, \"upper right 6\". Here, and for crop, accessory,"
              + " stage, treatment and note: none takes away what was said before.")
  private @Nullable String teeth;

  @Option(
      names = "--mirror",
      paramLabel = "STATE",
      description = "none, \"as shot\" (still a mirror image), or corrected (already flipped).")
  private @Nullable String mirror;

  @Option(
      names = "--incisors",
      paramLabel = "EDGE",
      description = "Where the incisors lie as the sheet shows it: top, bottom, left or right.")
  private @Nullable String incisors;

  @Option(
      names = "--up",
      paramLabel = "EDGE",
      description =
          "Which edge of the picture on the sheet is towards the top of the head: top, bottom, left"
              + " or right. For views other than occlusal ones, where the phone noted it wrongly or"
              + " not at all.")
  private @Nullable String up;

  @Option(
      names = "--crop",
      paramLabel = "L,T,R,B",
      description = "The part to show, as fractions of the picture on the sheet: 0.1,0.2,0.9,0.8.")
  private @Nullable String crop;

  @Option(
      names = "--accessory",
      paramLabel = "WORDS",
      description = "What may be in the picture, such as contraster; may be repeated.")
  private List<String> accessories = new ArrayList<>();

  @Option(
      names = "--stage",
      paramLabel = "WORD",
      description = "before, isolated, prepared, during, after or follow-up.")
  private @Nullable String stage;

  @Option(names = "--treatment", paramLabel = "WORDS", description = "The treatment it belongs to.")
  private @Nullable String treatment;

  @Option(names = "--note", paramLabel = "WORDS", description = "A note about the photograph.")
  private @Nullable String note;

  @Option(
      names = "--trim",
      description = "Edge columns or rows that can't be turned without re-encoding may be dropped.")
  private boolean trim;

  @Option(
      names = "--salvage",
      description = "Of a damaged picture, file the sound rows; the object says that it is a part.")
  private boolean salvage;

  /** What was said; who states the mirror of a photograph named by its id has looked at it. */
  PersonWords words(String by) {
    PersonWords person = PersonWords.by(by);
    return (mirror == null ? person : person.seenByPerson())
        .with(PhotoFact.VISIT, visit)
        .with(PhotoFact.PATIENT, patient)
        .with(PhotoFact.VIEW, view)
        .with(PhotoFact.TEETH, teeth)
        .with(PhotoFact.MIRROR, mirror)
        .with(PhotoFact.INCISORS, incisors)
        .with(PhotoFact.UP, up)
        .with(PhotoFact.CROP, crop)
        .with(PhotoFact.ACCESSORIES, String.join(";", accessories))
        .with(PhotoFact.STAGE, stage)
        .with(PhotoFact.TREATMENT, treatment)
        .with(PhotoFact.NOTE, note)
        .with(PhotoFact.TRIM, trim ? "yes" : null)
        .with(PhotoFact.SALVAGE, salvage ? "yes" : null);
  }
}
