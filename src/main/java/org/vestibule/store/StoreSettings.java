package org.vestibule.store;

import java.nio.file.Path;

/**
 * Where a store lies and whose it is.
 *
 * @param home holds ledger, index and secret; on a local disk
 * @param objects holds the objects; may lie on a network drive
 * @param practice id of the practice, part of every row
 */
public record StoreSettings(Path home, Path objects, String practice) {

  /** Everything in one home folder. */
  public static StoreSettings in(Path home, String practice) {
    return new StoreSettings(home, home.resolve("objects"), practice);
  }
}
