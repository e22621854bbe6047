package org.vestibule.flow;

import java.time.Instant;
import java.time.LocalDateTime;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.vestibule.base.ContentHash;

/**
 * A photograph that waits for a person.
 *
 * @param hash of its bytes
 * @param id what people call it by
 * @param name the file's name
 * @param takenAt on the camera's clock, if the file says so
 * @param since when it began to wait
 * @param proposal what is known or likely, by name of the fact
 * @param reasons why it waits, each with what to do
 * @param advice what could be better about its picture; never a reason to wait
 */
public record WaitingPhoto(
    ContentHash hash,
    String id,
    String name,
    @Nullable LocalDateTime takenAt,
    @Nullable Instant since,
    Map<String, String> proposal,
    List<Reason> reasons,
    List<Advice> advice) {

  /**
   * Why it waits.
   *
   * @param kind stable name
   * @param sentence what was found and expected
   * @param advice what to do
   */
  public record Reason(String kind, String sentence, String advice) {}

  public WaitingPhoto {
    proposal = Map.copyOf(proposal);
    reasons = List.copyOf(reasons);
    advice = List.copyOf(advice);
  }
}
