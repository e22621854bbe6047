package org.vestibule.cli;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.CharacterCodingException;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.FileSystemException;
import java.nio.file.FileSystemLoopException;
import java.nio.file.InvalidPathException;
import java.nio.file.NoSuchFileException;
import java.nio.file.NotDirectoryException;
import org.vestibule.store.ledger.LedgerUnusableException;

/**
 * Why a command ended before it was done, in words, and with which exit code. Names of files are
 * given without the folders they lie in.
 *
 * @param words a sentence or two: what happened and what to do
 */
record FailureWords(ExitCode end, String words) {

  static final String EMPTY_NAME = "empty";

  private static final String FULL =
      ". Free some space and run the command again; what was not filed stays where it is.";

  static FailureWords of(Throwable failure) {
    if (failure instanceof IOException io) {
      return new FailureWords(ExitCode.MACHINE, machine(io));
    }
    if (failure instanceof LedgerUnusableException ledger) {
      return ledger(ledger);
    }
    if (failure instanceof UncheckedIOException io && io.getCause() != null) {
      return new FailureWords(ExitCode.MACHINE, machine(io.getCause()));
    }
    if (failure instanceof InvalidPathException name) {
      return new FailureWords(
          ExitCode.WRONG_USE,
          EMPTY_NAME.equals(name.getReason())
              ? "a name on the command line is empty. Write the name, or leave the option out."
              : "a name on the command line can't be the name of a file or folder here. Check it for"
                  + " strange characters.");
    }
    if (failure instanceof OutOfMemoryError) {
      return new FailureWords(
          ExitCode.MACHINE,
          "there is not enough memory. Close other programs, or take fewer photographs at once.");
    }
    return new FailureWords(
        ExitCode.BUG,
        "a defect in this program stopped the command ("
            + failure.getClass().getSimpleName()
            + "). Nothing that was already filed is harmed.");
  }

  private static FailureWords ledger(LedgerUnusableException failure) {
    return switch (failure.trouble()) {
      case DISK_FULL -> new FailureWords(ExitCode.MACHINE, "the disk is full" + FULL);
      case MACHINE ->
          new FailureWords(
              ExitCode.MACHINE,
              "the ledger can't be read or written. Check who may write in the home folder, and"
                  + " that its disk is there.");
      case HELD ->
          new FailureWords(
              ExitCode.BUSY,
              "another program has kept the ledger to itself for too long. Wait until it has"
                  + " ended, then run the command again.");
      case DAMAGE ->
          new FailureWords(
              ExitCode.DAMAGE,
              "the ledger's file is damaged. Bring a copy of it back with \"restore --ledger-only\";"
                  + " docs/backup.md says how.");
    };
  }

  private static String machine(IOException failure) {
    String place =
        failure instanceof FileSystemException at && at.getFile() != null
            ? " (" + fileName(at.getFile()) + ")"
            : "";
    String reason =
        failure instanceof FileSystemException at
            ? String.valueOf(at.getReason())
            : String.valueOf(failure.getMessage());
    if (reason.contains("No space left") || reason.contains("disk is full")) {
      return "the disk is full" + place + FULL;
    }
    if (reason.contains("Read-only file system")) {
      return "nothing can be written there" + place + ". Check that the disk is not write-locked.";
    }
    if (failure instanceof NoSuchFileException) {
      return "there is no such file or folder" + place + ". Check the name and try again.";
    }
    if (failure instanceof AccessDeniedException) {
      return "the system does not allow it" + place + ". Check who may read and write there.";
    }
    if (failure instanceof FileAlreadyExistsException
        || failure instanceof NotDirectoryException
        || reason.equals("Not a directory")) {
      return "a file lies where a folder is needed"
          + place
          + ". Move it away, or name another folder.";
    }
    if (failure instanceof FileSystemLoopException) {
      return "a link leads back into its own folder" + place + ". Remove the link.";
    }
    if (failure instanceof CharacterCodingException) {
      return "a list is not UTF-8 text. Save it as UTF-8.";
    }
    return "the machine failed" + place + ": " + (mayHoldPath(reason) ? kind(failure) : reason);
  }

  private static boolean mayHoldPath(String reason) {
    return reason.equals("null") || reason.contains("/") || reason.contains("\\");
  }

  private static String kind(IOException failure) {
    return failure.getClass().getSimpleName() + ". Check the disk, then run the command again.";
  }

  private static String fileName(String path) {
    int slash = Math.max(path.lastIndexOf('/'), path.lastIndexOf('\\'));
    return path.substring(slash + 1);
  }
}
