package org.vestibule.deid;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.vestibule.dicom.DataSet;
import org.vestibule.dicom.Element;
import org.vestibule.dicom.Tags;
import org.vestibule.dicom.Vr;

/**
 * Goes through a data set and the items of its sequences, and builds the copy element by element.
 */
final class Walk {

  private final Rules rules;
  private final Substitutes substitutes;
  private final Cleaning cleaning;

  Walk(Rules rules, Substitutes substitutes) {
    this.rules = rules;
    this.substitutes = substitutes;
    this.cleaning = new Cleaning(substitutes);
  }

  DataSet data(DataSet data) {
    return level(data, "");
  }

  private DataSet level(DataSet from, String parent) {
    DataSet to = new DataSet();
    for (Element element : from) {
      apply(rules.action(element, parent), element, parent, to);
    }
    return to;
  }

  private void apply(Action action, Element element, String parent, DataSet to) {
    switch (action) {
      case X -> {}
      case Z -> empty(element, parent, to);
      case D -> dummy(element, parent, to);
      case U -> substitute(element, parent, to);
      case K -> keep(element, parent, to);
      case C -> clean(element, parent, to);
    }
  }

  private void keep(Element element, String parent, DataSet to) {
    if (element.vr() == Vr.SQ) {
      to.put(element.tag(), items(element, parent));
    } else {
      to.put(element);
    }
  }

  private List<DataSet> items(Element sequence, String parent) {
    String path = path(parent, sequence);
    return sequence.items().stream().map(item -> level(item, path)).toList();
  }

  /** The patient's own name and number become the pseudonym, which Z allows as a dummy. */
  private void empty(Element element, String parent, DataSet to) {
    int tag = element.tag();
    boolean pseudonym = tag == Tags.PatientName || tag == Tags.PatientID;
    if (pseudonym && parent.isEmpty()) {
      // A name without a caret is of a retired form, which validators warn of.
      to.put(tag, substitutes.patientId() + (tag == Tags.PatientName ? "^" : ""));
    } else {
      to.putEmpty(tag);
    }
  }

  private void dummy(Element element, String parent, DataSet to) {
    switch (element.vr()) {
      case UI -> to.put(element.tag(), Vr.UI, substituted(element));
      case SQ -> {
        String path = path(parent, element);
        to.put(element.tag(), element.items().stream().map(item -> hollow(item, path)).toList());
      }
      default -> Dummies.put(to, element.tag(), element.vr());
    }
  }

  /** An item of the same shape in which no value is left. */
  private DataSet hollow(DataSet item, String path) {
    DataSet to = new DataSet();
    for (Element element : item) {
      if (rules.action(element, path) != Action.X) {
        dummy(element, path, to);
      }
    }
    return to;
  }

  private void substitute(Element element, String parent, DataSet to) {
    if (element.vr() == Vr.SQ) {
      to.put(element.tag(), items(element, parent));
    } else {
      to.put(element.tag(), Vr.UI, substituted(element));
    }
  }

  private String[] substituted(Element element) {
    return element.strings().stream()
        .map(uid -> uid.isEmpty() ? uid : substitutes.uids().substitute(uid))
        .toArray(String[]::new);
  }

  private void clean(Element element, String parent, DataSet to) {
    boolean done =
        element.vr() == Vr.SQ ? cleanItems(element, parent, to) : cleaning.value(element, to);
    if (!done) {
      apply(rules.basic(element, parent), element, parent, to);
    }
  }

  /** Items of which every text may stay; false if there is none. */
  private boolean cleanItems(Element sequence, String parent, DataSet to) {
    List<DataSet> clean = new ArrayList<>();
    for (DataSet item : items(sequence, parent)) {
      Optional<DataSet> cleaned = cleaning.item(item);
      cleaned.ifPresent(clean::add);
    }
    if (!clean.isEmpty()) {
      to.put(sequence.tag(), clean);
    }
    return !clean.isEmpty();
  }

  private static String path(String parent, Element sequence) {
    return parent.isEmpty() ? sequence.keyword() : parent + ">" + sequence.keyword();
  }
}
