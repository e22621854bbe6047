package org.vestibule.release;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.vestibule.deid.TextCleaner;
import org.vestibule.dental.Accessory;
import org.vestibule.dental.AccessoryCatalogue;
import org.vestibule.dental.View;
import org.vestibule.dental.ViewCatalogue;
import org.vestibule.encode.Role;
import org.vestibule.encode.SeriesWords;

/**
 * Texts that the program itself writes, from its own tables: these identify nobody. Of any other
 * text nothing is let through; of a comment, the sentences that are known.
 */
final class KnownTexts implements TextCleaner {

  static final KnownTexts STANDARD = new KnownTexts();

  private final Set<String> texts = new HashSet<>();

  private KnownTexts() {
    texts.add("Dental photographs");
    texts.add("Was a mirror image, shown corrected.");
    for (View view : ViewCatalogue.standard().all()) {
      texts.add("View: " + view.name() + ".");
      for (Role role : Role.values()) {
        texts.add(SeriesWords.of(view, role, true).description());
        texts.add(SeriesWords.of(view, role, false).description());
      }
    }
    AccessoryCatalogue.all().stream().map(Accessory::description).forEach(texts::add);
  }

  @Override
  public Optional<String> clean(String text) {
    if (texts.contains(text) || PrivacyCrop.SAID.matcher(text).matches()) {
      return Optional.of(text);
    }
    List<String> known = new ArrayList<>();
    for (String sentence : text.split("(?<=\\.) +", -1)) {
      if (texts.contains(sentence)) {
        known.add(sentence);
      }
    }
    return known.isEmpty() ? Optional.empty() : Optional.of(String.join(" ", known));
  }
}
