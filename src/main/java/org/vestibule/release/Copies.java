package org.vestibule.release;

import java.io.IOException;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Base64;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.vestibule.assign.Crop;
import org.vestibule.base.Outcome;
import org.vestibule.base.Outcome.Refused;
import org.vestibule.base.Turn;
import org.vestibule.deid.Attestation;
import org.vestibule.deid.Confidentiality;
import org.vestibule.deid.Deidentifier;
import org.vestibule.deid.ProfileOption;
import org.vestibule.deid.Substitutes;
import org.vestibule.dental.PatientOrientation;
import org.vestibule.dicom.DataSet;
import org.vestibule.dicom.Part10Reader;
import org.vestibule.dicom.Part10Writer;
import org.vestibule.dicom.Tags;
import org.vestibule.dicom.TransferSyntax;
import org.vestibule.encode.Codestream;
import org.vestibule.jpeg.Preview;

/** Makes the copy of one object by an order's purpose. */
final class Copies {

  /** Longer side in pixels of the picture on the sheet. */
  private static final int SMALL_SIDE = 440;

  /**
   * One copy.
   *
   * @param dicom the file's bytes
   * @param uid its SOP Instance UID
   * @param pseudonym what stands for the patient; empty if the patient is named
   * @param attested what a person said of the picture, by option
   */
  @SuppressWarnings("ArrayRecordComponent") // made here, written once, never compared
  record Copy(
      byte[] dicom,
      DataSet data,
      String uid,
      String pseudonym,
      Set<ProfileOption> attested,
      SheetRow row) {}

  private final Order order;
  private final Pseudonyms pseudonyms;

  Copies(Order order) {
    this.order = order;
    this.pseudonyms = order.pseudonyms();
  }

  /** The copy of an original that is to be called so. */
  Outcome<Copy> of(Original original, String name) throws IOException {
    Outcome<byte[]> file = original.file().read();
    if (file instanceof Refused<byte[]> refused) {
      return refused.as();
    }
    Outcome<DataSet> before = Part10Reader.read(file.orThrow()).map(read -> read.data());
    Crop crop = original.crop();
    if (crop == null) {
      return before
          .then(data -> allowed(data, original))
          .then(data -> made(file.orThrow(), data, original, name));
    }
    return before
        .then(data -> PrivacyCrop.of(data, crop, pseudonyms.uids(), brief(original)))
        .then(data -> allowed(data, original))
        .then(
            data ->
                Part10Writer.write(data, TransferSyntax.JPEG_BASELINE)
                    .then(cropped -> made(cropped, data, original, name)));
  }

  private static String brief(Original original) {
    return original.hash().substring(0, 10);
  }

  /** Refuses a face where the purpose has none, and text where it may name somebody. */
  private Outcome<DataSet> allowed(DataSet data, Original original) {
    if (!order.purpose().named() && said(data, Tags.BurnedInAnnotation)) {
      return Outcome.refused(
          "the picture of " + brief(original) + " holds text that names somebody",
          "leave it out: a copy without identity can't be made of it");
    }
    if (order.purpose().face() == Purpose.Faces.NEVER && showsFace(data)) {
      return Outcome.refused(
          "photograph "
              + brief(original)
              + " may show the face, and copies for \""
              + order.purpose().name()
              + "\" never do",
          "leave it out, or name the part without the face with --crop");
    }
    return Outcome.done(data);
  }

  /** True if a face may be recognised in the picture (Recognizable Visual Features). */
  static boolean showsFace(DataSet data) {
    return said(data, Tags.RecognizableVisualFeatures);
  }

  private static boolean said(DataSet data, int tag) {
    return data.string(tag).filter("YES"::equals).isPresent();
  }

  private Outcome<Copy> made(byte[] file, DataSet before, Original original, String name) {
    Purpose purpose = order.purpose();
    String pseudonym = pseudonyms.patient(original.issuer(), original.patientId());
    Substitutes substitutes =
        new Substitutes(
            pseudonym,
            pseudonyms.uids(),
            pseudonyms.shiftDays(original.issuer(), original.patientId()),
            purpose.keepsTimes(),
            KnownTexts.STANDARD);
    Set<ProfileOption> attested = attested(before, original);
    Outcome<byte[]> copy =
        purpose.named()
            ? Deidentifier.narrow(file, purpose.fields(), substitutes)
            : profile(attested, before)
                .then(profile -> Deidentifier.deidentify(file, profile, substitutes));
    return copy.then(
        bytes -> described(bytes, original, name, purpose.named() ? "" : pseudonym, attested));
  }

