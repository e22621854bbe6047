package org.vestibule.intake;

import com.drew.lang.ByteArrayReader;
import com.drew.metadata.Metadata;
import com.drew.metadata.icc.IccDirectory;
import com.drew.metadata.icc.IccReader;
import java.util.List;
import org.vestibule.jpeg.Embedded;
import org.vestibule.jpeg.IccProfile;
import org.vestibule.jpeg.JpegStructure;

/** Reads the name of the embedded colour profile (ICC.1, tag desc). */
final class IccFacts {

  private IccFacts() {}

  static CaptureFactsBuilder read(
      JpegStructure structure, CaptureFactsBuilder facts, List<String> warnings) {
    IccProfile profile = structure.iccProfile();
    if (profile == null) {
      if (structure.has(Embedded.ICC_PROFILE)) {
        warnings.add("the embedded colour profile is not whole and was left aside");
      }
      return facts;
    }
    Metadata metadata = new Metadata();
    try {
      new IccReader().extract(new ByteArrayReader(profile.bytes()), metadata);
    } catch (RuntimeException e) {
      warnings.add(
          "the embedded colour profile could be read in part only ("
              + e.getClass().getSimpleName()
              + ")");
    }
    IccDirectory directory = metadata.getFirstDirectoryOfType(IccDirectory.class);
    String description =
        directory == null ? null : directory.getDescription(IccDirectory.TAG_TAG_desc);
    return facts.iccDescription(
        description == null || description.isBlank() ? null : description.strip());
  }
}
