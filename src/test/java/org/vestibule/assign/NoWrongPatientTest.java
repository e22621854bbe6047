package org.vestibule.assign;

import static org.assertj.core.api.Assertions.assertThat;
import static org.vestibule.assign.Practice.IN_A;
import static org.vestibule.assign.Practice.IN_B;
import static org.vestibule.assign.Practice.NOBODY;
import static org.vestibule.assign.Practice.taken;

import java.time.LocalDateTime;
import java.util.HashSet;
import java.util.Random;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.vestibule.intake.CaptureFacts;

/** Whatever the sources say: two that disagree on the patient never file a photograph. */
class NoWrongPatientTest {

  private static final long SEED = 20_260_311L;
  private static final String[] ROW_VISITS = {"", "", "VA", "VB", "VA2", "VX"};
  private static final String[] PATIENTS = {"", "", "00417", "00562", "00999"};
  private static final @Nullable LocalDateTime[] TIMES = {
    null, IN_A, IN_B, NOBODY, IN_A.plusDays(1), LocalDateTime.of(2026, 10, 25, 2, 30)
  };

  @Test
  void disagreementNeverFiles() {
    Random random = new Random(SEED);
    int filed = 0;
    int disagreed = 0;
    for (int round = 0; round < 800; round++) {
      String rowVisit = pick(random, ROW_VISITS);
      String rowPatient = pick(random, PATIENTS);
      String folder = pick(random, PATIENTS);
      @Nullable LocalDateTime time = TIMES[random.nextInt(TIMES.length)];
      Practice practice =
          new Practice()
              .pattern("{patient}/*")
              .rows("a.jpg,," + rowVisit + "," + rowPatient + ",frontal,,none");
      CaptureFacts facts = taken(time).build();
      practice.photo((folder.isEmpty() ? "" : folder + "/") + "a.jpg", facts);
      Set<String> patients = new HashSet<>();
      add(patients, ofVisit(rowVisit));
      add(patients, rowPatient);
      add(patients, folder);
      add(patients, ofTime(time));
      String place = "seed " + SEED + ", round " + round;
      Assignment assignment = practice.first();
      if (assignment instanceof Assignment.Decided decided) {
        filed++;
        assertThat(patients).as(place).containsExactly(decided.decision().visit().patient().id());
        assertThat(time == null && rowVisit.isEmpty()).as(place).isFalse();
        assertThat(rowVisit.isEmpty() && rowPatient.isEmpty() && folder.isEmpty())
            .as(place)
            .isFalse();
      } else {
        disagreed += patients.size() > 1 ? 1 : 0;
        assertThat(((Assignment.Waits) assignment).reasons())
            .as(place)
            .allSatisfy(
                reason -> assertThat(reason.line()).doesNotContain("00417", "00562", "Ash", "Elm"));
      }
    }
    assertThat(filed).as("seed " + SEED).isGreaterThan(20);
    assertThat(disagreed).as("seed " + SEED).isGreaterThan(100);
  }

  private static void add(Set<String> patients, String id) {
    if (!id.isEmpty()) {
      patients.add(id);
    }
  }

  private static String ofVisit(String key) {
    return switch (key) {
      case "VA", "VA2" -> "00417";
      case "VB" -> "00562";
      case "VX" -> "unknown";
      default -> "";
    };
  }

  private static String ofTime(@Nullable LocalDateTime time) {
    if (time == null || time.equals(NOBODY)) {
      return "";
    }
    return time.equals(IN_B) ? "00562" : time.getMonthValue() == 10 ? "00900" : "00417";
  }

  private static String pick(Random random, String[] from) {
    return from[random.nextInt(from.length)];
  }
}
