package org.vestibule.flow.delivering;

import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.function.Consumer;

/**
 * Who was not let in at the report door, each sentence once: a network scanner must not fill a
 * console. Told by several threads.
 */
public final class TurnedAway implements Consumer<String> {

  private static final int MOST = 20;

  private final Set<String> sentences = new LinkedHashSet<>();
  private final Consumer<String> first;

  /**
   * @param first told of each new sentence at once, as long as there are not too many
   */
  public TurnedAway(Consumer<String> first) {
    this.first = first;
  }

  @Override
  public synchronized void accept(String sentence) {
    if (sentences.size() < MOST && sentences.add(sentence)) {
      first.accept(sentence);
    }
  }

  /** What was told so far. */
  public synchronized List<String> sentences() {
    return List.copyOf(sentences);
  }
}
