package org.vestibule.flow;

import java.time.DateTimeException;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.NoSuchElementException;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.vestibule.assign.Decision;
import org.vestibule.base.Outcome;
import org.vestibule.base.Outcome.Done;
import org.vestibule.base.Outcome.Refused;
import org.vestibule.base.Turn;
import org.vestibule.dental.Capture;
import org.vestibule.dental.Edge;
import org.vestibule.dental.Incisors;
import org.vestibule.dental.Laid;
import org.vestibule.dental.LowerArchShown;
import org.vestibule.dental.Mirror;
import org.vestibule.dental.OrientationRule;
import org.vestibule.dicom.DataSet;
import org.vestibule.dicom.Element;
import org.vestibule.dicom.Part10Reader;
import org.vestibule.dicom.Tags;
import org.vestibule.encode.CameraFacts;
import org.vestibule.encode.Codestream;
import org.vestibule.encode.EncodeRequest;
import org.vestibule.encode.EncodedObject;
import org.vestibule.encode.Encoder;
import org.vestibule.encode.ObjectIdentity;
import org.vestibule.intake.CaptureFacts;

/**
 * A filing read back from its objects, and proved: made again from what was read, the objects say
 * the same in every attribute. So whatever was read wrongly, or was damaged in one of several
 * places that say the same, is seen.
 *
 * @param decision as it would have been made had the frame been the photograph's file
 * @param comment taken apart
 */
record ReadFiling(Decision decision, CaptureFacts facts, ObjectComment comment) {

  private static final String AGAIN = "take its photograph in again";

  /** What is not made again the same, or is compared apart. */
  private static final List<Integer> NOT_COMPARED =
      List.of(Tags.PixelData, Tags.LossyImageCompressionRatio, Tags.ImageComments);

  /** A way in which a picture that lies right can have been laid. */
  private record Way(
      LowerArchShown lower, Mirror mirror, @Nullable Incisors incisors, @Nullable Edge up) {}

  /**
   * Reads a filing.
   *
   * @param by who has it entered again
   * @param why what the ledger keeps of where it comes from, in words
   */
  static Outcome<ReadFiling> of(
      Practice practice, DataSet frame, @Nullable DataSet crop, String by, List<String> why) {
    try {
      ObjectDecision said = new ObjectDecision(practice, frame, crop);
      CaptureFacts facts = ObjectFacts.of(frame);
      String differs = "";
      for (Way way : ways()) {
        Outcome<Decision> read = said.read(way.mirror(), way.incisors(), way.up(), by, why);
        if (read instanceof Refused<Decision> refused) {
          return refused.as();
        }
        Optional<Laid> laid = laid(read.orThrow(), way, frame);
        if (laid.isPresent()) {
          Outcome<String> difference =
              difference(
                  new ReadFiling(read.orThrow(), facts, said.comment()), laid.get(), frame, crop);
          if (difference instanceof Refused<String> refused) {
            return refused.as();
          }
          differs = difference.orThrow();
          if (differs.isEmpty()) {
            return Outcome.done(new ReadFiling(read.orThrow(), facts, said.comment()));
          }
        }
      }
      return Outcome.refused(
          differs.isEmpty()
              ? "its view and the way it lies don't fit together"
              : "made again from what it says, it would not say the same: " + differs,
          AGAIN);
    } catch (DateTimeException | IllegalArgumentException | NoSuchElementException unreadable) {
      return Outcome.refused("a part of what it says can't be read back", AGAIN);
    }
  }

  private static List<Way> ways() {
    List<Way> ways = new ArrayList<>();
    for (LowerArchShown lower : LowerArchShown.values()) {
      for (Mirror mirror : List.of(Mirror.NONE, Mirror.CORRECTED)) {
        ways.add(new Way(lower, mirror, null, null));
        ways.add(new Way(lower, mirror, null, Edge.TOP));
        for (Incisors incisors : Incisors.values()) {
          ways.add(new Way(lower, mirror, incisors, null));
        }
      }
    }
    return ways;
  }

  private static Optional<Laid> laid(Decision decision, Way way, DataSet frame) {
    Capture capture = new Capture(way.mirror(), way.incisors(), null, false, false, way.up(), true);
    Outcome<Laid> laid = OrientationRule.lay(decision.view(), way.lower(), capture);
    return laid instanceof Done<Laid> done
            && done.value().turn() == Turn.NONE
            && List.of(done.value().shown().right(), done.value().shown().down())
                .equals(frame.strings(Tags.PatientOrientation))
        ? Optional.of(done.value())
        : Optional.empty();
  }

  /**
   * A zone by which an object made again says as much of its offset as the one that is there,
   * whatever the practice's zone is by now.
   */
  private static ZoneId zone(DataSet frame, CaptureFacts facts) {
    Optional<String> said = frame.string(Tags.TimezoneOffsetFromUTC);
    if (said.isPresent()) {
      return ZoneOffset.of(said.get());
    }
    ZoneOffset offset = facts.offset();
    boolean west = offset != null && offset.getTotalSeconds() > 0;
    return ZoneOffset.ofHours(west ? -1 : 1);
  }

  /** Where the objects made again say something else, in words; empty if nowhere. */
  private static Outcome<String> difference(
      ReadFiling read, Laid laid, DataSet frame, @Nullable DataSet crop) {
    EncodeRequest request =
        new EncodeRequest(
            read.facts(),
            read.decision(),
            laid,
            Turn.NONE,
            identity(frame),
            crop == null ? null : identity(crop),
            read.comment().part(),
            frame.string(Tags.InstitutionName).orElse(""),
            zone(frame, read.facts()));
    return Codestream.of(frame)
        .then(
            picture ->
                new Encoder(CameraFacts.standard())
                    .encodeAgain(picture, frame.bytes(Tags.ICCProfile), request))
        .map(
            made -> {
              String first = difference(made.get(0), frame);
              return !first.isEmpty() || crop == null ? first : difference(made.get(1), crop);
            });
  }

  private static String difference(EncodedObject made, DataSet there) {
    DataSet again = Part10Reader.read(made.toByteArray()).orThrow().data().copy();
    DataSet found = there.copy();
    String words = ObjectComment.withoutEdges(found.string(Tags.ImageComments).orElse(""));
    if (!words.equals(again.string(Tags.ImageComments).orElse(""))) {
      return Tags.text(Tags.ImageComments);
    }
    for (int tag : NOT_COMPARED) {
      again.remove(tag);
      found.remove(tag);
    }
    for (Element element : again) {
      if (!found.element(element.tag()).equals(Optional.of(element))) {
        return Tags.text(element.tag());
      }
    }
    for (Element element : found) {
      if (!again.contains(element.tag())) {
        return Tags.text(element.tag());
      }
    }
    return "";
  }

  static ObjectIdentity identity(DataSet object) {
    return new ObjectIdentity(
        object.string(Tags.SOPInstanceUID).orElseThrow(),
        object.string(Tags.StudyInstanceUID).orElseThrow(),
        object.string(Tags.SeriesInstanceUID).orElseThrow(),
        (int) object.integer(Tags.SeriesNumber).orElseThrow(),
        (int) object.integer(Tags.InstanceNumber).orElseThrow());
  }
}
