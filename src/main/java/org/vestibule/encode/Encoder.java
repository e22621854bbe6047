package org.vestibule.encode;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.vestibule.assign.Crop;
import org.vestibule.base.Outcome;
import org.vestibule.base.Outcome.Done;
import org.vestibule.base.Outcome.Refused;
import org.vestibule.base.Turn;
import org.vestibule.dental.View;
import org.vestibule.dicom.DataSet;
import org.vestibule.dicom.Part10Writer;
import org.vestibule.dicom.Tags;
import org.vestibule.dicom.TransferSyntax;
import org.vestibule.jpeg.ColourModel;
import org.vestibule.jpeg.CropBox;
import org.vestibule.jpeg.IccProfile;
import org.vestibule.jpeg.JpegStructure;
import org.vestibule.jpeg.SoundScan;
import org.vestibule.jpeg.TranscodePlan;
import org.vestibule.jpeg.Transcoded;
import org.vestibule.jpeg.Transcoder;

/**
 * Makes VL Photographic Image objects (PS3.3 A.32.4, JPEG Baseline in one fragment) out of a
 * photograph and a decision: the frame, and the crop if one was asked for. The same bytes, decision
 * and identities give the same files.
 */
public final class Encoder {

  private final CameraFacts allowed;

  public Encoder(CameraFacts allowed) {
    this.allowed = allowed;
  }

  /** The frame first, then the crop if there is one; a picture that can't be filed is refused. */
  public Outcome<List<EncodedObject>> encode(byte[] source, EncodeRequest request) {
    return encode(source, request, null);
  }

  /**
   * The same of a file that was looked at.
   *
   * @param known what the look said of these very bytes; null if nothing
   */
  public Outcome<List<EncodedObject>> encode(
      byte[] source, EncodeRequest request, @Nullable SoundScan known) {
    Outcome<JpegStructure> built =
        known != null && known.maySpeakOf(source)
            ? Outcome.done(known.structure())
            : JpegStructure.read(source);
    return built.then(structure -> encode(source, structure, profile(structure), request, known));
  }

  /**
   * The same from the bare codestream of an earlier object, whose colour profile stands beside it.
   *
   * @param profile the earlier object's ICC profile; empty if it has none
   */
  public Outcome<List<EncodedObject>> encodeAgain(
      byte[] codestream, byte[] profile, EncodeRequest request) {
    return JpegStructure.read(codestream)
        .then(structure -> encode(codestream, structure, profile, request, null));
  }

  /** The colour profile in a file; empty if it has none. */
  public static byte[] profile(JpegStructure structure) {
    IccProfile profile = structure.iccProfile();
    return profile == null ? new byte[0] : profile.bytes();
  }

  private Outcome<List<EncodedObject>> encode(
      byte[] source,
      JpegStructure structure,
      byte[] profile,
      EncodeRequest request,
      @Nullable SoundScan known) {
    List<EncodedObject> objects = new ArrayList<>();
    for (Role role : roles(request)) {
      Outcome<EncodedObject> made = object(source, structure, profile, request, role, known);
      if (made instanceof Done<EncodedObject> done) {
        objects.add(done.value());
      } else {
        return ((Refused<EncodedObject>) made).as();
      }
    }
    return Outcome.done(objects);
  }

  private static List<Role> roles(EncodeRequest request) {
    return request.crop() == null ? List.of(Role.FRAME) : List.of(Role.FRAME, Role.CROP);
  }

  private Outcome<EncodedObject> object(
      byte[] source,
      JpegStructure structure,
      byte[] profile,
      EncodeRequest request,
      Role role,
      @Nullable SoundScan known) {
    TranscodePlan plan = plan(structure, request, role);
    return Transcoder.transcode(source, plan, known)
        .then(picture -> write(picture, structure, profile, request, role, plan));
  }

  private static TranscodePlan plan(JpegStructure structure, EncodeRequest request, Role role) {
    return plan(
        structure,
        request.laid().turn(),
        request.sheet(),
        role == Role.CROP ? request.decision().crop() : null,
        request.decision().mayTrim());
  }

  private static TranscodePlan plan(
      JpegStructure structure, Turn turn, Turn sheet, @Nullable Crop crop, boolean mayTrim) {
    CropBox box = crop == null ? null : CropPlace.box(crop, sheet, turn, structure.frame().size());
    return new TranscodePlan(turn, box, mayTrim);
  }

  /**
   * The picture alone, as an object made of it would show it.
   *
   * @param turn from the stored picture to the shown one
   * @param sheet the turn from the stored picture to the one in which the crop is marked
   * @param crop the part to show; null for all of it
   * @param mayTrim true if edges that can't be turned may be dropped
   */
  public static Outcome<Transcoded> shown(
      byte[] source, Turn turn, Turn sheet, @Nullable Crop crop, boolean mayTrim) {
    return JpegStructure.read(source)
        .then(
            structure -> Transcoder.transcode(source, plan(structure, turn, sheet, crop, mayTrim)));
  }

  private Outcome<EncodedObject> write(
      Transcoded picture,
      JpegStructure structure,
      byte[] profile,
      EncodeRequest request,
      Role role,
      TranscodePlan plan) {
    ObjectIdentity identity = identity(request, role);
    DataSet object = new DataSet();
    object
        .put(Tags.SpecificCharacterSet, "ISO_IR 192")
        .put(Tags.SOPClassUID, Recipe.SOP_CLASS)
        .put(Tags.SOPInstanceUID, identity.sopInstanceUid());
    View view = request.decision().view();
    boolean heldBack = role == Role.FRAME && request.crop() != null;
    SeriesWords series = SeriesWords.of(view, role, request.crop() != null);
    IdentityPart.write(object, request.decision().visit(), identity, series);
    RequestPart.write(object, request.decision().visit());
    EquipmentPart.write(object, request.institution());
    AllowedDataSet camera = new AllowedDataSet(object, allowed);
    CameraPart.write(object, camera, request.facts());
    TimePart.write(object, camera, request.facts(), request.decision().visit(), request.zone());
    ViewPart.write(object, view, request.laid());
    StructurePart.write(object, view, request.decision().teeth());
    ReleasePart.write(object, view, heldBack);
    SchemePart.write(object, view);
    DevicePart.write(object, request.decision());
    ContextPart.write(object, view);
    CommentPart.write(object, request, heldBack, picture);
    if (role == Role.FRAME) {
      DerivationPart.frame(object, request.part());
    } else {
      DerivationPart.crop(object, request.frame(), picture);
    }
    boolean colour = structure.colourModel() != ColourModel.GRAY;
    PicturePart.write(object, picture, colour, profile);
    WithoutIdentity withoutIdentity = request.withoutIdentity();
    DataSet finished = withoutIdentity == null ? object : withoutIdentity.of(object);
    return Part10Writer.write(finished, TransferSyntax.JPEG_BASELINE)
        .map(file -> new EncodedObject(role, identity, file, plan, picture));
  }

  private static ObjectIdentity identity(EncodeRequest request, Role role) {
    ObjectIdentity crop = request.crop();
    return role == Role.CROP && crop != null ? crop : request.frame();
  }
}
