package org.vestibule.dental;

import java.util.List;
import java.util.Optional;

/** What stands at a tooth's position. */
public enum Occupant {
  TOOTH("tooth"),
  IMPLANT("implant"),
  PONTIC("pontic"),
  /** No tooth: never erupted, lost or extracted. */
  GAP("gap", "missing", "absent", "space");

  private final String saysJoined;

  Occupant(String... says) {
    this.saysJoined = String.join("|", says);
  }

  public String words() {
    return says().get(0);
  }

  /** The words people use for it, the first being ours. */
  public List<String> says() {
    return List.of(saysJoined.split("\\|", -1));
  }

  static Optional<Occupant> of(String word) {
    for (Occupant occupant : values()) {
      if (occupant.says().contains(word)) {
        return Optional.of(occupant);
      }
    }
    return Optional.empty();
  }
}
