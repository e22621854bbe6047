package org.vestibule.store;

import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import org.vestibule.base.ContentHash;
import org.vestibule.base.Outcome;
import org.vestibule.encode.Role;
import org.vestibule.store.ledger.Intent;
import org.vestibule.store.ledger.Ledger;

/**
 * What people call photographs by: the first ten digits of the content hash, or as many as tell it
 * from all others; with {@code -frame} the whole frame of a cropped photograph.
 */
public final class PhotoIds {

  private static final int USUAL_DIGITS = 10;
  private static final int FEWEST_DIGITS = 6;
  private static final String FRAME = "-frame";

  private final Ledger ledger;

  PhotoIds(Ledger ledger) {
    this.ledger = ledger;
  }

  /** The id of a photograph. */
  public String of(ContentHash hash) {
    for (int digits = USUAL_DIGITS; digits < hash.hex().length(); digits++) {
      String id = hash.hex().substring(0, digits);
      if (ledger.photos().startingWith(id).stream().allMatch(hash::equals)) {
        return id;
      }
    }
    return hash.hex();
  }

  /** The id of one of a photograph's objects. */
  public String of(Intent intent) {
    boolean cropped =
        ledger.intents().of(intent.hash()).stream()
            .anyMatch(other -> other.revision() == intent.revision() && other.role() == Role.CROP);
    return of(intent.hash()) + (cropped && intent.role() == Role.FRAME ? FRAME : "");
  }

  /** The photograph, or the part of it, that an id names. */
  public Outcome<PhotoRef> find(String id) {
    String asked = id.trim().toLowerCase(Locale.ROOT);
    boolean frame = asked.endsWith(FRAME);
    String digits = frame ? asked.substring(0, asked.length() - FRAME.length()) : asked;
    if (!digits.matches("[0-9a-f]{" + FEWEST_DIGITS + ",64}")) {
      return Outcome.refused(
          "\"" + id.trim() + "\" is not the id of a photograph",
          "give the id that find and waiting print, at least its first "
              + FEWEST_DIGITS
              + " digits, with "
              + FRAME
              + " for the whole frame of a cropped photograph");
    }
    List<ContentHash> found = ledger.photos().startingWith(digits);
    if (found.isEmpty()) {
      return Outcome.refused(
          "no photograph has the id " + digits, "give the id that find and waiting print");
    }
    if (found.size() > 1) {
      return Outcome.refused(
          "several photographs have ids that begin with " + digits,
          "say which: " + found.stream().map(this::of).collect(Collectors.joining(", ")));
    }
    return part(found.get(0), frame);
  }

  private Outcome<PhotoRef> part(ContentHash hash, boolean frame) {
    boolean cropped =
        ledger.intents().current(hash).stream().anyMatch(intent -> intent.role() == Role.CROP);
    if (frame && !cropped) {
      return Outcome.refused(
          "photograph " + of(hash) + " is not cropped, so it has no frame apart",
          "ask for " + of(hash));
    }
    return Outcome.done(new PhotoRef(hash, cropped && !frame ? Role.CROP : Role.FRAME));
  }
}
