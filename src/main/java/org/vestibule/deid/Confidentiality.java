package org.vestibule.deid;

import java.util.ArrayList;
import java.util.Collection;
import java.util.Collections;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import org.vestibule.base.Outcome;
import org.vestibule.dicom.DataSet;
import org.vestibule.dicom.Tags;

/** The Basic Profile with the options that were chosen and, where one needs it, attested. */
public final class Confidentiality {

  /** The Basic Profile without any option. */
  public static final Confidentiality BASIC =
      new Confidentiality(EnumSet.noneOf(ProfileOption.class));

  private static final String BASIC_CODE = "113100";
  private static final String BASIC_MEANING = "Basic Application Confidentiality Profile";

  private final Set<ProfileOption> options;

  private Confidentiality(EnumSet<ProfileOption> options) {
    this.options = Collections.unmodifiableSet(options);
  }

  /**
   * The profile with these options; refused where two contradict each other, or where one needs a
   * person's word that isn't there.
   */
  public static Outcome<Confidentiality> of(
      Set<ProfileOption> options, Collection<Attestation> attestations) {
    if (options.contains(ProfileOption.RETAIN_FULL_DATES)
        && options.contains(ProfileOption.RETAIN_MODIFIED_DATES)) {
      return Outcome.refused(
          "dates can't be kept both in full and modified", "choose one of the two options");
    }
    for (ProfileOption option : options) {
      boolean attested = attestations.stream().anyMatch(a -> a.option() == option);
      if (option.needsAttestation() && !attested) {
        return Outcome.refused(
            "the option \"" + option.words() + "\" says what is in the picture, and nobody looked",
            "have a person look at each picture and give that person's name");
      }
    }
    EnumSet<ProfileOption> chosen = EnumSet.noneOf(ProfileOption.class);
    chosen.addAll(options);
    return Outcome.done(new Confidentiality(chosen));
  }

  public Set<ProfileOption> options() {
    return options;
  }

  boolean has(ProfileOption option) {
    return options.contains(option);
  }

  /** Items of CID 7050 for what is done: the Basic Profile, then the options by code. */
  public List<DataSet> codes() {
    List<DataSet> items = new ArrayList<>();
    items.add(item(BASIC_CODE, BASIC_MEANING));
    options.stream()
        .sorted(Comparator.comparing(ProfileOption::code))
        .forEach(option -> items.add(item(option.code(), option.meaning())));
    return items;
  }

  private static DataSet item(String code, String meaning) {
    return new DataSet()
        .put(Tags.CodeValue, code)
        .put(Tags.CodingSchemeDesignator, "DCM")
        .put(Tags.CodeMeaning, meaning);
  }
}
