package org.vestibule.check;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.vestibule.dicom.DataSet;
import org.vestibule.dicom.Dictionary;
import org.vestibule.dicom.Element;
import org.vestibule.dicom.Tags;
import org.vestibule.dicom.Vr;

/**
 * Walks an object along the attribute table: what must be there is, nothing else is, and each value
 * is of the right kind, number, form and list.
 */
final class TableWalk {

  private final DataSet root;

  TableWalk(DataSet root) {
    this.root = root;
  }

  void walk(Findings findings) {
    level(root, AttributeTable.STANDARD.top(), findings);
  }

  private void level(DataSet here, List<AttributeRow> rows, Findings findings) {
    Map<String, AttributeRow> byKeyword = new HashMap<>();
    Place place = new Place(here, root);
    for (AttributeRow row : rows) {
      byKeyword.put(row.keyword(), row);
      presence(row, place, findings);
    }
    for (Element element : here) {
      AttributeRow row = byKeyword.get(element.keyword());
      if (row == null) {
        foreign(element, findings);
      } else {
        known(element, row, findings);
      }
    }
  }

  private static void presence(AttributeRow row, Place place, Findings findings) {
    int tag = Place.tag(row.keyword());
    boolean there = place.has(row.keyword());
    Truth demanded =
        row.type().equals("3")
            ? Truth.UNKNOWN
            : row.condition() == null ? Truth.TRUE : row.condition().ask(place);
    if (!there && demanded == Truth.TRUE) {
      findings.error(tag, "is missing; " + demand(row), row.standard());
    }
    if (there && demanded == Truth.FALSE && !row.otherwiseAllowed()) {
      findings.error(
          tag,
          "must not be there: its condition (" + condition(row) + ") doesn't hold",
          row.standard());
    }
    if (there && row.needsValue() && !place.isFilled(row.keyword())) {
      findings.error(
          tag, "is empty; it must have a value (type " + row.type() + ")", row.standard());
    }
  }

  private static String demand(AttributeRow row) {
    String why = row.condition() == null ? "" : ", since " + condition(row);
    return (row.needsValue() ? "it must have a value" : "it must be there, even if empty")
        + " (type "
        + row.type()
        + why
        + ")";
  }

  private static String condition(AttributeRow row) {
    return Objects.requireNonNull(row.condition()).text();
  }

  private static void foreign(Element element, Findings findings) {
    if (Tags.isPrivate(element.tag())) {
      findings.warning(
          element.tag(), "is a private element; only its maker knows what it holds", "PS3.5 7.8");
    } else if (Dictionary.entry(element.tag()).isEmpty()) {
      findings.error(element.tag(), "is no element of the standard", "PS3.6");
    } else {
      findings.warning(
          element.tag(), "doesn't belong to a VL Photographic Image here", "PS3.3 A.32.4");
    }
    ValueForms.check(element, findings);
  }

  private void known(Element element, AttributeRow row, Findings findings) {
    if (!row.vrs().contains(element.vr())) {
      findings.error(
          element.tag(),
          "has the value representation " + element.vr() + " instead of " + row.vrs().get(0),
          "PS3.6");
      return;
    }
    if (element.isEmpty()) {
      return;
    }
    if (element.vr() == Vr.SQ) {
      sequence(element, row, findings);
      return;
    }
    if (!row.vm().isEmpty() && !Multiplicity.fits(row.vm(), element.multiplicity())) {
      findings.error(
          element.tag(), "has " + element.multiplicity() + " values, not " + row.vm(), "PS3.6");
    }
    ValueForms.check(element, findings);
    for (ValueList list : row.values()) {
      if (!list.fits(element.strings())) {
        findings.add(
            list.closed() ? Severity.ERROR : Severity.WARNING,
            element.tag(),
            list.words(),
            row.standard());
      }
    }
  }

  private void sequence(Element element, AttributeRow row, Findings findings) {
    List<DataSet> items = element.items();
    if (row.mostItems() > 0 && items.size() > row.mostItems()) {
      findings.error(
          element.tag(),
          "has " + items.size() + " items; at most " + row.mostItems() + " is allowed",
          row.standard());
    }
    if (row.holdsAnything()) {
      return;
    }
    List<AttributeRow> inside = AttributeTable.STANDARD.inside(row);
    for (int i = 0; i < items.size(); i++) {
      level(items.get(i), inside, findings.inside(row.keyword(), i + 1));
      membership(items.get(i), row, findings, element.tag());
    }
  }

  private static void membership(DataSet item, AttributeRow row, Findings findings, int tag) {
    CodeBinding codes = row.codes();
    if (codes != null && !ContextGroups.STANDARD.allows(codes, item)) {
      findings.add(
          codes.defined() ? Severity.ERROR : Severity.WARNING,
          tag,
          "holds a code that is not of " + codes.words() + " and isn't marked as an extension",
          row.standard());
    }
  }
}
