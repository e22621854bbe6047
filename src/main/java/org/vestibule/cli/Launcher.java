package org.vestibule.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileSystemException;
import java.nio.file.NoSuchFileException;
import java.util.List;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.ParseResult;

/** Runs one command line: finds the command, and says in words why it failed. */
final class Launcher {

  private static final List<Class<?>> COMMANDS =
      List.of(
          LookCommand.class,
          DemoCommand.class,
          IngestCommand.class,
          WaitingCommand.class,
          FileCommand.class,
          MoveCommand.class,
          RejectCommand.class,
          VisitsCommand.class,
          FindCommand.class,
          ShowCommand.class,
          ExportCommand.class,
          CheckCommand.class,
          VerifyCommand.class,
          ReindexCommand.class);

  private final Surroundings surroundings;

  Launcher(Surroundings surroundings) {
    this.surroundings = surroundings;
  }

  /** The exit code of the command. */
  int run(String... args) {
    CommandFactory factory = new CommandFactory(surroundings);
    CommandLine line = new CommandLine(VestibuleCommand.class, factory);
    commands(args).forEach(command -> line.addSubcommand(new CommandLine(command, factory)));
    line.setOut(new PrintWriter(surroundings.console().answers(), true, StandardCharsets.UTF_8));
    line.setErr(new PrintWriter(surroundings.console().errors(), true, StandardCharsets.UTF_8));
    line.setCaseInsensitiveEnumValuesAllowed(true);
    line.setUsageHelpAutoWidth(false);
    line.setExecutionExceptionHandler(this::failed);
    line.setParameterExceptionHandler(this::wrongUse);
    return line.execute(args);
  }

  /**
   * The command asked for alone, since describing all of them costs a start a tenth of a second.
   */
  private static List<Class<?>> commands(String... args) {
    return COMMANDS.stream()
        .filter(command -> args.length > 0 && name(command).equals(args[0]))
        .findFirst()
        .<List<Class<?>>>map(List::of)
        .orElse(COMMANDS);
  }

  private static String name(Class<?> command) {
    return command.getAnnotation(Command.class).name();
  }

  private int wrongUse(ParameterException wrong, String[] args) {
    surroundings.console().complain("vestibule: " + wrong.getMessage());
    String command = wrong.getCommandLine().getCommandSpec().qualifiedName();
    surroundings.console().complain("For what can be asked here: " + command + " --help");
    return ExitCode.WRONG_USE.number();
  }

  private int failed(Exception failure, CommandLine line, ParseResult parsed) {
    boolean trace = List.of(parsed.originalArgs().toArray()).contains(TraceOption.NAME);
    if (trace) {
      failure.printStackTrace(surroundings.console().errors());
    }
    if (failure instanceof IOException io) {
      surroundings.console().complain("vestibule: " + words(io));
      return ExitCode.MACHINE.number();
    }
    if (failure instanceof UncheckedIOException io && io.getCause() != null) {
      surroundings.console().complain("vestibule: " + words(io.getCause()));
      return ExitCode.MACHINE.number();
    }
    surroundings
        .console()
        .complain(
            "vestibule: a defect in this program stopped the command ("
                + failure.getClass().getSimpleName()
                + "). Nothing that was already filed is harmed."
                + (trace ? "" : " Call it again with --trace to see where, and report that."));
    return ExitCode.BUG.number();
  }

  private static String words(IOException failure) {
    String place =
        failure instanceof FileSystemException at && at.getFile() != null
            ? " (" + fileName(at.getFile()) + ")"
            : "";
    if (failure instanceof NoSuchFileException) {
      return "there is no such file or folder" + place + ". Check the name and try again.";
    }
    if (failure instanceof AccessDeniedException) {
      return "the system does not allow it" + place + ". Check who may read and write there.";
    }
    String message = String.valueOf(failure.getMessage());
    if (message.contains("No space left") || message.contains("disk is full")) {
      return "the disk is full"
          + place
          + ". Free some space and run the command again;"
          + " what was not filed stays where it is.";
    }
    String reason =
        failure instanceof FileSystemException at && at.getReason() != null
            ? at.getReason()
            : message;
    return "the machine failed" + place + ": " + reason;
  }

  private static String fileName(String path) {
    int slash = Math.max(path.lastIndexOf('/'), path.lastIndexOf('\\'));
    return path.substring(slash + 1);
  }
}
