package org.vestibule.store.index;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import java.io.IOException;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.vestibule.store.steps.WriteSteps;

/** Tiers, days, pages and totals of the index's answers; descriptions come back as they went in. */
class IndexQueryTest {

  @TempDir private Path folder;
  private LucenePhotoIndex index;

  @BeforeEach
  void fill() throws IOException {
    index = new LucenePhotoIndex(folder, WriteSteps.PASS);
    index.follow(
        new FakeChanges("willow-lane")
            .put("a", 16, 1)
            .put("b", 26, 2)
            .put("c", 16, 3)
            .put("d", 36, 4));
  }

  @AfterEach
  void close() throws IOException {
    index.close();
  }

  private List<String> found(IndexQuery query) throws IOException {
    return index.search(query).hits().stream()
        .map(hit -> hit.record().note() + hit.tier())
        .toList();
  }

  private static IndexQuery query(
      List<AnyOf> must,
      List<AnyOf> tiers,
      @Nullable LocalDate from,
      @Nullable LocalDate to,
      int offset,
      int limit) {
    return new IndexQuery(must, tiers, from, to, offset, limit);
  }

  @Test
  void answersComeByTierAndThenTheNewestFirst() throws IOException {
    List<AnyOf> tiers =
        List.of(AnyOf.of(IndexField.TOOTH, "16"), AnyOf.of(IndexField.TOOTH, "26", "16"));
    assertThat(found(query(List.of(), tiers, null, null, 0, 9))).containsExactly("c0", "a0", "b1");
  }

  @Test
  void everythingThatMustBeIsAskedFor() throws IOException {
    List<AnyOf> must =
        List.of(AnyOf.of(IndexField.TOOTH, "16", "36"), AnyOf.of(IndexField.TEXT, "a", "b", "d"));
    assertThat(found(query(must, List.of(), null, null, 0, 9))).containsExactly("d0", "a0");
  }

  @Test
  void theFirstAndTheLastDayCount() throws IOException {
    LocalDate second = LocalDate.of(2026, 3, 2);
    LocalDate third = LocalDate.of(2026, 3, 3);
    assertThat(found(query(List.of(), List.of(), second, third, 0, 9))).containsExactly("c0", "b0");
    assertThat(found(query(List.of(), List.of(), third, null, 0, 9))).containsExactly("d0", "c0");
    assertThat(found(query(List.of(), List.of(), null, second, 0, 9))).containsExactly("b0", "a0");
  }

  @Test
  void pagesPassOverAndTheTotalStays() throws IOException {
    assertThat(found(query(List.of(), List.of(), null, null, 1, 2))).containsExactly("c0", "b0");
    assertThat(index.search(query(List.of(), List.of(), null, null, 3, 2)).total()).isEqualTo(4);
    assertThat(found(query(List.of(), List.of(), null, null, 4, 2))).isEmpty();
  }

  @Test
  void aPageWithoutEndFromTheMiddleIsNoOverflow() throws IOException {
    assertThat(found(query(List.of(), List.of(), null, null, 2, Integer.MAX_VALUE)))
        .containsExactly("b0", "a0");
  }

  /** More than a thousand are not counted, unless all of them are wanted anyway. */
  @Test
  void manyAnswersAreCountedToAThousandAndTheListGoesOn() throws IOException {
    FakeChanges many = new FakeChanges("alder-yard");
    for (int at = 0; at < 1300; at++) {
      many.put("photo " + at, at % 2 == 0 ? 16 : 26, 1 + at % 28);
    }
    index.follow(many);
    IndexAnswer first = index.search(IndexQuery.all(2));
    assertThat(first.total()).isEqualTo(1000);
    assertThat(first.more()).isTrue();
    IndexAnswer half = index.search(tooth("16", 2));
    assertThat(half.total()).isEqualTo(650);
    assertThat(half.more()).isFalse();
    IndexAnswer all = index.search(IndexQuery.all(5000));
    assertThat(all.hits()).hasSize(1300);
    assertThat(all.total()).isEqualTo(1300);
    assertThat(all.more()).isFalse();
    IndexAnswer page = index.search(query(List.of(), List.of(), null, null, 1100, 150));
    assertThat(page.hits()).isEqualTo(all.hits().subList(1100, 1250));
    assertThat(page.more()).isTrue();
  }

  /** The second tier is counted where the first one's answers end. */
  @Test
  void tiersAreCountedTogether() throws IOException {
    FakeChanges many = new FakeChanges("alder-yard");
    for (int at = 0; at < 1300; at++) {
      many.put("photo " + at, at % 2 == 0 ? 16 : 26, 1 + at % 28);
    }
    index.follow(many);
    List<AnyOf> both =
        List.of(AnyOf.of(IndexField.TOOTH, "26"), AnyOf.of(IndexField.TOOTH, "16", "26"));
    IndexAnswer answer = index.search(query(List.of(), both, null, null, 648, 4));
    assertThat(answer.hits()).extracting(IndexAnswer.Hit::tier).containsExactly(0, 0, 1, 1);
    assertThat(answer.total()).isEqualTo(1000);
    assertThat(answer.more()).isTrue();
    IndexAnswer whole = index.search(query(List.of(), both, null, null, 0, 5000));
    assertThat(whole.total()).isEqualTo(1300);
    assertThat(whole.more()).isFalse();
    List<AnyOf> none =
        List.of(AnyOf.of(IndexField.TOOTH, "16", "26"), AnyOf.of(IndexField.TOOTH, "48"));
    assertThat(index.search(query(List.of(), none, null, null, 0, 5000)).more()).isFalse();
    IndexAnswer named = index.search(query(List.of(), both.subList(0, 1), null, null, 0, 4));
    assertThat(named.total()).isEqualTo(650);
    assertThat(named.more()).isFalse();
  }

