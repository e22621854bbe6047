package org.vestibule.forward;

import java.io.ByteArrayInputStream;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import javax.xml.stream.XMLInputFactory;
import javax.xml.stream.XMLStreamConstants;
import javax.xml.stream.XMLStreamException;
import javax.xml.stream.XMLStreamReader;
import org.vestibule.base.Outcome;
import org.vestibule.dicom.DataSet;
import org.vestibule.dicom.Vr;

/**
 * Reads a data set in the Native DICOM Model (PS3.19 annex A.1), as far as answers to a store need
 * it: text, whole numbers and sequences. Of other values it reads that they are there. Document
 * types and entities are refused.
 */
final class NativeModel {

  private static final int DEEPEST = 16;

  private final XMLStreamReader xml;

  private NativeModel(XMLStreamReader xml) {
    this.xml = xml;
  }

  static Outcome<DataSet> read(byte[] bytes) {
    XMLInputFactory factory = XMLInputFactory.newDefaultFactory();
    factory.setProperty(XMLInputFactory.SUPPORT_DTD, false);
    factory.setProperty(XMLInputFactory.IS_SUPPORTING_EXTERNAL_ENTITIES, false);
    try {
      XMLStreamReader xml = factory.createXMLStreamReader(new ByteArrayInputStream(bytes));
      while (xml.hasNext()) {
        if (xml.next() == XMLStreamConstants.START_ELEMENT) {
          return xml.getLocalName().equals("NativeDicomModel")
              ? Outcome.done(new NativeModel(xml).dataSet(0))
              : none();
        }
      }
      return none();
    } catch (XMLStreamException | IllegalArgumentException e) {
      return none();
    }
  }

  private static Outcome<DataSet> none() {
    return Outcome.refused(
        "this is no data set in the native model", "ask for the answer as JSON instead");
  }

  /** From behind the start of an element to its end. */
  private DataSet dataSet(int depth) throws XMLStreamException {
    if (depth > DEEPEST) {
      throw new XMLStreamException("nested too deep");
    }
    DataSet data = new DataSet();
    while (xml.next() != XMLStreamConstants.END_ELEMENT) {
      if (xml.getEventType() == XMLStreamConstants.START_ELEMENT) {
        attribute(data, depth);
      }
    }
    return data;
  }

  private void attribute(DataSet data, int depth) throws XMLStreamException {
    int tag = Integer.parseUnsignedInt(attribute("tag"), 16);
    Optional<Vr> vr = Vr.of(attribute("vr"));
    List<String> values = new ArrayList<>();
    List<DataSet> items = new ArrayList<>();
    while (xml.next() != XMLStreamConstants.END_ELEMENT) {
      if (xml.getEventType() != XMLStreamConstants.START_ELEMENT) {
        continue;
      }
      if (xml.getLocalName().equals("Item")) {
        items.add(dataSet(depth + 1));
      } else if (xml.getLocalName().equals("Value")) {
        values.add(xml.getElementText().strip());
      } else {
        pass();
      }
    }
    if (vr.equals(Optional.of(Vr.SQ))) {
      data.put(tag, items);
    } else if (vr.equals(Optional.of(Vr.US))) {
      data.put(tag, values.stream().mapToLong(Long::parseLong).toArray());
    } else if (vr.equals(Optional.of(Vr.UI)) || vr.equals(Optional.of(Vr.LO))) {
      data.put(tag, vr.get(), values.toArray(new String[0]));
    } else if (vr.isPresent() && vr.get().isText()) {
      data.put(tag, vr.get(), new String[0]);
    } else if (vr.isPresent()) {
      data.put(tag, vr.get(), new byte[0]);
    }
  }

  /** Over an element that is not needed. */
  private void pass() throws XMLStreamException {
    int open = 1;
    while (open > 0) {
      int event = xml.next();
      open += event == XMLStreamConstants.START_ELEMENT ? 1 : 0;
      open -= event == XMLStreamConstants.END_ELEMENT ? 1 : 0;
    }
  }

  private String attribute(String name) throws XMLStreamException {
    String value = xml.getAttributeValue(null, name);
    if (value == null) {
      throw new XMLStreamException("an attribute lacks its " + name);
    }
    return value;
  }
}
