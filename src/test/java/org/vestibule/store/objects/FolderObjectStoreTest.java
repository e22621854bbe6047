package org.vestibule.store.objects;

import com.google.common.jimfs.Configuration;
import com.google.common.jimfs.Jimfs;
import java.nio.file.Path;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.io.TempDir;
import org.vestibule.store.faults.FaultyFileSystem;

/** The contract on the disk at hand, and on models of Unix and Windows file systems. */
class FolderObjectStoreTest {

  @Nested
  class OnThisDisk extends ObjectStoreContract {

    @TempDir private Path folder;

    @Override
    Path newRoot() {
      return folder.resolve("objects");
    }
  }

  @Nested
  class OnUnix extends ObjectStoreContract {

    @Override
    Path newRoot() {
      return new FaultyFileSystem(Jimfs.newFileSystem(Configuration.unix()))
          .getPath("/home/practice/objects");
    }
  }

  /** Names without regard to case, drive letters, backslashes; no folder opens as a file. */
  @Nested
  class OnWindows extends ObjectStoreContract {

    @Override
    Path newRoot() {
      return Jimfs.newFileSystem(Configuration.windows()).getPath("C:\\Practice\\objects");
    }
  }
}
