package org.vestibule.check;

import java.awt.color.ColorSpace;
import java.awt.color.ICC_Profile;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.util.List;
import javax.imageio.ImageIO;
import org.vestibule.dicom.DataSet;
import org.vestibule.dicom.Part10Writer;
import org.vestibule.dicom.Tags;
import org.vestibule.dicom.TransferSyntax;

/** A whole, valid VL Photographic object of an invented patient, to be spoilt by the tests. */
public final class SamplePhotograph {

  static final int ROWS = 48;
  static final int COLUMNS = 64;

  private SamplePhotograph() {}

  /** An upper occlusal view through a mirror, turned back, with tooth 16 named. */
  public static DataSet data() {
    DataSet data = new DataSet();
    identity(data);
    series(data);
    image(data);
    what(data);
    camera(data);
    return data.putFragments(Tags.PixelData, jpeg());
  }

  public static byte[] file(DataSet data) {
    return Part10Writer.write(data, TransferSyntax.JPEG_BASELINE).orThrow();
  }

  static byte[] file() {
    return file(data());
  }

  public static DataSet code(String scheme, String value, String meaning) {
    return new DataSet()
        .put(Tags.CodeValue, value)
        .put(Tags.CodingSchemeDesignator, scheme)
        .put(Tags.CodeMeaning, meaning);
  }

  private static void identity(DataSet data) {
    data.put(Tags.SpecificCharacterSet, "ISO_IR 192")
        .put(Tags.SOPClassUID, "1.2.840.10008.5.1.4.1.1.77.1.4")
        .put(Tags.SOPInstanceUID, "2.25.314159265358979")
        .put(Tags.StudyInstanceUID, "2.25.271828182845904")
        .put(Tags.SeriesInstanceUID, "2.25.161803398874989")
        .put(Tags.PatientName, "Müster^Änne")
        .put(Tags.PatientID, "P-0001")
        .put(Tags.IssuerOfPatientID, "EXAMPLE")
        .put(Tags.PatientBirthDate, "19800229")
        .put(Tags.PatientSex, "F")
        .put(Tags.StudyDate, "20260305")
        .put(Tags.StudyTime, "090000")
        .put(Tags.StudyID, "1")
        .put(Tags.AccessionNumber, "A1")
        .put(Tags.ReferringPhysicianName, "Beispiel^Bo")
        .put(Tags.TimezoneOffsetFromUTC, "+0100");
  }

  private static void series(DataSet data) {
    data.put(Tags.Modality, "XC")
        .put(Tags.SeriesNumber, 1)
        .put(Tags.InstanceNumber, 1)
        .put(Tags.BodyPartExamined, "MOUTH")
        .put(Tags.Manufacturer, "Example")
        .put(Tags.ManufacturerModelName, "Phone One");
  }

  private static void image(DataSet data) {
    data.put(Tags.ImageType, "ORIGINAL", "PRIMARY")
        .put(Tags.PatientOrientation, "L", "P")
        .put(Tags.ContentDate, "20260305")
        .put(Tags.ContentTime, "090705")
        .put(Tags.AcquisitionDateTime, "20260305090705.25+0100")
        .put(Tags.SamplesPerPixel, 3)
        .put(Tags.PhotometricInterpretation, "YBR_FULL_422")
        .put(Tags.PlanarConfiguration, 0)
        .put(Tags.Rows, ROWS)
        .put(Tags.Columns, COLUMNS)
        .put(Tags.BitsAllocated, 8)
        .put(Tags.BitsStored, 8)
        .put(Tags.HighBit, 7)
        .put(Tags.PixelRepresentation, 0)
        .put(Tags.LossyImageCompression, "01")
        .put(Tags.LossyImageCompressionMethod, "ISO_10918_1")
        .put(Tags.LossyImageCompressionRatio, 8.5)
        .put(Tags.BurnedInAnnotation, "NO")
        .put(Tags.RecognizableVisualFeatures, "NO")
        .put(Tags.ICCProfile, ICC_Profile.getInstance(ColorSpace.CS_sRGB).getData())
        .put(Tags.ColorSpace, "SRGB");
  }

  private static void what(DataSet data) {
    data.put(Tags.AcquisitionContextSequence, List.of())
        .put(Tags.ImageLaterality, "R")
        .put(
            Tags.ViewCodeSequence,
            code("SCT", "260499007", "Occlusal projection")
                .put(
                    Tags.ViewModifierCodeSequence,
                    code("SCT", "787610003", "Mirrored photo image intraoral corrected")))
        .put(
            Tags.AnatomicRegionSequence,
            code("SCT", "123851003", "Mouth")
                .put(Tags.AnatomicRegionModifierSequence, code("SCT", "24028007", "Right")))
        .put(
            Tags.PrimaryAnatomicStructureSequence,
            code("SCT", "865995000", "Permanent maxillary right first molar tooth"))
        .put(
            Tags.DeviceSequence,
            code("SCT", "1332162007", "Intraoral photography mirror")
                .put(Tags.DeviceDescription, "front-surface mirror"));
  }

  private static void camera(DataSet data) {
    data.put(Tags.ExposureTimeInSeconds, 0.01)
        .put(Tags.FNumber, 1.8)
        .put(Tags.FocalLength, 4.2)
        .put(Tags.PhotographicSensitivity, "100")
        .put(Tags.LensMake, "Example");
  }

  /** A baseline picture without application segments. */
  public static byte[] jpeg() {
    BufferedImage image = new BufferedImage(COLUMNS, ROWS, BufferedImage.TYPE_INT_RGB);
    for (int y = 0; y < ROWS; y++) {
      for (int x = 0; x < COLUMNS; x++) {
        image.setRGB(x, y, ((x * 4) << 16) | ((y * 5) << 8) | 90);
      }
    }
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    try {
      ImageIO.write(image, "jpg", out);
    } catch (IOException e) {
      throw new AssertionError(e);
    }
    return withoutFirstSegment(out.toByteArray());
  }

  /** Drops the JFIF segment that the writer puts right after SOI. */
  private static byte[] withoutFirstSegment(byte[] jpeg) {
    int length = ((jpeg[4] & 0xFF) << 8) | (jpeg[5] & 0xFF);
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    out.write(jpeg, 0, 2);
    out.write(jpeg, 4 + length, jpeg.length - 4 - length);
    return out.toByteArray();
  }
}
