package org.vestibule.flow;

import java.nio.file.Path;
import java.time.Duration;
import java.time.ZoneId;
import java.util.List;
import org.vestibule.assign.SortingRules;
import org.vestibule.audit.AuditRules;
import org.vestibule.dental.LowerArchShown;
import org.vestibule.dental.Notation;
import org.vestibule.forward.ForwardRules;
import org.vestibule.forward.worklist.WorklistRules;
import org.vestibule.quality.QualityThresholds;
import org.vestibule.words.Language;

/**
 * What one practice has settled.
 *
 * @param practiceId stands in every row of the ledger
 * @param practiceName written as the institution; empty if none
 * @param zone where the practice's clocks are
 * @param issuer who issues the patient numbers; empty if not said
 * @param notation how people here write teeth
 * @param lowerArch how the lower arch is shown
 * @param language of what is printed and handed out, and of pages where a browser asks for none
 * @param inbox where photographs arrive
 * @param objects where DICOM objects are kept
 * @param visits the visit list, which need not exist
 * @param views views of the practice's own, which need not exist
 * @param settle how long a file must be unchanged before it is taken
 * @param namePatterns what folder and file names mean
 * @param oneExport true if folders and visit list come out of one program and are one fact
 * @param captures how named persons said a view is always taken
 * @param sorting what the practice has settled about sorting by cards
 * @param ageOfMajority from how many years on a patient signs a consent alone
 * @param quality from where on something about a picture is worth a word
 * @param night what it has settled about the nightly run
 * @param web what it has settled about its pages
 * @param forward what it has settled about delivery to archives
 * @param audit what it has settled about audit messages
 * @param worklist which worklist it asks for orders
 * @param door what its objects say of the patients' identity
 */
public record Settings(
    String practiceId,
    String practiceName,
    ZoneId zone,
    String issuer,
    Notation notation,
    LowerArchShown lowerArch,
    Language language,
    Path inbox,
    Path objects,
    Path visits,
    Path views,
    Duration settle,
    List<String> namePatterns,
    boolean oneExport,
    List<StatedCapture> captures,
    SortingRules sorting,
    int ageOfMajority,
    QualityThresholds quality,
    NightRules night,
    WebRules web,
    ForwardRules forward,
    AuditRules audit,
    WorklistRules worklist,
    DoorRules door) {

  /**
   * How a view is always taken here with one kind of camera, as a named person stated it.
   *
   * @param view the view's key
   * @param camera the model as the camera writes it
   * @param mirror "none", "as shot" or "corrected"
   * @param incisors "top", "bottom", "left", "right" of the picture as the file stores it, before
   *     any rotation by Exif, or empty
   * @param by who stated it
   */
  public record StatedCapture(
      String view, String camera, String mirror, String incisors, String by) {}

  /** Many laws' age; the site's own law decides (from memory). */
  private static final int AGE_OF_MAJORITY = 18;

  public Settings {
    namePatterns = List.copyOf(namePatterns);
    captures = List.copyOf(captures);
  }

  /** What holds where nothing is configured. */
  public static Settings defaults(Path home, ZoneId zone) {
    return new Settings(
        "practice",
        "",
        zone,
        "",
        Notation.ISO_3950,
        LowerArchShown.INCISORS_DOWN,
        Language.ENGLISH,
        home.resolve("inbox"),
        home.resolve("objects"),
        home.resolve("visits.csv"),
        home.resolve("views.csv"),
        Duration.ofSeconds(10),
        List.of(),
        true,
        List.of(),
        SortingRules.STRICT,
        AGE_OF_MAJORITY,
        QualityThresholds.USUAL,
        NightRules.DEFAULT,
        WebRules.DEFAULT,
        ForwardRules.NONE,
        AuditRules.NONE,
        WorklistRules.NONE,
        DoorRules.CLINICAL);
  }
}
