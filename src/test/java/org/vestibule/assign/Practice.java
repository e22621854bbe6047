package org.vestibule.assign;

import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import javax.imageio.ImageIO;
import org.jspecify.annotations.Nullable;
import org.vestibule.base.ContentHash;
import org.vestibule.dental.LowerArchShown;
import org.vestibule.dental.Notation;
import org.vestibule.dental.TeethReader;
import org.vestibule.dental.ViewCatalogue;
import org.vestibule.intake.Arrival;
import org.vestibule.intake.CaptureFacts;
import org.vestibule.intake.CaptureFactsBuilder;
import org.vestibule.intake.LeftOut;
import org.vestibule.intake.LeftOutKind;
import org.vestibule.intake.Photo;
import org.vestibule.intake.Roll;
import org.vestibule.jpeg.JpegStructure;

/** An invented practice with two patients, its lists and its photographs. */
final class Practice {

  static final ZoneId ZONE = ZoneId.of("Europe/Vienna");
  static final String HEAD =
      "file,taken,visit,patient,view,teeth,mirror,incisors,crop,accessories,stage,treatment,note,"
          + "trim,by\n";
  static final LocalDateTime IN_A = LocalDateTime.of(2026, 3, 11, 9, 10);
  static final LocalDateTime IN_B = LocalDateTime.of(2026, 3, 11, 10, 40);
  static final LocalDateTime NOBODY = LocalDateTime.of(2026, 3, 11, 13, 0);

  private static final String VISITS =
      """
      visit,patient id,name,start,end
      VC,00900,"Oak, Una",2026-03-11 08:50,08:55
      VA,00417,"Ash, Ida",2026-03-11 09:00,09:45
      VB,00562,"Elm, Bo",2026-03-11 10:15,11:00
      VA2,00417,"Ash, Ida",2026-03-12 09:00,09:45
      VN,00900,"Oak, Una",2026-10-25 02:00,03:30
      """;
  private static final JpegStructure STRUCTURE = JpegStructure.read(picture()).orThrow();

  private final List<Photo> photos = new ArrayList<>();
  private final List<LeftOut> leftOut = new ArrayList<>();
  private final List<NamePattern> patterns = new ArrayList<>();
  private final List<CaptureDeclaration> declarations = new ArrayList<>();
  private @Nullable Manifest manifest;
  private boolean oneExport;

  Practice rows(String... rows) {
    return list(HEAD.strip(), rows);
  }

  Practice list(String header, String... rows) {
    String text = header + "\n" + String.join("\n", rows) + "\n";
    manifest = Manifest.parse(text.getBytes(StandardCharsets.UTF_8), "list").orThrow();
    return this;
  }

  Practice pattern(String pattern) {
    patterns.add(NamePattern.parse(pattern).orThrow());
    return this;
  }

  Practice declares(String view, String mirror, String incisors) {
    declarations.add(
        CaptureDeclaration.of(view, "P1", mirror, incisors, "Bo Quillfeather").orThrow());
    return this;
  }

  Practice oneExport() {
    oneExport = true;
    return this;
  }

  Practice photo(String name, CaptureFacts facts) {
    photos.add(
        new Photo(
            new Arrival(Path.of("roll", name), name, 10, Instant.EPOCH, hash(name)),
            facts,
            STRUCTURE,
            List.of(),
            List.of()));
    return this;
  }

  /** A file that was left out because a photograph has the same content. */
  Practice duplicate(String name, String of) {
    leftOut.add(new LeftOut(name, LeftOutKind.DUPLICATE, "a copy", "nothing to do", hash(of)));
    return this;
  }

  private static ContentHash hash(String name) {
    return ContentHash.of(name.getBytes(StandardCharsets.UTF_8));
  }

  /** What this practice knows with nothing but a list of visits. */
  static AssignSources sources(VisitList visits) {
    return new AssignSources(
        visits,
        null,
        List.of(),
        false,
        List.of(),
        ViewCatalogue.standard(),
        new TeethReader(Notation.ISO_3950),
        LowerArchShown.INCISORS_DOWN,
        ZONE,
        "Nightly");
  }

  Assigner assigner() {
    return new Assigner(
        new AssignSources(
            VisitList.parse(VISITS.getBytes(StandardCharsets.UTF_8), "visits", "").orThrow(),
            manifest,
            patterns,
            oneExport,
            declarations,
            ViewCatalogue.standard(),
            new TeethReader(Notation.ISO_3950),
            LowerArchShown.INCISORS_DOWN,
            ZONE,
            "Nightly"));
  }

  /** What becomes of the first photograph. */
  Assignment first() {
    return assign(0);
  }

  /** The same with what was said by the phones that it came by. */
  Assignment byPhone(List<PersonWords> said) {
    return assigner()
        .forRoll(new Roll(photos, leftOut), RollCards.NONE, photo -> said)
        .assign(photos.get(0), List.of());
  }

  Assignment assign(int index) {
    return assigner().assign(photos.get(index), new Roll(photos, leftOut));
  }

  static CaptureFactsBuilder taken(@Nullable LocalDateTime at) {
    return CaptureFacts.builder().takenAt(at).make("Lumo").model("P1").orientation(1);
  }

  static byte[] picture() {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    try {
      ImageIO.write(new BufferedImage(16, 16, BufferedImage.TYPE_INT_RGB), "jpg", out);
    } catch (IOException e) {
      throw new UncheckedIOException("writing to memory failed", e);
    }
    return out.toByteArray();
  }
}
