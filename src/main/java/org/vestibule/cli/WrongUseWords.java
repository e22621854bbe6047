package org.vestibule.cli;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import org.vestibule.dental.NearestWords;
import picocli.CommandLine;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.UnmatchedArgumentException;

/** What is wrong with a command line, in words, with the nearest word that would be right. */
final class WrongUseWords {

  private WrongUseWords() {}

  static String of(ParameterException wrong) {
    CommandLine command = wrong.getCommandLine();
    if (wrong instanceof UnmatchedArgumentException unmatched
        && !unmatched.getUnmatched().isEmpty()) {
      return unmatched(command, unmatched.getUnmatched().get(0));
    }
    if (wrong.getArgSpec() != null && wrong.getArgSpec().type() == LocalDate.class) {
      return "\"" + wrong.getValue() + "\" is no day; write it as YYYY-MM-DD.";
    }
    boolean needsCommand = !command.getSubcommands().isEmpty();
    return needsCommand
        ? "say what is to be done, such as " + first(command, 0) + " or " + first(command, 1) + "."
        : String.valueOf(wrong.getMessage());
  }

  private static String unmatched(CommandLine command, String word) {
    String name = command.getCommandName();
    if (word.startsWith("-") && word.length() > 1) {
      String bare = word.split("=", 2)[0];
      return name + " has no option " + bare + nearest(options(command), bare);
    }
    if (!command.getSubcommands().isEmpty()) {
      return "there is no command \""
          + word
          + "\""
          + nearest(List.copyOf(command.getSubcommands().keySet()), word);
    }
    return name
        + " has no use for the word \""
        + word
        + "\". Put words that belong together in"
        + " quotes.";
  }

  private static String nearest(List<String> known, String word) {
    List<String> near = new NearestWords(known).to(word, 1);
    return near.isEmpty() ? "." : "; did you mean " + near.get(0) + "?";
  }

  private static List<String> options(CommandLine command) {
    List<String> names = new ArrayList<>();
    command.getCommandSpec().options().forEach(option -> names.add(option.longestName()));
    return names;
  }

  private static String first(CommandLine command, int at) {
    return List.copyOf(command.getSubcommands().keySet()).get(at);
  }
}
