package org.vestibule.cli;

import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
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
          NightlyCommand.class,
          WaitingCommand.class,
          FileCommand.class,
          MoveCommand.class,
          RejectCommand.class,
          GreyCardCommand.class,
          VisitsCommand.class,
          CardsCommand.class,
          FindCommand.class,
          ShowCommand.class,
          ExportCommand.class,
          ServeCommand.class,
          PeopleCommand.class,
          ForwardCommand.class,
          ReleaseCommand.class,
          ShareCommand.class,
          ConsentCommand.class,
          CheckCommand.class,
          VerifyCommand.class,
          ReindexCommand.class,
          BackupCommand.class,
          RestoreCommand.class,
          RepairCommand.class);

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
    try {
      return line.execute(args);
    } catch (OutOfMemoryError | StackOverflowError failure) {
      return failed(failure, List.of(args).contains(TraceOption.NAME));
    }
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
    surroundings.console().complain("vestibule: " + WrongUseWords.of(wrong));
    String command = wrong.getCommandLine().getCommandSpec().qualifiedName();
    surroundings.console().complain("For what can be asked here: " + command + " --help");
    return ExitCode.WRONG_USE.number();
  }

  private int failed(Exception failure, CommandLine line, ParseResult parsed) {
    return failed(failure, List.of(parsed.originalArgs().toArray()).contains(TraceOption.NAME));
  }

  private int failed(Throwable failure, boolean trace) {
    if (trace) {
      failure.printStackTrace(surroundings.console().errors());
    }
    FailureWords words = FailureWords.of(failure);
    boolean offerTrace = words.end() == ExitCode.BUG && !trace;
    surroundings
        .console()
        .complain(
            "vestibule: "
                + words.words()
                + (offerTrace ? " Call it again with --trace to see where, and report that." : ""));
    return words.end().number();
  }
}
