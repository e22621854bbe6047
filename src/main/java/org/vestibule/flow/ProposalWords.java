package org.vestibule.flow;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.vestibule.assign.Decision;
import org.vestibule.assign.PersonWords;
import org.vestibule.assign.PhotoFact;
import org.vestibule.assign.Proposal;
import org.vestibule.assign.WaitReason;

/** Proposals by name of the fact, each as a person would write it. */
final class ProposalWords {

  /** The word that takes away what was proposed or filed. */
  private static final String NONE = "none";

  private static final String LIKELY = " (usual, not stated)";

  private ProposalWords() {}

  static Map<String, String> of(Proposal proposal) {
    Map<String, String> words = byWord(proposal.facts());
    if (!proposal.mirrorStated()) {
      words.computeIfPresent(PhotoFact.MIRROR.word(), (fact, mirror) -> mirror + LIKELY);
    }
    return words;
  }

  /** A decision whose picture could not be filed, so that it need not be said again. */
  static Map<String, String> of(Decision decision, @Nullable Integer exifOrientation) {
    return byWord(decision.said(exifOrientation));
  }

  private static Map<String, String> byWord(Map<PhotoFact, String> facts) {
    Map<String, String> words = new LinkedHashMap<>();
    facts.forEach((fact, said) -> words.put(fact.word(), said));
    return words;
  }

  /** What of a proposal was stated, and is not merely usual. */
  static Map<String, String> stated(Map<String, String> proposal) {
    Map<String, String> stated = new LinkedHashMap<>(proposal);
    stated.values().removeIf(words -> words.endsWith(LIKELY));
    return stated;
  }

  static List<WaitingPhoto.Reason> reasons(List<WaitReason> reasons) {
    return reasons.stream()
        .map(
            reason ->
                new WaitingPhoto.Reason(reason.kind().name(), reason.sentence(), reason.advice()))
        .toList();
  }

  /** What a person said, completed by the proposal where it was stated and not merely usual. */
  static PersonWords completed(PersonWords said, Map<String, String> proposal) {
    PersonWords completed = said;
    for (PhotoFact fact : PhotoFact.values()) {
      String proposed = proposal.getOrDefault(fact.word(), "");
      if (!said.says(fact) && !settledOtherwise(fact, said) && !proposed.endsWith(LIKELY)) {
        completed = completed.with(fact, proposed);
      }
    }
    for (PhotoFact fact : PhotoFact.values()) {
      if (fact.mayBeNone() && said.get(fact).equalsIgnoreCase(NONE)) {
        completed = completed.with(fact, "");
      }
    }
    return completed;
  }

  /** Who names the visit alone, or the patient alone, does not mean the other as it was. */
  private static boolean settledOtherwise(PhotoFact fact, PersonWords said) {
    return (fact == PhotoFact.VISIT && said.says(PhotoFact.PATIENT))
        || (fact == PhotoFact.PATIENT && said.says(PhotoFact.VISIT));
  }
}