  private static IndexQuery tooth(String tooth, int limit) {
    return query(List.of(AnyOf.of(IndexField.TOOTH, tooth)), List.of(), null, null, 0, limit);
  }

  /** Two of one second keep their order, whether they came together or one after the other. */
  @Test
  void ofOneSecondTheSmallerHashComesFirst() throws IOException {
    List<String> names = List.of("k", "l", "m", "n", "o", "p");
    FakeChanges together = new FakeChanges("alder-yard");
    FakeChanges apart = new FakeChanges("birch-row");
    names.forEach(name -> together.put(name, 16, 5));
    index.follow(together);
    List<String> atOnce = found(IndexQuery.all(9));
    for (int at = names.size() - 1; at >= 0; at--) {
      apart.put(names.get(at), 16, 5);
      index.follow(apart);
    }
    assertThat(found(IndexQuery.all(9))).isEqualTo(atOnce);
    List<String> hashes =
        index.search(IndexQuery.all(9)).hits().stream().map(hit -> hit.record().hash()).toList();
    assertThat(hashes).isSorted().hasSize(6);
  }

  /** The ends of a day are the ends of its span, and what has no date lies in no span. */
  @Test
  void aSpanEndsWithItsLastSecond() {
    LocalDate day = LocalDate.of(2026, 3, 2);
    String first = "0".repeat(64);
    String last = "f".repeat(64);
    assertThat(
            List.of(
                NewestFirst.number(null, last),
                NewestFirst.number(null, first),
                NewestFirst.number(LocalDateTime.MIN, last),
                NewestFirst.number(day.atStartOfDay().minusSeconds(1), first),
                NewestFirst.number(day.atStartOfDay(), last),
                NewestFirst.number(day.atTime(23, 59, 59), first),
                NewestFirst.number(day.plusDays(1).atStartOfDay(), last),
                NewestFirst.number(LocalDateTime.MAX, first)))
        .isSorted()
        .doesNotHaveDuplicates();
    assertThat(NewestFirst.days(day, day))
        .hasToString(
            "when:["
                + NewestFirst.number(day.atStartOfDay(), last)
                + " TO "
                + NewestFirst.number(day.atTime(23, 59, 59), first)
                + "]");
  }

  @Test
  void whatHasNoDateLiesInNoSpan() throws IOException {
    FakeChanges changes = new FakeChanges("alder-yard").put("a", 16, 1).undated("z");
    index.follow(changes);
    assertThat(found(IndexQuery.all(9))).containsExactly("a0", "z0");
    LocalDate late = LocalDate.of(9999, 12, 31);
    assertThat(found(query(List.of(), List.of(), null, late, 0, 9))).containsExactly("a0");
    assertThat(found(query(List.of(), List.of(), LocalDate.of(1, 1, 1), null, 0, 9)))
        .containsExactly("a0");
  }

  /** Times with parts of a second, and years beyond four digits, are left to the library. */
  @Test
  void datesAreReadInEveryForm() {
    assertThat(IsoTime.dateTime("2026-03-05T09:05:07"))
        .isEqualTo(LocalDateTime.of(2026, 3, 5, 9, 5, 7));
    assertThat(IsoTime.dateTime("2026-03-05T09:05")).isEqualTo(LocalDateTime.of(2026, 3, 5, 9, 5));
    assertThat(IsoTime.dateTime("2026-03-05T09:05:07.250"))
        .isEqualTo(LocalDateTime.of(2026, 3, 5, 9, 5, 7, 250_000_000));
    assertThat(IsoTime.date("2026-03-05")).isEqualTo(LocalDate.of(2026, 3, 5));
    assertThat(IsoTime.date("+12026-03-05")).isEqualTo(LocalDate.of(12026, 3, 5));
  }

  @Test
  void aDescriptionComesBackAsItWentIn() throws IOException {
    IndexRecord full = FakeChanges.record("Ü \"quoted\" \n 齒", 16, 5);
    assertThat(IndexRecordJson.read(IndexRecordJson.write(full))).isEqualTo(full);
    assertThat(index.search(IndexQuery.all(1)).hits().get(0).record())
        .isEqualTo(FakeChanges.record("d", 36, 4));
    IndexRecord bare =
        new IndexRecord(
            full.hash(),
            full.id(),
            false,
            null,
            null,
            IndexRecord.Who.NOBODY,
            full.shows(),
            "",
            "",
            "");
    assertThat(IndexRecordJson.read(IndexRecordJson.write(bare))).isEqualTo(bare);
  }

  @Test
  void whatIsNoDescriptionIsRefused() {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> IndexRecordJson.read("[]"))
        .withMessage("the description of a photograph is no JSON object");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> IndexRecordJson.read("{\"hash\":"))
        .withMessage("the description of a photograph is damaged");
  }

  @Test
  void aQuestionThatCannotBeMetIsNoQuestion() {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> IndexQuery.all(0))
        .withMessage("offset must be from 0 and limit from 1 but they were 0 and 0");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new AnyOf(List.of()))
        .withMessage("of no alternatives none can be met");
  }
}
