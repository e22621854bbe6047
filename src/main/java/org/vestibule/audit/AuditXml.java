package org.vestibule.audit;

import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.format.DateTimeFormatter;
import java.time.temporal.ChronoUnit;
import java.util.Base64;
import javax.xml.stream.XMLOutputFactory;
import javax.xml.stream.XMLStreamException;
import javax.xml.stream.XMLStreamWriter;
import org.vestibule.audit.AuditEvent.Detail;
import org.vestibule.audit.AuditEvent.ObjectOfEvent;
import org.vestibule.audit.AuditEvent.Participant;

/** Writes messages as XML of one line, by the schema of PS3.15 A.5.1. */
final class AuditXml {

  /** So many instances are named one by one; of more, their number stands there alone. */
  private static final int MOST_INSTANCES = 200;

  private static final XMLOutputFactory FACTORY = XMLOutputFactory.newDefaultFactory();

  private final AuditSource source;
  private final StringWriter text = new StringWriter();
  private final XMLStreamWriter out;

  private AuditXml(AuditSource source) throws XMLStreamException {
    this.source = source;
    this.out = FACTORY.createXMLStreamWriter(text);
  }

  /** The message, without line breaks. */
  static String write(AuditEvent event, AuditSource source) {
    try {
      AuditXml xml = new AuditXml(source);
      xml.message(event);
      return xml.text.toString();
    } catch (XMLStreamException e) {
      throw new IllegalStateException("an audit message could not be written", e);
    }
  }

  private void message(AuditEvent event) throws XMLStreamException {
    out.writeStartDocument("UTF-8", "1.0");
    out.writeStartElement("AuditMessage");
    identification(event);
    for (Participant participant : event.participants()) {
      participant(participant);
    }
    out.writeStartElement("AuditSourceIdentification");
    optional("AuditEnterpriseSiteID", source.site());
    attribute("AuditSourceID", source.id());
    code("AuditSourceTypeCode", new AuditCode("4", "", ""));
    out.writeEndElement();
    for (ObjectOfEvent object : event.objects()) {
      object(object);
    }
    out.writeEndElement();
    out.writeEndDocument();
    out.flush();
  }

  private void identification(AuditEvent event) throws XMLStreamException {
    out.writeStartElement("EventIdentification");
    attribute("EventActionCode", String.valueOf(event.action()));
    attribute("EventDateTime", time(event.at()));
    attribute("EventOutcomeIndicator", Integer.toString(event.outcome().indicator()));
    code("EventID", event.id());
    for (AuditCode type : event.types()) {
      code("EventTypeCode", type);
    }
    if (!event.words().isEmpty()) {
      element("EventOutcomeDescription", event.words());
    }
    out.writeEndElement();
  }

  static String time(Instant at) {
    return DateTimeFormatter.ISO_INSTANT.format(at.truncatedTo(ChronoUnit.MILLIS));
  }

  private void participant(Participant who) throws XMLStreamException {
    out.writeStartElement("ActiveParticipant");
    attribute("UserID", who.userId());
    optional("AlternativeUserID", who.alternativeId());
    optional("UserName", who.name());
    attribute("UserIsRequestor", Boolean.toString(who.requestor()));
    if (!who.address().isEmpty()) {
      attribute("NetworkAccessPointID", who.address());
      attribute("NetworkAccessPointTypeCode", Integer.toString(addressType(who.address())));
    }
    for (AuditCode role : who.roles()) {
      code("RoleIDCode", role);
    }
    if (who.roles().stream().anyMatch(AuditCode::isMedia)) {
      out.writeStartElement("MediaIdentifier");
      code("MediaType", AuditCode.of("media-uri"));
      out.writeEndElement();
    }
    out.writeEndElement();
  }

  /** 1 for a machine's name, 2 for an IP address, 5 for a URI. */
  private static int addressType(String address) {
    if (address.contains("://")) {
      return 5;
    }
    boolean ip = address.matches("[0-9.]+") || address.matches("[0-9a-fA-F.]*:[0-9a-fA-F:.%]*");
    return ip ? 2 : 1;
  }

  private void object(ObjectOfEvent object) throws XMLStreamException {
    out.writeStartElement("ParticipantObjectIdentification");
    attribute("ParticipantObjectID", object.id());
    attribute("ParticipantObjectTypeCode", Integer.toString(object.type()));
    attribute("ParticipantObjectTypeCodeRole", Integer.toString(object.role()));
    if (object.lifeCycle() > 0) {
      attribute("ParticipantObjectDataLifeCycle", Integer.toString(object.lifeCycle()));
    }
    code("ParticipantObjectIDTypeCode", object.idType());
    if (!object.query().isEmpty()) {
      element("ParticipantObjectQuery", object.query());
    } else {
      element("ParticipantObjectName", object.name());
    }
    for (Detail detail : object.details()) {
      out.writeEmptyElement("ParticipantObjectDetail");
      attribute("type", detail.type());
      attribute(
          "value",
          Base64.getEncoder().encodeToString(detail.value().getBytes(StandardCharsets.UTF_8)));
    }
    AuditedStudy study = object.study();
    if (study != null) {
      study(study);
    }
    out.writeEndElement();
  }

  private void study(AuditedStudy study) throws XMLStreamException {
    out.writeStartElement("ParticipantObjectDescription");
    if (!study.accessionNumber().isEmpty()) {
      out.writeEmptyElement("Accession");
      attribute("Number", study.accessionNumber());
    }
    for (AuditedStudy.SopClass one : study.classes()) {
      out.writeStartElement("SOPClass");
      attribute("UID", one.uid());
      attribute("NumberOfInstances", Integer.toString(one.instances().size()));
      if (one.instances().size() <= MOST_INSTANCES) {
        for (String uid : one.instances()) {
          out.writeEmptyElement("Instance");
          attribute("UID", uid);
        }
      }
      out.writeEndElement();
    }
    if (study.anonymous()) {
      element("Anonymized", "true");
    }
    out.writeEndElement();
  }

  private void code(String name, AuditCode code) throws XMLStreamException {
    out.writeEmptyElement(name);
    attribute("csd-code", code.value());
    optional("codeSystemName", code.system());
    optional("originalText", code.text());
  }

  private void element(String name, String value) throws XMLStreamException {
    out.writeStartElement(name);
    out.writeCharacters(clean(value));
    out.writeEndElement();
  }

  private void optional(String name, String value) throws XMLStreamException {
    if (!value.isEmpty()) {
      attribute(name, value);
    }
  }

  private void attribute(String name, String value) throws XMLStreamException {
    out.writeAttribute(name, clean(value));
  }

  /**
   * What XML 1.0 allows (section 2.2), on one line: whatever it can't hold becomes U+FFFD, so that
   * no value ends a message or begins another.
   */
  static String clean(String value) {
    StringBuilder clean = new StringBuilder(value.length());
    value
        .codePoints()
        .map(c -> c == '\t' || c == '\n' || c == '\r' || c == 0x85 || c == 0x2028 ? ' ' : c)
        .map(c -> isAllowed(c) ? c : 0xFFFD)
        .forEach(clean::appendCodePoint);
    return clean.toString();
  }

  private static boolean isAllowed(int c) {
    return (c >= 0x20 && c < 0x7F)
        || (c > 0x9F && c <= 0xD7FF)
        || (c >= 0xE000 && c <= 0xFFFD)
        || c > 0xFFFF;
  }
}
