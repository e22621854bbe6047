package org.vestibule.intake;

import java.util.Optional;
import java.util.Set;

/** Files whose first bytes say that they are no JPEG, and files too large to be read. */
final class KindRules {

  private static final Set<String> PICTURE_NAMES = Set.of("jpg", "jpeg", "jpe", "heic", "heif");

  private KindRules() {}

  static Optional<LeftOut> leaveOut(
      FoundFile file, FileKind kind, Neighbours neighbours, IntakeRules rules) {
    Optional<LeftOut> unfit =
        switch (kind) {
          case JPEG, HEIF -> Optional.empty();
          case VIDEO -> Optional.of(video(file, neighbours));
          case ZEROS -> Optional.of(zeros(file));
          case PNG -> other(file, "PNG", "it may be a screenshot; take the photograph itself");
          case GIF -> other(file, "GIF", "take the photograph itself");
          case WEBP ->
              other(file, "WebP", "it came through a messenger or a browser; take the original");
          case TIFF ->
              other(file, "TIFF or raw", "export it as JPEG at full size, or leave it out");
          case BMP -> other(file, "BMP", "take the photograph itself");
          case JPEG_2000 -> other(file, "JPEG 2000", "export it as JPEG, or leave it out");
          case JPEG_XL -> other(file, "JPEG XL", "set the phone's camera to save JPEG");
          case DICOM -> document(file, "a DICOM file", "it is a record already; take it out");
          case PDF -> document(file, "a PDF document", "take it out of the folder");
          case OTHER -> Optional.of(unknown(file));
        };
    if (unfit.isEmpty() && file.sizeBytes() > rules.largestBytes()) {
      return Optional.of(
          file.leave(
              LeftOutKind.TOO_LARGE,
              "it has "
                  + file.sizeBytes()
                  + " bytes, at most "
                  + rules.largestBytes()
                  + " are read",
              "check that it is a single photograph"));
    }
    return unfit;
  }

  private static LeftOut video(FoundFile file, Neighbours neighbours) {
    if (neighbours.hasStill(file.name())) {
      return file.leave(
          LeftOutKind.VIDEO_COMPANION,
          "it is the moving part of the photograph of the same name",
          "only the photograph is taken; nothing needs to be done");
    }
    return file.leave(
        LeftOutKind.VIDEO,
        "it is a video, only photographs are taken",
        "keep it elsewhere if it belongs to the record");
  }

  private static LeftOut zeros(FoundFile file) {
    return file.leave(
        LeftOutKind.DAMAGED,
        "it starts with zeros only: its copy or download never finished",
        "copy it from the phone again");
  }

  private static Optional<LeftOut> other(FoundFile file, String kind, String advice) {
    String named =
        PICTURE_NAMES.contains(FileNames.extension(file.name())) ? ", whatever its name says" : "";
    return Optional.of(
        file.leave(
            LeftOutKind.OTHER_PICTURE,
            "it is a " + kind + " picture" + named + ", only JPEG is taken",
            advice));
  }

  private static Optional<LeftOut> document(FoundFile file, String what, String advice) {
    return Optional.of(file.leave(LeftOutKind.NOT_A_PICTURE, "it is " + what, advice));
  }

  private static LeftOut unknown(FoundFile file) {
    return PICTURE_NAMES.contains(FileNames.extension(file.name()))
        ? file.leave(
            LeftOutKind.DAMAGED,
            "it is named like a picture, but its bytes are none",
            "copy it from the phone again")
        : file.leave(LeftOutKind.NOT_A_PICTURE, "it is not a picture", "take it out of the folder");
  }
}
