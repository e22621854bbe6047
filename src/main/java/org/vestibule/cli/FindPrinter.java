package org.vestibule.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Optional;
import org.vestibule.base.Outcome;
import org.vestibule.base.Outcome.Done;
import org.vestibule.base.Outcome.Refused;
import org.vestibule.flow.Find;
import org.vestibule.flow.Practice;
import org.vestibule.search.QuestionOptions;

/** Prints answers: as a table for people. */
final class FindPrinter {

  private static final int ROWS = 20;

  private FindPrinter() {}

  static void find(Console console, Practice practice, String words) throws IOException {
    Outcome<Find.Answer> answer = Find.ask(practice, words, QuestionOptions.NONE, ROWS);
    if (answer instanceof Done<Find.Answer> done) {
      table(console, done.value());
    } else {
      console.say(((Refused<Find.Answer>) answer).sentence() + ".");
    }
  }

  static void table(Console console, Find.Answer answer) {
    console.say("Understood: " + String.join("; ", answer.understood()) + ".");
    if (answer.rows().isEmpty()) {
      console.say("No photograph answers that.");
      return;
    }
    Table table = new Table("date", "patient", "view", "teeth", "stage", "photograph", "why here");
    for (Find.Row row : answer.rows()) {
      table.row(
          row.date() == null ? "-" : row.date().toString(),
          blank(row.patient()),
          blank(row.view()),
          blank(row.teeth()),
          blank(row.stage()),
          row.id(),
          row.filed() ? row.closeness() : "not filed");
    }
    table.lines(0).forEach(console::say);
    if (hasMore(answer)) {
      console.say(more(answer));
    }
  }

  /** What programs that read the answer should not take for part of it. */
  static void beside(Console console, Find.Answer answer) {
    if (answer.rows().isEmpty()) {
      console.complain("No photograph answers that.");
    } else if (hasMore(answer)) {
      console.complain(more(answer));
    }
  }

  private static boolean hasMore(Find.Answer answer) {
    return answer.more() || answer.total() > answer.rows().size();
  }

  private static String more(Find.Answer answer) {
    return answer.more()
        ? "There are more than " + answer.total() + "; --most shows more of them."
        : "and " + (answer.total() - answer.rows().size()) + " more; --most shows more of them.";
  }

  static void paths(Console console, Practice practice, Find.Answer answer) {
    for (Find.Row row : answer.rows()) {
      Optional<Path> path = Find.path(practice, row);
      if (path.isPresent()) {
        console.say(path.get().toString());
      } else {
        console.complain("vestibule: the file of photograph " + row.id() + " is not in its place.");
      }
    }
    beside(console, answer);
  }

  private static String blank(String text) {
    return text.isEmpty() ? "-" : text;
  }
}
