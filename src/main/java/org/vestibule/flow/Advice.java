package org.vestibule.flow;

import java.util.Locale;
import org.vestibule.quality.QualityFinding;
import org.vestibule.quality.QualityKind;

/**
 * Something that could be better about a picture.
 *
 * @param kind in words, such as {@code digital zoom}
 * @param measure what was measured, short, such as {@code 3.0x}
 * @param sentence what was found and what is usual
 * @param whatToDo now or next time, as sentences
 */
public record Advice(String kind, String measure, String sentence, String whatToDo) {

  static Advice of(QualityFinding finding) {
    return new Advice(
        finding.kind().words(),
        measure(finding.kind(), finding.measured()),
        finding.sentence(),
        finding.whatToDo());
  }

  static String measure(QualityKind kind, double measured) {
    return switch (kind) {
      case DIGITAL_ZOOM -> String.format(Locale.ROOT, "%.1fx", measured);
      case BURNT_OUT_TEETH, GLARE, BLUR -> String.format(Locale.ROOT, "%.1f %%", 100 * measured);
      case FEW_PIXELS -> String.format(Locale.ROOT, "%.1f million", measured);
      case COLOUR_CAST, TILT -> String.format(Locale.ROOT, "%.1f", measured);
    };
  }
}
