package org.vestibule.flow;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.StringReader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import javax.xml.XMLConstants;
import javax.xml.transform.stream.StreamSource;
import javax.xml.validation.SchemaFactory;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.vestibule.audit.AuditRules;
import org.vestibule.samples.Scene;
import org.vestibule.search.QuestionOptions;

/** What the use cases tell the audit repository. */
class AuditingTest {

  private static final String CLASS = "1.2.840.10008.5.1.4.1.1.77.1.4";

  @TempDir private Path folder;

  private TestHome home;
  private String first;

  @BeforeEach
  void layOut() throws IOException {
    home = TestHome.in(folder);
    first = home.put("a.jpg", Scene.FRONTAL, 1);
    home.put("b.jpg", Scene.FRONTAL, 2);
    home.put("c.jpg", Scene.FRONTAL, 125);
    home.manifest(
        """
        file,visit,view,teeth,mirror,incisors,crop
        a.jpg,V1,frontal,11,none,,
        b.jpg,V1,frontal,,none,,
        c.jpg,V2,frontal,,none,,
        """);
  }

  @Test
  void anIngestIsAnImportForEachStudy() throws Exception {
    try (Practice practice = open(true)) {
      home.ingest(practice);
    }
    assertThat(told())
        .containsExactly(
            "110107 C nightly job; P1 Tallgrass^Orla; 2",
            "110107 C nightly job; P2" + " Brightwater^Ned; 1");
  }

  @Test
  void correctionsQuestionsAndLooksAreTold() throws Exception {
    try (Practice practice = open(true)) {
      home.ingest(practice);
    }
    Files.delete(log());
    try (Practice practice = open(true)) {
      Find.ask(practice, "frontal", QuestionOptions.NONE, 10, "Bo Sample").orThrow();
      practice.audit().looked(TestHome.hash(practice, first), "Bo Sample");
      new Corrections(practice)
          .move(first, ByPerson.says("Ada", "visit", "V2"), Why.of("wrong patient"))
          .orThrow();
      new Corrections(practice).reject(first, "Ada", Why.of("not ours")).orThrow();
    }
    assertThat(told())
        .containsExactly(
            "110112 E Bo Sample; ; -",
            "110103 R Bo Sample; P1 Tallgrass^Orla; 1",
            "110103 U Ada; P1 Tallgrass^Orla; 1",
            "110103 C Ada; P2 Brightwater^Ned; 1",
            "110103 D Ada; P2 Brightwater^Ned; 1");
  }

  @Test
  void withAuditOffNothingIsWritten() throws IOException {
    try (Practice practice = open(false)) {
      home.ingest(practice);
      Find.ask(practice, "frontal", QuestionOptions.NONE, 10).orThrow();
    }
    assertThat(folder.resolve("audit")).doesNotExist();
  }

  private Practice open(boolean on) throws IOException {
    Settings old = Settings.defaults(folder, TestHome.ZONE);
    Settings settings =
        SettingsWith.audit(old, new AuditRules(on, "vestibule", "", Optional.empty()));
    return Practice.open(folder, settings, TestHome.CLOCK, true).orThrow();
  }

  private Path log() {
    return folder.resolve("audit").resolve("2026-03.log");
  }

  /** Event, action, who asked for it, the patient, how many objects; each one valid. */
  private List<String> told() throws Exception {
    List<String> told = new ArrayList<>();
    for (String line : Files.readAllLines(log())) {
      String xml = line.substring(line.indexOf('<'));
      SchemaFactory.newInstance(XMLConstants.W3C_XML_SCHEMA_NS_URI)
          .newSchema(AuditingTest.class.getResource("/org/vestibule/audit/audit-message.xsd"))
          .newValidator()
          .validate(new StreamSource(new StringReader(xml)));
      told.add(
          part(xml, "<EventID csd-code=\"(\\d+)\"")
              + " "
              + part(xml, "EventActionCode=\"(.)\"")
              + " "
              + part(xml, "UserID=\"([^\"]*)\"[^>]*UserIsRequestor=\"true\"")
              + "; "
              + (part(xml, "ParticipantObjectID=\"([^\"]*)\" ParticipantObjectTypeCode=\"1\"")
                      + " "
                      + part(xml, ".*<ParticipantObjectName>([^<]*)<.*$"))
                  .replaceAll("^- -$", "")
              + "; "
              + part(xml, "SOPClass UID=\"" + CLASS + "\" NumberOfInstances=\"(\\d+)\""));
    }
    return told;
  }

  private static String part(String xml, String pattern) {
    Matcher matcher = Pattern.compile(pattern).matcher(xml);
    return matcher.find() ? matcher.group(1) : "-";
  }
}
