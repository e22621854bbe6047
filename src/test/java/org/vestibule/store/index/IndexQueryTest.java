package org.vestibule.store.index;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import java.io.IOException;
import java.nio.file.Path;
import java.time.LocalDate;
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
