package org.vestibule.assign;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.ObjectMapper;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.vestibule.base.Outcome;
import org.vestibule.dental.AccessoryCatalogue;
import org.vestibule.dental.Edge;
import org.vestibule.dental.Incisors;
import org.vestibule.dental.Mirror;
import org.vestibule.dental.Notation;
import org.vestibule.dental.Stage;
import org.vestibule.dental.Teeth;
import org.vestibule.dental.TeethReader;
import org.vestibule.dental.ViewCatalogue;

class DecisionRecordTest {

  private static final Visit VISIT =
      new Visit(
          "V1",
          new Patient("00417", "MILL", "Ash^Ida", LocalDate.of(1988, 4, 2), Sex.FEMALE),
          LocalDateTime.of(2026, 3, 11, 9, 0),
          LocalDateTime.of(2026, 3, 11, 9, 45, 30),
          "ACC",
          "Elm^Bo",
          "Oak^Una",
          "1.2.3");

  @Test
  void comesBackFromJson() throws Exception {
    Decision full =
        decision(
            new TeethReader(Notation.ISO_3950).read("implant 36, tooth 37").orThrow(),
            Incisors.LEFT,
            new Crop(0.1, 0.2, 1.0 / 3, 0.9),
            Stage.FOLLOW_UP);
    Decision bare = decision(Teeth.NONE, null, null, null);
    ObjectMapper json = new ObjectMapper();
    for (Decision decision : List.of(full, bare)) {
      String kept = json.writeValueAsString(DecisionRecord.of(decision));
      DecisionRecord read = json.readValue(kept, DecisionRecord.class);
      assertThat(read.toDecision(ViewCatalogue.standard())).isEqualTo(Outcome.done(decision));
    }
  }

  @Test
  void everyViewStageMirrorAndAccessoryComesBack() {
    for (var view : ViewCatalogue.standard().all()) {
      for (Stage stage : Stage.values()) {
        Decision decision =
            new Decision(
                VISIT,
                view,
                Teeth.NONE,
                Mirror.CORRECTED,
                null,
                Edge.LEFT,
                true,
                null,
                AccessoryCatalogue.all(),
                stage,
                "t",
                "n",
                true,
                view.key().length() % 2 == 0,
                "Ann",
                List.of("f"));
        assertThat(DecisionRecord.of(decision).toDecision(ViewCatalogue.standard()).orThrow())
            .isEqualTo(decision);
      }
    }
  }

  @Test
  void refusesWhatIsNoLongerKnown() throws Exception {
    String kept =
        new ObjectMapper()
            .writeValueAsString(DecisionRecord.of(decision(Teeth.NONE, null, null, null)));
    assertThat(read(kept.replace("lower-occlusal", "own-view")))
        .isEqualTo(
            Outcome.refused(
                "the kept decision names the view \"own-view\", which is not known here",
                "restore the practice's file of views"));
    assertThat(read(kept.replace("AS_SHOT", "SIDEWAYS")))
        .isEqualTo(
            Outcome.refused(
                "the kept decision can't be read back", "verify the ledger; it may be damaged"));
    assertThat(read(kept.replace("\"cropLeft\":null", "\"cropLeft\":0.1")))
        .isInstanceOf(Outcome.Refused.class);
  }

  @Test
  void proposalsAndReasonsCanBeKeptAsJson() throws Exception {
    ObjectMapper json = new ObjectMapper();
    Assignment.Waits waits =
        (Assignment.Waits)
            new Practice()
                .rows("a.jpg,,,,frontal")
                .photo("a.jpg", Practice.taken(Practice.IN_A).build())
                .first();
    assertThat(json.readValue(json.writeValueAsString(waits.proposal()), Proposal.class))
        .isEqualTo(waits.proposal());
    for (WaitReason reason : waits.reasons()) {
      assertThat(json.readValue(json.writeValueAsString(reason), WaitReason.class))
          .isEqualTo(reason);
    }
  }

  private static Outcome<Decision> read(String json) throws Exception {
    return new ObjectMapper()
        .readValue(json, DecisionRecord.class)
        .toDecision(ViewCatalogue.standard());
  }

  private static Decision decision(
      Teeth teeth, @Nullable Incisors incisors, @Nullable Crop crop, @Nullable Stage stage) {
    return new Decision(
        VISIT,
        ViewCatalogue.standard().byKey("lower-occlusal").orElseThrow(),
        teeth,
        Mirror.AS_SHOT,
        incisors,
        null,
        false,
        crop,
        List.of(),
        stage,
        "",
        "",
        false,
        false,
        "Ann",
        List.of("a fact"));
  }
}