  /**
   * What the person who looked stands for: of a picture that shows a face no "no face", of a crop
   * always, since that is what it is for.
   */
  private Set<ProfileOption> attested(DataSet before, Original original) {
    Set<ProfileOption> attested = EnumSet.noneOf(ProfileOption.class);
    if (!order.lookedBy().isEmpty() && !order.purpose().named()) {
      attested.add(ProfileOption.CLEAN_PIXEL_DATA);
      if (!showsFace(before)) {
        attested.add(ProfileOption.CLEAN_RECOGNIZABLE_VISUAL_FEATURES);
      }
    }
    if (original.crop() != null) {
      attested.add(ProfileOption.CLEAN_RECOGNIZABLE_VISUAL_FEATURES);
    }
    return attested;
  }

  private Outcome<Confidentiality> profile(Set<ProfileOption> attested, DataSet before) {
    Set<ProfileOption> options = EnumSet.noneOf(ProfileOption.class);
    options.addAll(order.purpose().options());
    if (before
        .string(Tags.LongitudinalTemporalInformationModified)
        .filter("REMOVED"::equals)
        .isPresent()) {
      options.remove(ProfileOption.RETAIN_MODIFIED_DATES);
    }
    options.addAll(attested);
    List<Attestation> said = new ArrayList<>();
    attested.forEach(option -> said.add(new Attestation(option, order.lookedBy(), order.day())));
    return Confidentiality.of(options, said);
  }

  private Outcome<Copy> described(
      byte[] bytes, Original original, String name, String pseudonym, Set<ProfileOption> attested) {
    return Part10Reader.read(bytes)
        .map(read -> read.data())
        .then(
            data ->
                Codestream.of(data)
                    .then(jpeg -> Preview.of(jpeg, SMALL_SIDE, Turn.NONE))
                    .map(
                        small ->
                            new Copy(
                                bytes,
                                data,
                                data.string(Tags.SOPInstanceUID).orElseThrow(),
                                pseudonym,
                                attested,
                                new SheetRow(
                                    name,
                                    pseudonym.isEmpty() ? who(original) : pseudonym,
                                    when(original),
                                    original.view(),
                                    original.teeth(),
                                    edges(data),
                                    Base64.getEncoder().encodeToString(SmallJpeg.of(small)),
                                    small.width(),
                                    small.height()))));
  }

  /** The name where the purpose needs it, else the number. */
  private String who(Original original) {
    boolean nameNeeded = order.purpose().fields().contains(Tags.PatientName);
    return nameNeeded
        ? original.patientWords() + ", " + original.patientId()
        : original.patientId();
  }

  private static PatientOrientation.@Nullable Edges edges(DataSet data) {
    List<String> letters = data.strings(Tags.PatientOrientation);
    return PatientOrientation.parse(String.join("\\", letters))
        .map(PatientOrientation::edges)
        .orElse(null);
  }

  private String when(Original original) {
    LocalDate day = original.day();
    if (day == null) {
      return "";
    }
    return switch (order.purpose().dates()) {
      case FULL -> day.toString();
      case MODIFIED -> moved(original).map(LocalDate::toString).orElse("");
      case INTERVAL -> "day " + ChronoUnit.DAYS.between(first(original), day);
      case NONE -> "";
    };
  }

  /** The day as the copy tells it under the Modified Dates option. */
  Optional<LocalDate> moved(Original original) {
    return Optional.ofNullable(original.day())
        .map(day -> day.plusDays(pseudonyms.shiftDays(original.issuer(), original.patientId())));
  }

  private LocalDate first(Original original) {
    return order.originals().stream()
        .filter(other -> other.issuer().equals(original.issuer()))
        .filter(other -> other.patientId().equals(original.patientId()))
        .flatMap(other -> Optional.ofNullable(other.day()).stream())
        .min(LocalDate::compareTo)
        .orElseThrow();
  }
}
