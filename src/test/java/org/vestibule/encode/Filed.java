package org.vestibule.encode;

import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.vestibule.assign.Crop;
import org.vestibule.assign.Decision;
import org.vestibule.assign.Patient;
import org.vestibule.assign.Sex;
import org.vestibule.assign.Visit;
import org.vestibule.base.Turn;
import org.vestibule.dental.AccessoryCatalogue;
import org.vestibule.dental.Capture;
import org.vestibule.dental.Incisors;
import org.vestibule.dental.Laid;
import org.vestibule.dental.LowerArchShown;
import org.vestibule.dental.Mirror;
import org.vestibule.dental.Notation;
import org.vestibule.dental.OrientationRule;
import org.vestibule.dental.Stage;
import org.vestibule.dental.TeethReader;
import org.vestibule.dental.View;
import org.vestibule.dental.ViewCatalogue;
import org.vestibule.intake.CaptureFacts;

/** An invented visit and decisions about its photographs. */
final class Filed {

  static final ZoneId ZONE = ZoneId.of("Europe/Vienna");

  static final Visit VISIT =
      new Visit(
          "V-2026-0311-1",
          new Patient("00417", "OLDMILL", "Blåbær^Signe", LocalDate.of(1988, 4, 2), Sex.FEMALE),
          LocalDateTime.of(2026, 3, 11, 9, 0),
          LocalDateTime.of(2026, 3, 11, 9, 45),
          "ACC-7",
          "Tallgrass^Orla",
          "Quillfeather^Bo",
          "");

  static final ObjectIdentity FRAME = new ObjectIdentity("2.25.1001", "2.25.1", "2.25.11", 1, 1);
  static final ObjectIdentity CROP = new ObjectIdentity("2.25.1002", "2.25.1", "2.25.12", 2, 1);

  private Filed() {}

  static CaptureFacts facts(@Nullable Integer orientation) {
    return CaptureFacts.builder()
        .takenAt(LocalDateTime.of(2026, 3, 11, 9, 12, 33, 120_000_000))
        .offset(ZoneOffset.ofHours(1))
        .make("Lumo")
        .model("Lumo P1")
        .lens("Lumo P1 main lens 5.4mm f/1.8")
        .exposureSeconds(0.008)
        .fNumber(1.8)
        .iso(64)
        .focalLengthMm(5.4)
        .focalLength35Mm(26)
        .flash(0x49)
        .whiteBalance(0)
        .digitalZoomRatio(1.5)
        .orientation(orientation)
        .build();
  }

  static Decision decision(
      String view, String teeth, Mirror mirror, @Nullable Incisors incisors, @Nullable Crop crop) {
    return new Decision(
        VISIT,
        ViewCatalogue.standard().byKey(view).orElseThrow(),
        teeth.isEmpty()
            ? org.vestibule.dental.Teeth.NONE
            : new TeethReader(Notation.ISO_3950).read(teeth).orThrow(),
        mirror,
        incisors,
        null,
        true,
        crop,
        List.of(
            AccessoryCatalogue.byKey("retractor-c").orElseThrow(),
            AccessoryCatalogue.byKey("light-ring-flash").orElseThrow()),
        Stage.BEFORE,
        "Onlay",
        "Grüße aus der Mühle",
        true,
        false,
        "Bo Quillfeather",
        List.of("a person said so"));
  }

  static EncodeRequest request(Decision decision, @Nullable Integer orientation) {
    View view = decision.view();
    Laid laid =
        OrientationRule.lay(
                view,
                LowerArchShown.INCISORS_DOWN,
                new Capture(decision.mirror(), decision.incisors(), orientation, false, false)
                    .seenByPerson())
            .orThrow();
    return new EncodeRequest(
        facts(orientation),
        decision,
        laid,
        orientation == null ? Turn.NONE : Turn.ofExif(orientation),
        FRAME,
        decision.crop() == null ? null : CROP,
        "",
        "Practice at the Old Mill",
        ZONE);
  }
}
