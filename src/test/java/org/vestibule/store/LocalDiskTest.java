package org.vestibule.store;

import static org.assertj.core.api.Assertions.assertThat;

import com.google.common.jimfs.Configuration;
import com.google.common.jimfs.Jimfs;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.vestibule.base.Outcome;
import org.vestibule.store.faults.FaultyFileSystem;

/**
 * Where ledger and index may lie; names of file systems as statfs(2) and mount show (from memory).
 */
class LocalDiskTest {

  private static Outcome<Path> refused(String where) {
    return Outcome.refused(
        "the home folder lies on a network file system ("
            + where
            + "), where the ledger's locks can't be trusted",
        "put the home folder on a local disk; objects and inbox may stay on the network");
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "nfs",
        "nfs4",
        "NFS",
        "cifs",
        "smb3",
        "smbfs",
        "9p",
        "ceph",
        "fuse.sshfs",
        "fuse.rclone",
        "fuse.davfs2",
        "afpfs",
        "webdav"
      })
  void networkFileSystemsAreRefused(String type, @TempDir Path home) {
    assertThat(LocalDisk.require(home, type)).isEqualTo(refused(type));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {"ext4", "xfs", "btrfs", "apfs", "NTFS", "tmpfs", "overlay", "zfs", "fuseblk", ""})
  void localOnesAreTaken(String type, @TempDir Path home) {
    assertThat(LocalDisk.require(home, type)).isEqualTo(Outcome.done(home));
  }

  @Test
  void aWindowsShareIsRefusedWhateverItSaysItIs() {
    Path share =
        Jimfs.newFileSystem(
                Configuration.windows().toBuilder().setRoots("C:\\", "\\\\server\\rolls\\").build())
            .getPath("\\\\server\\rolls\\practice");
    assertThat(LocalDisk.require(share, "NTFS")).isEqualTo(refused("a network share"));
  }

  /** The file store is asked, and nothing of a store is begun. */
  @Test
  void aStoreIsNotBegunOnANetworkFileSystem() throws IOException {
    FaultyFileSystem network = new FaultyFileSystem(Jimfs.newFileSystem(Configuration.unix()));
    network.storeType("nfs4");
    Path home = network.getPath("/mnt/practice");
    Files.createDirectories(home);
    assertThat(StoreFixture.open(home)).isEqualTo(refused("nfs4"));
    assertThat(inFolder(home)).isEmpty();
  }

  private static List<Path> inFolder(Path folder) throws IOException {
    try (Stream<Path> all = Files.list(folder)) {
      return all.toList();
    }
  }
}
