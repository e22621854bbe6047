package org.vestibule.audit;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.vestibule.base.ResourceTable;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;

/**
 * Each message against the table of PS3.15 A.5.3 for its event: actions, types, who takes part in
 * which role and how often, and what it is about. The tables were read a second time for this.
 */
class MessageTablesTest {

  private static final AuditSource SOURCE = new AuditSource("vestibule", "Old Mill");

  /** How often something may be there: "code:least:most" and what more must hold. */
  private record Share(String what, int least, int most, String more) {
    static List<Share> read(String cell) {
      List<Share> shares = new ArrayList<>();
      for (String word : words(cell)) {
        String[] parts = word.split(":", 4);
        if (parts.length > 1) {
          shares.add(
              new Share(
                  parts[0],
                  Integer.parseInt(parts[1]),
                  Integer.parseInt(parts[2]),
                  parts.length > 3 ? parts[3] : ""));
        }
      }
      return shares;
    }
  }

  private static List<String> words(String cell) {
    return cell.isEmpty() ? List.of() : List.of(cell.split(" "));
  }

  private static List<String[]> table() {
    return ResourceTable.lines(MessageTablesTest.class, "message-tables.csv").stream()
        .map(line -> line.split(",", 5))
        .toList();
  }

  static Stream<AuditEvent> events() {
    return AuditMessageTest.messages().map(arguments -> (AuditEvent) arguments.get()[0]);
  }

  @Test
  void everyEventOfTheTablesIsMadeHere() {
    Set<String> made = new TreeSet<>();
    events().forEach(event -> made.add(event.id().value()));
    assertThat(table()).extracting(row -> row[0]).containsExactlyInAnyOrderElementsOf(made);
  }

  @ParameterizedTest
  @MethodSource("events")
  void eachMessageHoldsWhatItsTableAsksFor(AuditEvent event) throws Exception {
    Document message = Invented.read(AuditXml.write(event, SOURCE));
    String code = all(message, "EventID").get(0).getAttribute("csd-code");
    String[] row = table().stream().filter(one -> one[0].equals(code)).findFirst().orElseThrow();
    assertThat(words(row[1]))
        .contains(all(message, "EventIdentification").get(0).getAttribute("EventActionCode"));
    List<String> types =
        all(message, "EventTypeCode").stream().map(e -> e.getAttribute("csd-code")).toList();
    assertThat(types.isEmpty()).isEqualTo(row[2].isEmpty());
    assertThat(words(row[2])).containsAll(types);
    participants(all(message, "ActiveParticipant"), row[3]);
    objects(all(message, "ParticipantObjectIdentification"), row[4]);
  }

  private static void participants(List<Element> found, String cell) {
    assertThat(found).isNotEmpty();
    List<Share> shares = Share.read(cell);
    Set<String> roles = new TreeSet<>();
    for (Share share : shares) {
      roles.add(share.what());
      List<Element> those = found.stream().filter(who -> has(who, share.what())).toList();
      assertThat(those.size()).as("role " + share.what()).isBetween(share.least(), share.most());
      if (!share.more().isEmpty()) {
        assertThat(those).allMatch(who -> who.getAttribute("UserIsRequestor").equals(share.more()));
      }
    }
    if (!words(cell).contains("any")) {
      assertThat(found)
          .as("each in a role")
          .allMatch(who -> roles.stream().anyMatch(r -> has(who, r)));
    }
    assertThat(found.stream().filter(who -> who.getAttribute("UserIsRequestor").equals("true")))
        .as("a single one asks (A.5.3.4.1, A.5.3.5)")
        .hasSize(1);
    // Media are named by what they are (A.5.3.4, A.5.3.5)
    assertThat(found)
        .allMatch(
            who ->
                (has(who, "110154") || has(who, "110155"))
                    == (who.getElementsByTagName("MediaType").getLength() == 1));
  }

  private static boolean has(Element who, String role) {
    NodeList codes = who.getElementsByTagName("RoleIDCode");
    for (int i = 0; i < codes.getLength(); i++) {
      if (((Element) codes.item(i)).getAttribute("csd-code").equals(role)) {
        return true;
      }
    }
    return false;
  }

  private static void objects(List<Element> found, String cell) {
    List<String> kinds = found.stream().map(MessageTablesTest::kind).toList();
    List<Share> shares = Share.read(cell);
    assertThat(shares).extracting(Share::what).containsAll(kinds);
    for (Share share : shares) {
      List<Element> those =
          found.stream().filter(object -> kind(object).equals(share.what())).toList();
      assertThat(those.size()).as(share.what()).isBetween(share.least(), share.most());
      for (Element object : those) {
        assertThat(object.getAttribute("ParticipantObjectID")).isNotEmpty();
        String detail = share.more().replace('_', ' ');
        if (!detail.isEmpty()) {
          assertThat(details(object)).contains(detail);
        }
      }
    }
  }

  private static List<String> details(Element object) {
    NodeList details = object.getElementsByTagName("ParticipantObjectDetail");
    List<String> types = new ArrayList<>();
    for (int i = 0; i < details.getLength(); i++) {
      types.add(((Element) details.item(i)).getAttribute("type"));
    }
    return types;
  }

  /** Type, role and kind of identifier, such as "2/3/110180" for a study. */
  private static String kind(Element object) {
    Element id = (Element) object.getElementsByTagName("ParticipantObjectIDTypeCode").item(0);
    return object.getAttribute("ParticipantObjectTypeCode")
        + "/"
        + object.getAttribute("ParticipantObjectTypeCodeRole")
        + "/"
        + id.getAttribute("csd-code");
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
