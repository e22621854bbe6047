package org.vestibule.flow;

import java.io.IOException;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.vestibule.base.ContentHash;
import org.vestibule.base.Outcome;
import org.vestibule.base.Outcome.Done;
import org.vestibule.base.Outcome.Refused;
import org.vestibule.search.Question;
import org.vestibule.search.QuestionOptions;
import org.vestibule.search.QuestionReader;
import org.vestibule.store.index.CaughtUp;
import org.vestibule.store.index.IndexAnswer;
import org.vestibule.store.index.IndexRecord;

/** Finds photographs by a question in a practitioner's words. */
public final class Find {

  /**
   * A photograph that answers.
   *
   * @param date the day it was taken, or of the visit
   * @param filed false while it waits for a person
   * @param closeness how closely it is about the tooth that was asked for; empty without one
   */
  public record Row(
      String id,
      @Nullable LocalDate date,
      String patient,
      String view,
      String teeth,
      String stage,
      boolean filed,
      String closeness,
      @Nullable String objectUid,
      String hash) {}

  /**
   * An answer.
   *
   * @param understood how the question was understood
   * @param rows the closest first, then the newest
   * @param total how many there are, whatever the limit
   * @param more true if there are more than the total, which was then not counted to its end
   */
  public record Answer(List<String> understood, List<Row> rows, int total, boolean more) {
    public Answer {
      understood = List.copyOf(understood);
      rows = List.copyOf(rows);
    }
  }

  private Find() {}

  /** Asks the index for whoever is logged in on this machine. */
  public static Outcome<Answer> ask(
      Practice practice, String words, QuestionOptions options, int limit) throws IOException {
    return ask(practice, words, options, limit, "");
  }

  /**
   * Asks the index, after it has followed the ledger.
   *
   * @param by who asks; empty for whoever is logged in on this machine
   */
  public static Outcome<Answer> ask(
      Practice practice, String words, QuestionOptions options, int limit, String by)
      throws IOException {
    Outcome<Question> read = understood(practice, words, options);
    if (!(read instanceof Done<Question> asked)) {
      return ((Refused<Question>) read).as();
    }
    Question question = asked.value();
    practice.audit().asked(String.join("; ", question.understood()), by);
    IndexAnswer found = practice.store().index().search(question.query(limit));
    List<Row> rows = new ArrayList<>();
    for (IndexAnswer.Hit hit : found.hits()) {
      String closeness = question.tierWords().isEmpty() ? "" : question.tierWords().get(hit.tier());
      rows.add(row(hit.record(), closeness));
    }
    return Outcome.done(new Answer(question.understood(), rows, found.total(), found.more()));
  }

  /** What a question asks, by the words of the index after it has followed the ledger. */
  static Outcome<Question> understood(Practice practice, String words, QuestionOptions options)
      throws IOException {
    if (practice.store().followIndex().kind() == CaughtUp.Kind.BEING_MADE) {
      return beingMade();
    }
    LocalDate today = LocalDate.now(practice.clock().withZone(practice.settings().zone()));
    return new QuestionReader(practice.views(), practice.teeth(), practice.store().index(), today)
        .read(words, options);
  }

  /** Said instead of an empty answer, which would be taken for "there is none". */
  static <T> Outcome<T> beingMade() {
    return Outcome.refused(
        Outcome.Kind.BUSY,
        "the index is being made by another run, and nothing can be found before it is done",
        "ask again in a few minutes; photographs and ledger are as they were");
  }

  private static Row row(IndexRecord record, String closeness) {
    return new Row(
        record.id(),
        record.day(),
        record.who().name(),
        record.shows().viewName(),
        record.shows().teethWords(),
        record.shows().stage(),
        record.filed(),
        closeness,
        record.objectUid(),
        record.hash());
  }

  /** Where the object of a row lies, or the photograph's own file while it waits. */
  public static Optional<Path> path(Practice practice, Row row) {
    String uid = row.objectUid();
    return uid == null
        ? new SourceFiles(practice).place(new ContentHash(row.hash()))
        : practice.store().objects().path(uid);
  }
}
