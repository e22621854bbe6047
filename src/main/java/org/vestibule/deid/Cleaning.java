package org.vestibule.deid;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.vestibule.dicom.DataSet;
import org.vestibule.dicom.Element;
import org.vestibule.dicom.Tags;
import org.vestibule.dicom.Vr;

/**
 * Action C (PS3.15 E.1.1): a date is moved, a text stays as far as it is known to identify nobody.
 * A value of another kind can't be cleaned.
 */
final class Cleaning {

  /** Value and scheme of a code are no text; its meaning is. */
  private static final Set<Integer> CODES =
      Set.of(
          Tags.CodeValue,
          Tags.LongCodeValue,
          Tags.CodingSchemeDesignator,
          Tags.CodingSchemeVersion);

  /** UIDs that name a vocabulary, not anybody's study or object. */
  private static final Set<Integer> UIDS_OF_CODES =
      Set.of(Tags.ContextGroupExtensionCreatorUID, Tags.ContextUID, Tags.MappingResourceUID);

  private static final Set<Vr> FREE = Set.of(Vr.LO, Vr.LT, Vr.SH, Vr.ST, Vr.UC, Vr.UT, Vr.PN);
  private static final Set<Vr> DATES = Set.of(Vr.DA, Vr.DT, Vr.TM);

  private final ShiftedDates dates;
  private final TextCleaner texts;

  Cleaning(Substitutes substitutes) {
    this.dates = new ShiftedDates(substitutes.shiftDays(), substitutes.keepsTimes());
    this.texts = substitutes.texts();
  }

  /** Puts what may stay of this value; false if nothing may. */
  boolean value(Element element, DataSet to) {
    Optional<List<String>> clean = Optional.empty();
    if (DATES.contains(element.vr())) {
      clean = dates.of(element);
    } else if (FREE.contains(element.vr())) {
      clean = Optional.of(texts(element)).filter(values -> !values.isEmpty());
    }
    clean.ifPresent(values -> to.put(element.tag(), element.vr(), values.toArray(String[]::new)));
    return clean.isPresent();
  }

  private List<String> texts(Element element) {
    List<String> clean = new ArrayList<>();
    for (String value : element.strings()) {
      texts.clean(value).filter(text -> !text.isBlank()).ifPresent(clean::add);
    }
    return clean;
  }

  /**
   * The item, if every text in it may stay as it is and no UID in it names a study or an object;
   * otherwise nothing of it.
   */
  Optional<DataSet> item(DataSet item) {
    DataSet to = new DataSet();
    for (Element element : item) {
      if (element.vr() == Vr.SQ) {
        List<DataSet> inside =
            element.items().stream().map(this::item).flatMap(Optional::stream).toList();
        if (inside.size() != element.items().size()) {
          return Optional.empty();
        }
        to.put(element.tag(), inside);
      } else if (isTextToRead(element)) {
        if (!texts(element).equals(element.strings())) {
          return Optional.empty();
        }
        to.put(element);
      } else if (element.vr() == Vr.UI && !UIDS_OF_CODES.contains(element.tag())) {
        return Optional.empty();
      } else {
        to.put(element);
      }
    }
    return Optional.of(to);
  }

  private static boolean isTextToRead(Element element) {
    return FREE.contains(element.vr()) && !CODES.contains(element.tag());
  }
}
