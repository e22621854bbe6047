package org.vestibule.flow;

import java.io.IOException;
import java.time.Duration;
import java.util.Iterator;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.concurrent.Semaphore;
import java.util.concurrent.TimeUnit;
import java.util.function.Supplier;
import org.vestibule.base.Outcome;
import org.vestibule.base.Outcome.Done;

/**
 * Pictures that are made because somebody looks: only so many at once, by the memory that the JPEG
 * work leaves, and the latest are kept. May be used by several threads.
 */
public final class MadePictures {

  /** What one takes beside the JPEG work: the file twice, at its longest, and the small one. */
  private static final long BYTES_OF_ONE = 128L << 20;

  /** {@code jpeg.MemoryBudget} has the other three quarters. */
  private static final int SHARE_OF_MEMORY = 4;

  private static final int MOST_AT_ONCE = 4;
  private static final long KEPT_BYTES = 24L << 20;
  private static final Duration PATIENCE = Duration.ofSeconds(20);

  /** What is done in turn. */
  @FunctionalInterface
  public interface Work {
    Outcome<byte[]> run() throws IOException, InterruptedException;
  }

  private final Semaphore making;
  private final Duration patience;
  private final long mostBytes;
  private final Map<String, byte[]> kept = new LinkedHashMap<>(16, 0.75f, true);
  private long bytes;

  public MadePictures() {
    this(atOnce(Runtime.getRuntime().maxMemory()), PATIENCE, KEPT_BYTES);
  }

  MadePictures(int atOnce, Duration patience, long mostBytes) {
    this.making = new Semaphore(atOnce, true);
    this.patience = patience;
    this.mostBytes = mostBytes;
  }

  /** At least one, whatever memory there is. */
  static int atOnce(long heapBytes) {
    return (int) Math.max(1, Math.min(MOST_AT_ONCE, heapBytes / SHARE_OF_MEMORY / BYTES_OF_ONE));
  }

  /** Works when it is its turn; refused if that does not come for long. */
  public Outcome<byte[]> within(Work work) throws IOException {
    try {
      if (!making.tryAcquire(patience.toMillis(), TimeUnit.MILLISECONDS)) {
        return busy();
      }
      try {
        return work.run();
      } finally {
        making.release();
      }
    } catch (InterruptedException stopped) {
      Thread.currentThread().interrupt();
      return busy();
    }
  }

  private static Outcome<byte[]> busy() {
    return Outcome.refused(
        Outcome.Kind.BUSY, "too many pictures are being made at once", "try again in a moment");
  }

  /**
   * The picture of this key, made if it is not kept.
   *
   * @param key names everything that the picture is made of
   */
  public Outcome<byte[]> kept(String key, Supplier<Outcome<byte[]>> make) {
    synchronized (kept) {
      byte[] known = kept.get(key);
      if (known != null) {
        return Outcome.done(known);
      }
    }
    Outcome<byte[]> made = make.get();
    if (made instanceof Done<byte[]> done) {
      keep(key, done.value());
    }
    return made;
  }

  private void keep(String key, byte[] picture) {
    synchronized (kept) {
      byte[] before = kept.put(key, picture);
      bytes += picture.length - (before == null ? 0 : before.length);
      Iterator<byte[]> eldest = kept.values().iterator();
      while (bytes > mostBytes && eldest.hasNext()) {
        bytes -= eldest.next().length;
        eldest.remove();
      }
    }
  }

  long keptBytes() {
    synchronized (kept) {
      return bytes;
    }
  }
}
