package org.vestibule.assign;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.vestibule.dental.Accessory;
import org.vestibule.dental.Edge;
import org.vestibule.dental.Incisors;
import org.vestibule.dental.Mirror;
import org.vestibule.dental.Stage;
import org.vestibule.dental.Teeth;
import org.vestibule.dental.View;

/** Collects what is known of a photograph in the words a person would write. */
final class FactWords {

  private final Map<PhotoFact, String> words = new EnumMap<>(PhotoFact.class);

  /** What was put; nothing blank. */
  Map<PhotoFact, String> all() {
    return words;
  }

  void put(PhotoFact fact, @Nullable String value) {
    if (value != null && !value.isBlank()) {
      words.put(fact, value);
    }
  }

  void view(@Nullable View view) {
    put(PhotoFact.VIEW, view == null ? null : view.key());
  }

  void teeth(Teeth teeth) {
    put(PhotoFact.TEETH, teeth.text());
  }

  void mirror(Mirror mirror) {
    put(PhotoFact.MIRROR, mirror == Mirror.UNKNOWN ? null : CaptureWords.words(mirror));
  }

  /** Edges of the raw picture, as the look sheet shows them. */
  void edges(@Nullable Incisors raw, @Nullable Edge up, @Nullable Integer exifOrientation) {
    put(PhotoFact.INCISORS, raw == null ? null : CaptureWords.onSheet(raw, exifOrientation));
    put(PhotoFact.UP, up == null ? null : CaptureWords.onSheet(up, exifOrientation));
  }

  void crop(@Nullable Crop crop) {
    put(PhotoFact.CROP, crop == null ? null : crop.words());
  }

  void accessories(List<Accessory> accessories) {
    put(
        PhotoFact.ACCESSORIES,
        accessories.stream().map(Accessory::key).collect(Collectors.joining("; ")));
  }

  void stage(@Nullable Stage stage) {
    put(PhotoFact.STAGE, stage == null ? null : stage.words());
  }
}
