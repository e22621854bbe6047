package org.vestibule.web;

import java.io.IOException;
import java.util.Iterator;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Semaphore;
import org.jspecify.annotations.Nullable;
import org.vestibule.base.ContentHash;
import org.vestibule.base.Outcome;
import org.vestibule.base.Outcome.Done;
import org.vestibule.flow.Faces;

/**
 * Small pictures, the latest used kept in memory; each belongs to an object, which never changes.
 */
final class Thumbnails {

  /** Longer side in pixels: sharp at the width of a result on a fine screen. */
  private static final int LONGER_SIDE = 440;

  private static final long MOST_BYTES = 48L << 20;
  private static final int AT_ONCE = 2;

  private final Faces faces;
  private final Semaphore making = new Semaphore(AT_ONCE);
  private final Map<String, byte[]> kept = new LinkedHashMap<>(16, 0.75f, true);
  private long bytes;

  Thumbnails(Faces faces) {
    this.faces = faces;
  }

  /** The small picture of a photograph; refused if it is not filed. */
  Outcome<byte[]> of(ContentHash photo) throws IOException {
    Optional<String> uid = faces.objectUid(photo);
    byte[] known = uid.map(this::known).orElse(null);
    if (known != null) {
      return Outcome.done(known);
    }
    making.acquireUninterruptibly();
    try {
      Outcome<byte[]> made = faces.small(photo, LONGER_SIDE);
      if (uid.isPresent() && made instanceof Done<byte[]> done) {
        keep(uid.get(), done.value());
      }
      return made;
    } finally {
      making.release();
    }
  }

  private synchronized byte @Nullable [] known(String uid) {
    return kept.get(uid);
  }

  private synchronized void keep(String uid, byte[] picture) {
    byte[] before = kept.put(uid, picture);
    bytes += picture.length - (before == null ? 0 : before.length);
    Iterator<byte[]> eldest = kept.values().iterator();
    while (bytes > MOST_BYTES && eldest.hasNext()) {
      bytes -= eldest.next().length;
      eldest.remove();
    }
  }
}
