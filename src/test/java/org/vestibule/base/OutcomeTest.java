package org.vestibule.base;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.junit.jupiter.api.Test;

class OutcomeTest {

  @Test
  void stepsFollowADoneOutcomeAndSkipARefusal() {
    Outcome<Integer> done = Outcome.done(3);
    Outcome<Integer> refused = Outcome.refused("no", "do this");
    assertThat(done.map(x -> x + 1).then(x -> Outcome.done(x * 2)).orThrow()).isEqualTo(8);
    assertThat(refused.map(x -> x + 1)).isEqualTo(refused);
    assertThat(refused.then(x -> Outcome.done(x * 2))).isEqualTo(refused);
  }

  @Test
  void aRefusalThatWasNotExpectedSaysItsReason() {
    assertThatThrownBy(() -> Outcome.refused("no", "do this").orThrow())
        .isInstanceOf(IllegalStateException.class)
        .hasMessage("no: do this");
  }
}
