package org.vestibule.cli;

import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.vestibule.base.Outcome;
import org.vestibule.base.Outcome.Refused;
import org.vestibule.flow.Find;
import org.vestibule.flow.Practice;
import org.vestibule.search.QuestionOptions;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Finds photographs. */
@Command(
    name = "find",
    description = {
      "Find photographs by what a practitioner says, such as: find 16 occlusal before",
      "Put a # in quotes: a shell takes a bare #3 for a comment."
    })
final class FindCommand extends PracticeCommand {

  @Parameters(
      paramLabel = "WORDS",
      arity = "0..*",
      description = "Teeth, views, stages, dates, names, in any order.")
  private List<String> words = new ArrayList<>();

  @Option(names = "--patient", paramLabel = "NUMBER", description = "The patient's number.")
  private @Nullable String patient;

  @Option(names = "--tooth", paramLabel = "TEETH", description = "A tooth, or several.")
  private @Nullable String tooth;

  @Option(names = "--view", paramLabel = "WORDS", description = "A view.")
  private @Nullable String view;

  @Option(names = "--from", paramLabel = "YYYY-MM-DD", description = "The first day.")
  private @Nullable String from;

  @Option(names = "--to", paramLabel = "YYYY-MM-DD", description = "The last day.")
  private @Nullable String to;

  @Option(names = "--stage", paramLabel = "WORD", description = "The stage of the treatment.")
  private @Nullable String stage;

  @Option(names = "--referrer", paramLabel = "NAME", description = "Who referred the patient.")
  private @Nullable String referrer;

  @Option(names = "--text", paramLabel = "WORDS", description = "Words of treatment or note.")
  private @Nullable String text;

  @Option(names = "--state", paramLabel = "STATE", description = "filed or waiting.")
  private @Nullable String state;

  @Option(names = "--most", paramLabel = "N", description = "At most so many; otherwise 50.")
  private int most = 50;

  @Option(names = "--json", description = "Print the answer as JSON.")
  private boolean json;

  @Option(names = "--paths", description = "Print where the files lie, one on a line.")
  private boolean paths;

  FindCommand(Surroundings surroundings) {
    super(surroundings);
  }

  @Override
  ExitCode run(Practice practice) throws IOException {
    if (most < 1) {
      console().complain("vestibule: --most must be 1 or more but was " + most + ".");
      return ExitCode.WRONG_USE;
    }
    if (json && paths) {
      console().complain("vestibule: --json and --paths are two answers: ask for one of them.");
      return ExitCode.WRONG_USE;
    }
    Outcome<Find.Answer> answer =
        Find.ask(
            practice,
            String.join(" ", words),
            new QuestionOptions(patient, tooth, view, from, to, stage, referrer, text, state),
            most);
    if (answer instanceof Refused<Find.Answer> refused) {
      return refuse(refused);
    }
    if (json) {
      console().say(json(answer.orThrow()));
      FindPrinter.beside(console(), answer.orThrow());
    } else if (paths) {
      FindPrinter.paths(console(), practice, answer.orThrow());
    } else {
      FindPrinter.table(console(), answer.orThrow());
    }
    return ExitCode.DONE;
  }

  private static String json(Find.Answer answer) {
    ArrayNode rows = new ObjectMapper().createArrayNode();
    for (Find.Row row : answer.rows()) {
      rows.addObject()
          .put("id", row.id())
          .put("date", row.date() == null ? null : row.date().toString())
          .put("patient", row.patient())
          .put("view", row.view())
          .put("teeth", row.teeth())
          .put("stage", row.stage())
          .put("filed", row.filed())
          .put("closeness", row.closeness())
          .put("sopInstanceUid", row.objectUid());
    }
    return rows.toPrettyString();
  }
}
