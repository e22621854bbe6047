package org.vestibule.store.objects;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import org.vestibule.base.Outcome;

/** Keeps finished objects by SOP Instance UID; what is there is never changed. */
public interface ObjectStore {

  /**
   * Keeps the bytes under this UID unless it is taken. When this returns, they are on the disk and
   * were read back, unless other bytes have the name.
   *
   * @param uid digits and dots, 64 characters at most (PS3.5 9.1)
   * @return refused if the disk gives back other bytes than were written
   * @throws IOException if the disk fails
   */
  Outcome<Put> putIfAbsent(String uid, byte[] bytes) throws IOException;

  /** The object's bytes, if it is there. */
  Optional<byte[]> get(String uid) throws IOException;

  /** Where the object's file lies, for programs that open files; empty if objects are no files. */
  Optional<Path> path(String uid);

  /** The object's size in bytes, if it is there. */
  OptionalLong size(String uid) throws IOException;

  /** The UIDs of all objects, in order of their text. */
  List<String> list() throws IOException;

  /** Names, below the objects folder, of whatever is there and is not an object. */
  List<String> strays() throws IOException;

  /** True if an interrupted write left this stray; then {@link #clearInterrupted} removes it. */
  boolean isInterrupted(String stray);

  /**
   * Removes what interrupted writes left behind and says how many there were. Only for the holder
   * of the run lock: another writer's temporary file would be taken for a leftover.
   */
  int clearInterrupted() throws IOException;
}
