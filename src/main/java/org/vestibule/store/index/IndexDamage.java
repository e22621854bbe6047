package org.vestibule.store.index;

import java.io.EOFException;
import java.io.FileNotFoundException;
import java.io.IOException;
import java.nio.file.NoSuchFileException;
import org.apache.lucene.index.CorruptIndexException;
import org.apache.lucene.index.IndexFormatTooNewException;
import org.apache.lucene.index.IndexFormatTooOldException;

/** Tells files that can't be right, and are made again, from a disk that can't be used. */
final class IndexDamage {

  private IndexDamage() {}

  static boolean is(IOException e) {
    return e instanceof CorruptIndexException
        || e instanceof IndexFormatTooNewException
        || e instanceof IndexFormatTooOldException
        || e instanceof EOFException
        || e instanceof FileNotFoundException
        || e instanceof NoSuchFileException;
  }
}
