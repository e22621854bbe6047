package org.vestibule.store;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Set;
import java.util.regex.Pattern;
import org.vestibule.base.Outcome;

/**
 * Refuses file systems that are reached over a network, where the locks that ledger and index rely
 * on can't be trusted. A network drive with a letter of its own on Windows can't be told apart.
 */
final class LocalDisk {

  /** Names by which Linux, macOS and the BSDs call network file systems (from memory). */
  private static final Set<String> NETWORK =
      Set.of(
          "nfs",
          "nfs3",
          "nfs4",
          "cifs",
          "smb",
          "smbfs",
          "smb2",
          "smb3",
          "afs",
          "afpfs",
          "ncpfs",
          "9p",
          "davfs",
          "webdav",
          "ceph",
          "glusterfs",
          "lustre",
          "gfs",
          "gfs2",
          "ocfs2",
          "gpfs",
          "beegfs");

  private static final Pattern NETWORK_FUSE =
      Pattern.compile(
          "fuse\\.(sshfs|davfs2?|rclone|s3fs|glusterfs|ceph|smbnetfs|gcsfuse|curlftpfs)");

  private LocalDisk() {}

  static Outcome<Path> require(Path folder) throws IOException {
    return require(folder, Files.getFileStore(folder).type());
  }

  static Outcome<Path> require(Path folder, String fileSystemType) {
    String type = fileSystemType.toLowerCase(Locale.ROOT);
    boolean share = String.valueOf(folder.toAbsolutePath().getRoot()).startsWith("\\\\");
    if (!share && !NETWORK.contains(type) && !NETWORK_FUSE.matcher(type).matches()) {
      return Outcome.done(folder);
    }
    return Outcome.refused(
        "the home folder lies on a network file system ("
            + (share ? "a network share" : fileSystemType)
            + "), where the ledger's locks can't be trusted",
        "put the home folder on a local disk; objects and inbox may stay on the network");
  }
}
