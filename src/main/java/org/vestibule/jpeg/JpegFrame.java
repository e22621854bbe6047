package org.vestibule.jpeg;

import java.util.List;
import java.util.stream.Collectors;

/**
 * The frame header of a picture (ITU-T T.81 B.2.2).
 *
 * @param process coding process
 * @param precisionBits bits per sample
 * @param size samples of the full frame; the height may come from a DNL segment
 * @param components components in the order of the header
 */
public record JpegFrame(
    CodingProcess process, int precisionBits, FrameSize size, List<JpegComponent> components) {

  public JpegFrame {
    components = List.copyOf(components);
  }

  /** The largest horizontal sampling factor. */
  public int maxHorizontal() {
    return components.stream().mapToInt(JpegComponent::horizontal).max().orElse(1);
  }

  /** The largest vertical sampling factor. */
  public int maxVertical() {
    return components.stream().mapToInt(JpegComponent::vertical).max().orElse(1);
  }

  /** Width in samples of the smallest unit that can be moved without loss (one MCU). */
  public int unitWidth() {
    return components.size() == 1 ? 8 : Math.multiplyExact(8, maxHorizontal());
  }

  /** Height in samples of the smallest unit that can be moved without loss (one MCU). */
  public int unitHeight() {
    return components.size() == 1 ? 8 : Math.multiplyExact(8, maxVertical());
  }

  /** Sampling in numbers, for example {@code 2x2,1x1,1x1}. */
  public String samplingWords() {
    return components.stream()
        .map(component -> component.horizontal() + "x" + component.vertical())
        .collect(Collectors.joining(","));
  }
}
