package org.vestibule.audit;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Base64;
import java.util.List;
import java.util.Random;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;

/** Each message against the structure of PS3.15 A.5.1, by the JDK's validator. */
class AuditMessageTest {

  private static final AuditSource SOURCE = new AuditSource("vestibule", "Old Mill");

  /** Codes and actions of PS3.15 A.5.3 (codes: PS3.16 CIDs 400 and 401). */
  static Stream<Arguments> messages() {
    AuditEvents make = Invented.EVENTS;
    return Stream.of(
        Arguments.of(make.application(true, Invented.ADA), "110100", "110120", "E", false),
        Arguments.of(make.application(false, Invented.ADA), "110100", "110121", "E", false),
        Arguments.of(
            make.imported(Invented.ADA, Invented.FOLDER, Invented.STUDY), "110107", "", "C", true),
        Arguments.of(
            make.exported(Invented.ADA, Invented.FOLDER, Invented.STUDY), "110106", "", "R", true),
        Arguments.of(make.accessed(Invented.ADA, 'R', Invented.STUDY), "110103", "", "R", true),
        Arguments.of(make.accessed(Invented.ADA, 'D', Invented.STUDY), "110103", "", "D", true),
        Arguments.of(
            make.beginsTransfer(Invented.ARCHIVE, Invented.STUDY), "110102", "", "E", true),
        Arguments.of(
            make.transferred(Invented.ARCHIVE, Invented.STUDY, AuditOutcome.SUCCESS, ""),
            "110104",
            "",
            "C",
            true),
        Arguments.of(
            make.transferred(
                Invented.ARCHIVE, Invented.STUDY, AuditOutcome.MINOR_FAILURE, "0xA700: full"),
            "110104",
            "",
            "C",
            true),
        Arguments.of(make.asked(Invented.ADA, "frontal of Orla"), "110112", "", "E", false),
        Arguments.of(
            make.queried(
                Invented.ADA,
                Invented.ARCHIVE,
                "1.2.840.10008.5.1.4.31",
                new byte[] {1, 2, 3},
                "1.2.840.10008.1.2",
                AuditOutcome.SUCCESS,
                ""),
            "110112",
            "",
            "E",
            false),
        Arguments.of(
            make.login(Invented.ADA, true, AuditOutcome.SERIOUS_FAILURE, "wrong password"),
            "110114",
            "110122",
            "E",
            false),
        Arguments.of(
            make.login(Invented.ADA, false, AuditOutcome.SUCCESS, ""),
            "110114",
            "110123",
            "E",
            false),
        Arguments.of(
            make.alert(Invented.ADA, "node-authentication", "archive.example", "not trusted"),
            "110113",
            "110126",
            "E",
            false));
  }

  @ParameterizedTest
  @MethodSource("messages")
  void eachMessageHasTheStandardsStructure(
      AuditEvent event, String id, String type, String action, boolean ofAPatient)
      throws Exception {
    String xml = AuditXml.write(event, SOURCE);
    Document message = Invented.read(xml);
    assertThat(xml).doesNotContain("\n").startsWith("<?xml version=\"1.0\" encoding=\"UTF-8\"?>");
    Element identification = only(message, "EventIdentification");
    assertThat(only(message, "EventID").getAttribute("csd-code")).isEqualTo(id);
    assertThat(identification.getAttribute("EventActionCode")).isEqualTo(action);
    assertThat(identification.getAttribute("EventDateTime")).isEqualTo("2026-03-14T06:00:00.123Z");
    assertThat(all(message, "EventTypeCode").stream().map(e -> e.getAttribute("csd-code")))
        .isEqualTo(type.isEmpty() ? List.of() : List.of(type));
    assertThat(
            all(message, "ActiveParticipant").stream()
                .filter(e -> e.getAttribute("UserIsRequestor").equals("true")))
        .hasSize(1);
    assertThat(xml.contains("Tallgrass")).as("patient data only of a study").isEqualTo(ofAPatient);
  }

