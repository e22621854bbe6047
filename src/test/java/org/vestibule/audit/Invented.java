package org.vestibule.audit;

import java.io.ByteArrayInputStream;
import java.io.StringReader;
import java.nio.charset.StandardCharsets;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.List;
import javax.xml.XMLConstants;
import javax.xml.parsers.DocumentBuilderFactory;
import javax.xml.transform.stream.StreamSource;
import javax.xml.validation.SchemaFactory;
import org.w3c.dom.Document;

/** Invented events, and the JDK's own reading of what is written of them. */
final class Invented {

  static final Clock CLOCK = Clock.fixed(Instant.parse("2026-03-14T06:00:00.123Z"), ZoneOffset.UTC);

  static final AuditPeer PROGRAM = new AuditPeer("vestibule", "4711", "", "desk.example");
  static final AuditPeer ADA = AuditPeer.person("Ada Example", "ada", "desk.example");
  static final AuditPeer ARCHIVE = AuditPeer.application("ARCHIVE", "192.0.2.7");
  static final AuditPeer FOLDER = new AuditPeer("inbox", "", "", "");
  static final AuditEvents EVENTS = new AuditEvents(PROGRAM, CLOCK);

  static final AuditedStudy STUDY =
      new AuditedStudy(
          "2.25.1",
          "P1",
          "Tallgrass^Orla",
          "ACC-7",
          List.of(
              new AuditedStudy.SopClass(
                  "1.2.840.10008.5.1.4.1.1.77.1.4", List.of("2.25.11", "2.25.12"))),
          false);

  private Invented() {}

  /** Validated by the schema and parsed; whatever breaks either is thrown. */
  static Document read(String xml) throws Exception {
    SchemaFactory.newInstance(XMLConstants.W3C_XML_SCHEMA_NS_URI)
        .newSchema(Invented.class.getResource("audit-message.xsd"))
        .newValidator()
        .validate(new StreamSource(new StringReader(xml)));
    return DocumentBuilderFactory.newInstance()
        .newDocumentBuilder()
        .parse(new ByteArrayInputStream(xml.getBytes(StandardCharsets.UTF_8)));
  }
}
