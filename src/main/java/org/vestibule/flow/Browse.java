package org.vestibule.flow;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.vestibule.base.ContentHash;
import org.vestibule.base.Outcome;
import org.vestibule.base.Outcome.Done;
import org.vestibule.base.Outcome.Refused;
import org.vestibule.search.Question;
import org.vestibule.search.QuestionOptions;
import org.vestibule.store.index.AnyOf;
import org.vestibule.store.index.CaughtUp;
import org.vestibule.store.index.IndexAnswer;
import org.vestibule.store.index.IndexField;
import org.vestibule.store.index.IndexQuery;
import org.vestibule.store.index.IndexRecord;

/** Looks through photographs page by page, for whoever leafs through them. */
public final class Browse {

  /** Which photographs come first. */
  public enum Order {
    /** The closest to the tooth that was asked for, then the newest. */
    CLOSEST,
    NEWEST
  }

  /**
   * A photograph that answers.
   *
   * @param closeness how closely it is about the tooth that was asked for; empty without one
   */
  public record Hit(IndexRecord record, String closeness) {}

  /**
   * An answer.
   *
   * @param understood how the question was understood
   * @param total how many there are in all
   * @param more true if there are more than the total, which was then not counted to its end
   */
  public record Answer(List<String> understood, List<Hit> hits, int total, boolean more) {
    public Answer {
      understood = List.copyOf(understood);
      hits = List.copyOf(hits);
    }
  }

  private static final int MOST_OF_A_KIND = 200;

  private final Practice practice;

  public Browse(Practice practice) {
    this.practice = practice;
  }

  /**
   * Answers a question.
   *
   * @param offset how many to pass over
   * @param limit how many to give at most
   * @param who asks; the site's audit repository is told
   */
  public Outcome<Answer> ask(
      String words, QuestionOptions options, Order order, int offset, int limit, OnPages who)
      throws IOException {
    Outcome<Question> read = Find.understood(practice, words, options);
    if (!(read instanceof Done<Question> asked)) {
      return ((Refused<Question>) read).as();
    }
    Question question = asked.value();
    boolean closest = order == Order.CLOSEST;
    List<AnyOf> must = new ArrayList<>(question.must());
    if (!closest && !question.tiers().isEmpty()) {
      must.add(new AnyOf(question.tiers().stream().flatMap(t -> t.terms().stream()).toList()));
    }
    IndexQuery query =
        new IndexQuery(
            must,
            closest ? question.tiers() : List.of(),
            question.from(),
            question.to(),
            offset,
            limit);
    practice.audit().asked(String.join("; ", question.understood()), who.peer());
    List<String> tierWords = closest ? question.tierWords() : List.of();
    return Outcome.done(answer(question.understood(), tierWords, query));
  }

  /** Everything that is filed, the newest first. */
  public Outcome<Answer> newest(int offset, int limit, OnPages who) throws IOException {
    if (practice.store().followIndex().kind() == CaughtUp.Kind.BEING_MADE) {
      return Find.beingMade();
    }
    practice.audit().asked("everything that is filed", who.peer());
    List<AnyOf> filed = List.of(AnyOf.of(IndexField.STATE, "filed"));
    IndexQuery all = new IndexQuery(filed, List.of(), null, null, offset, limit);
    return Outcome.done(answer(List.of(), List.of(), all));
  }

  private Answer answer(List<String> understood, List<String> tierWords, IndexQuery query)
      throws IOException {
    IndexAnswer found = practice.store().index().search(query);
    List<Hit> hits =
        found.hits().stream()
            .map(hit -> new Hit(hit.record(), tierWords.isEmpty() ? "" : tierWords.get(hit.tier())))
            .toList();
    return new Answer(understood, hits, found.total(), found.more());
  }

  /** A photograph as the index describes it; empty if it is neither filed nor waiting. */
  public Optional<IndexRecord> find(ContentHash hash) throws IOException {
    practice.store().followIndex();
    return search(List.of(AnyOf.of(IndexField.HASH, hash.hex())), 1).stream().findFirst();
  }

  /**
   * The filed photographs of the same patient with the same view, and of at least one of the same
   * teeth if any are named: itself among them, the newest first.
   */
  public List<IndexRecord> sameKind(IndexRecord photo) throws IOException {
    IndexRecord.Who who = photo.who();
    if (who.patientId().isEmpty() || !photo.filed()) {
      return List.of();
    }
    List<AnyOf> must = new ArrayList<>();
    must.add(AnyOf.of(IndexField.PATIENT, who.patientId().toLowerCase(Locale.ROOT)));
    must.add(AnyOf.of(IndexField.VIEW, photo.shows().viewKey()));
    must.add(AnyOf.of(IndexField.STATE, "filed"));
    List<Integer> teeth = photo.shows().teeth();
    if (!teeth.isEmpty()) {
      must.add(AnyOf.of(IndexField.TOOTH, teeth.stream().map(String::valueOf).toList()));
    }
    return search(must, MOST_OF_A_KIND).stream()
        .filter(other -> other.who().patientId().equals(who.patientId()))
        .filter(other -> other.who().issuer().equals(who.issuer()))
        .toList();
  }

  private List<IndexRecord> search(List<AnyOf> must, int limit) throws IOException {
    IndexQuery query = new IndexQuery(must, List.of(), null, null, 0, limit);
    return practice.store().index().search(query).hits().stream()
        .map(IndexAnswer.Hit::record)
        .toList();
  }
}