  @Test
  void aPatientStandsAsPersonWithNumberAndName() throws Exception {
    Document message =
        Invented.read(
            AuditXml.write(Invented.EVENTS.accessed(Invented.ADA, 'R', Invented.STUDY), SOURCE));
    List<Element> objects = all(message, "ParticipantObjectIdentification");
    assertThat(objects)
        .extracting(
            e -> e.getAttribute("ParticipantObjectID"),
            e -> e.getAttribute("ParticipantObjectTypeCode"),
            e -> e.getAttribute("ParticipantObjectTypeCodeRole"),
            e -> child(e, "ParticipantObjectIDTypeCode").getAttribute("csd-code"),
            e -> child(e, "ParticipantObjectName").getTextContent())
        .containsExactly(
            org.assertj.core.groups.Tuple.tuple("2.25.1", "2", "3", "110180", "2.25.1"),
            org.assertj.core.groups.Tuple.tuple("P1", "1", "1", "2", "Tallgrass^Orla"));
    Element sopClass = only(message, "SOPClass");
    assertThat(sopClass.getAttribute("NumberOfInstances")).isEqualTo("2");
    assertThat(only(message, "Accession").getAttribute("Number")).isEqualTo("ACC-7");
  }

  @Test
  void aQuestionIsWrittenAsTheStandardHidesIt() throws Exception {
    String question = "frontal of \u00DCrs\u00FCla <\"&'>";
    Document message =
        Invented.read(AuditXml.write(Invented.EVENTS.asked(Invented.ADA, question), SOURCE));
    byte[] said =
        Base64.getDecoder().decode(only(message, "ParticipantObjectQuery").getTextContent());
    assertThat(new String(said, StandardCharsets.UTF_8)).isEqualTo(question);
  }

  /** Names that would end a line, an attribute or a message, and what XML 1.0 can't hold. */
  @Test
  void noNameEndsAMessageOrBeginsAnother() throws Exception {
    Random random = new Random(20261125);
    String nasty = "\"'<>&\n\r\t\0\u0007\uFFFE\u0085\u2028]]>--\uD800x\uDC00";
    for (int round = 0; round < 500; round++) {
      StringBuilder name = new StringBuilder("n");
      for (int i = 0; i < 20; i++) {
        name.append(
            random.nextBoolean()
                ? nasty.charAt(random.nextInt(nasty.length()))
                : (char) random.nextInt(0x10000));
      }
      AuditedStudy study =
          new AuditedStudy("2.25.1", name.toString(), name.toString(), "", List.of(), false);
      AuditPeer peer = AuditPeer.person(name.toString(), name.toString(), "");
      String xml = AuditXml.write(Invented.EVENTS.accessed(peer, 'R', study), SOURCE);
      assertThat(xml.lines().count()).as("seed 20261125, round " + round).isEqualTo(1);
      Document message = Invented.read(xml);
      assertThat(all(message, "AuditMessage")).hasSize(1);
      assertThat(only(message, "SOPClass", 0)).isEmpty();
      assertThat(
              all(message, "ParticipantObjectIdentification")
                  .get(1)
                  .getAttribute("ParticipantObjectID"))
          .isEqualTo(AuditXml.clean(name.toString()));
    }
  }

  @Test
  void manyInstancesAreCountedAndNotNamed() throws Exception {
    List<String> uids = new ArrayList<>();
    for (int i = 0; i < 5000; i++) {
      uids.add("2.25." + i);
    }
    AuditedStudy study =
        new AuditedStudy(
            "2.25.1", "P1", "A^B", "", List.of(new AuditedStudy.SopClass("1.2", uids)), true);
    String xml =
        AuditXml.write(Invented.EVENTS.exported(Invented.ADA, Invented.FOLDER, study), SOURCE);
    Document message = Invented.read(xml);
    assertThat(only(message, "SOPClass").getAttribute("NumberOfInstances")).isEqualTo("5000");
    assertThat(all(message, "Instance")).isEmpty();
    assertThat(only(message, "Anonymized").getTextContent()).isEqualTo("true");
  }

  private static List<Element> only(Document message, String name, int howMany) {
    List<Element> found = all(message, name);
    assertThat(found).hasSize(howMany);
    return found;
  }

  private static Element only(Document message, String name) {
    return only(message, name, 1).get(0);
  }

  private static Element child(Element of, String name) {
    return (Element) of.getElementsByTagName(name).item(0);
  }

  private static List<Element> all(Document message, String name) {
    NodeList found = message.getElementsByTagName(name);
    List<Element> elements = new ArrayList<>();
    for (int i = 0; i < found.getLength(); i++) {
      elements.add((Element) found.item(i));
    }
    return elements;
  }
}
