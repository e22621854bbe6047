package org.vestibule.intake;

import com.drew.lang.ByteArrayReader;
import com.drew.metadata.Metadata;
import com.drew.metadata.icc.IccDirectory;
import com.drew.metadata.icc.IccReader;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import org.vestibule.jpeg.Embedded;
import org.vestibule.jpeg.IccProfile;
import org.vestibule.jpeg.JpegStructure;

/** Reads the name of the embedded colour profile (ICC.1, tag desc). */
final class IccFacts {

  /** How the library prints a name in several languages: count, language, name in brackets. */
  private static final Pattern SEVERAL_LANGUAGES =
      Pattern.compile("^\\d+ [A-Za-z\\x00]{4}\\((.*?)\\)", Pattern.DOTALL);

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
    return facts.iccDescription(directory == null ? null : description(directory));
  }

  private static @Nullable String description(IccDirectory directory) {
    String text = directory.getDescription(IccDirectory.TAG_TAG_desc);
    if (text == null) {
      return null;
    }
    Matcher several = SEVERAL_LANGUAGES.matcher(text);
    String first = several.find() ? several.group(1) : text;
    String clean = first.replaceAll("\\p{Cntrl}", "").strip();
    return clean.isEmpty() ? null : clean;
  }
}
