package org.vestibule.flow.delivering;

import java.util.ArrayList;
import java.util.List;
import org.vestibule.forward.Instance;
import org.vestibule.forward.StoreAnswer;

/** What became of one study's objects in one session. */
final class TransferTally {

  private final List<Instance> taken = new ArrayList<>();
  private final List<Instance> notTaken = new ArrayList<>();
  private String words = "";
  private boolean refused;

  void add(Instance instance, StoreAnswer answer) {
    if (answer instanceof StoreAnswer.Accepted) {
      taken.add(instance);
      return;
    }
    notTaken.add(instance);
    words = answer.words();
    refused |= answer instanceof StoreAnswer.Refused;
  }

  List<Instance> taken() {
    return List.copyOf(taken);
  }

  List<Instance> notTaken() {
    return List.copyOf(notTaken);
  }

  /** Why the last of those that were not taken was not. */
  String words() {
    return words;
  }

  /** True if an object will not be sent again by itself. */
  boolean isFinal() {
    return refused;
  }
}
