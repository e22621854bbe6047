package org.vestibule.intake;

import java.io.IOException;
import java.nio.file.DirectoryIteratorException;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.attribute.BasicFileAttributes;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * Lists a folder and its subfolders in the order of their names. Links are named and not followed:
 * they could lead out of the folder or back into it.
 */
final class FolderWalk {

  /** Deeper than any practice's filing; a loop through a mount ends here. */
  private static final int DEEPEST = 40;

  private final List<FoundFile> files = new ArrayList<>();
  private final List<LeftOut> leftOut = new ArrayList<>();

  private FolderWalk() {}

  static FolderWalk of(Path folder) {
    FolderWalk walk = new FolderWalk();
    if (Files.isDirectory(folder)) {
      walk.folder(folder, "", 0);
    } else {
      walk.leftOut.add(
          new LeftOut(
              "",
              LeftOutKind.UNREADABLE_FOLDER,
              Files.exists(folder) ? "this is a file, not a folder" : "the folder is not there",
              "check its name, and that the drive or share is connected",
              null));
    }
    return walk;
  }

  List<FoundFile> files() {
    return files;
  }

  List<LeftOut> leftOut() {
    return leftOut;
  }

  private void folder(Path folder, String name, int depth) {
    if (depth > DEEPEST) {
      leaveFolder(name, "it lies more than " + DEEPEST + " folders deep");
      return;
    }
    List<Path> entries = new ArrayList<>();
    try (DirectoryStream<Path> stream = Files.newDirectoryStream(folder)) {
      stream.forEach(entries::add);
    } catch (DirectoryIteratorException e) {
      IOException cause = e.getCause();
      leaveFolder(name, cause == null ? "listing it broke off" : Failures.words(cause));
    } catch (IOException e) {
      leaveFolder(name, Failures.words(e));
    }
    entries.sort(Comparator.comparing(entry -> last(entry)));
    for (Path entry : entries) {
      entry(entry, name.isEmpty() ? last(entry) : name + "/" + last(entry), depth);
    }
  }

  private void entry(Path entry, String name, int depth) {
    BasicFileAttributes attributes;
    try {
      attributes =
          Files.readAttributes(entry, BasicFileAttributes.class, LinkOption.NOFOLLOW_LINKS);
    } catch (IOException e) {
      leftOut.add(
          new LeftOut(
              name,
              LeftOutKind.UNREADABLE,
              "it can't be looked at (" + Failures.words(e) + ")",
              "check the rights on the file",
              null));
      return;
    }
    if (attributes.isSymbolicLink() || (attributes.isOther() && leadsAway(entry))) {
      leftOut.add(
          new LeftOut(
              name,
              LeftOutKind.LINK,
              "it is a link, which is not followed",
              "put the photographs themselves into the folder",
              null));
    } else if (attributes.isDirectory()) {
      if (SystemFiles.isFolder(last(entry))) {
        leftOut.add(SystemFiles.leftOut(name));
      } else {
        folder(entry, name, depth + 1);
      }
    } else if (attributes.isRegularFile()) {
      files.add(
          new FoundFile(entry, name, attributes.size(), attributes.lastModifiedTime().toInstant()));
    } else {
      leftOut.add(
          new LeftOut(
              name,
              LeftOutKind.UNREADABLE,
              "it is neither a file nor a folder",
              "take it out of the folder",
              null));
    }
  }

  /** True for a folder that is a junction to another place, as Windows has them. */
  private static boolean leadsAway(Path entry) {
    Path parent = entry.getParent();
    Path last = entry.getFileName();
    if (parent == null || last == null) {
      return true;
    }
    try {
      return !entry.toRealPath().equals(parent.toRealPath().resolve(last));
    } catch (IOException e) {
      return true;
    }
  }

  private void leaveFolder(String name, String why) {
    leftOut.add(
        new LeftOut(
            name,
            LeftOutKind.UNREADABLE_FOLDER,
            "the folder can't be read (" + why + ")",
            "check the rights on it; nothing in it was taken",
            null));
  }

  private static String last(Path entry) {
    Path name = entry.getFileName();
    return name == null ? "" : name.toString();
  }
}
