package org.vestibule.store.ledger;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;
import org.vestibule.base.ContentHash;

/** A process that opens a ledger the moment a file appears, and files photographs in it. */
public final class WritingChild {

  private WritingChild() {}

  /** The ledger, the file to wait for, this child's name, how many photographs. */
  public static void main(String[] args) throws Exception {
    Files.createFile(Path.of(args[1] + "." + args[2]));
    while (!Files.exists(Path.of(args[1]))) {
      LockSupport.parkNanos(TimeUnit.MILLISECONDS.toNanos(1));
    }
    try (Ledger ledger = LedgerFixture.open(Path.of(args[0]))) {
      for (int n = 0; n < Integer.parseInt(args[3]); n++) {
        ContentHash hash = LedgerFixture.arrive(ledger, args[2] + n);
        LedgerFixture.file(ledger, LedgerFixture.decide(ledger, hash, "P1"));
      }
    }
  }
}
