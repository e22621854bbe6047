package org.vestibule.forward;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import org.vestibule.ExternalTool;
import org.vestibule.forward.DestinationRules.Confirm;
import org.vestibule.forward.StoreAnswer.Accepted;
import org.vestibule.forward.StoreAnswer.Failed;
import org.vestibule.forward.StoreAnswer.Reach;
import org.vestibule.forward.StoreAnswer.Refused;
import org.vestibule.keys.TlsFiles;

/**
 * What an archive says about each object of a store (PS3.18 10.5.3 and I.2), written by DCMTK in
 * both of its forms: the Native DICOM Model of PS3.19 A.1 and the DICOM JSON Model of PS3.18 F.
 * Both must mean the same.
 */
class StoreAnswerFormsTest {

  private static final String UID = "2.25.1234";
  private static final String OTHER = "2.25.777";

  @TempDir private Path folder;

  private static String item(String uid, String more) {
    return String.format(
        Locale.ROOT,
        """
        (fffe,e000) -
        (0008,1150) UI [1.2.840.10008.5.1.4.1.1.77.1.4]
        (0008,1155) UI [%s]
        %s
        (fffe,e00d) -
        """,
        uid,
        more);
  }

  private static String sequence(String tag, String... items) {
    return "(" + tag + ") SQ\n" + String.join("", items) + "(fffe,e0dd) -\n";
  }

  private static String failure(String uid, int reason) {
    return item(uid, "(0008,1197) US " + reason);
  }

  private static String stored(String uid) {
    return item(uid, "");
  }

  private static final String CHANGED =
      """
      (0008,1196) US 45056
      (0400,0561) SQ
      (fffe,e000) -
      (0400,0550) SQ
      (fffe,e000) -
      (0010,0010) PN [Tallgrass^Orla]
      (0010,0020) LO [P1]
      (fffe,e00d) -
      (fffe,e0dd) -
      (fffe,e00d) -
      (fffe,e0dd) -""";

  /** Status and what it says of several objects; ours is {@link #UID}. */
  static Stream<Arguments> answers() {
    Refused mismatch =
        new Refused(
            0xA900, "the archive says that the object does not match its class (status A900)");
    Failed full =
        new Failed(
            0xA700,
            "the archive is out of resources (often its disk is full) (status A700)",
            Reach.DESTINATION);
    Failed later =
        new Failed(
            0x0110, "the archive failed while it was storing it (status 0110)", Reach.OBJECT, true);
    Accepted taken = new Accepted(0, "", Map.of());
    String othersFailed = sequence("0008,1198", failure(OTHER, 0xC000));
    return Stream.of(
            Arguments.of(200, sequence("0008,1199", stored(OTHER), stored(UID)), taken),
            Arguments.of(202, othersFailed + sequence("0008,1199", stored(UID)), taken),
            Arguments.of(
                202,
                sequence("0008,1198", failure(OTHER, 0xC000), failure(UID, 0xA700))
                    + sequence("0008,1199", stored("2.25.778")),
                full),
            Arguments.of(202, sequence("0008,1198", failure(UID, 0x0110)), later),
            Arguments.of(
                409, sequence("0008,1198", failure(OTHER, 0xA700), failure(UID, 0xA900)), mismatch),
            Arguments.of(409, sequence("0008,1198", failure(UID, 0xA700)), full),
            Arguments.of(409, sequence("0008,1198", stored(UID)), later),
            Arguments.of(
                202,
                sequence("0008,1199", item(UID, CHANGED)),
                new Accepted(
                    0xB000,
                    "stored; the archive changed attributes (status B000); it changed PatientID,"
                        + " PatientName",
                    Map.of())),
            Arguments.of(
                200,
                othersFailed,
                new Failed(-1, "the archive answered about another object", Reach.OBJECT, true)))
        .flatMap(
            one ->
                Stream.of("xml", "json")
                    .map(form -> Arguments.of(form, one.get()[0], one.get()[1], one.get()[2])));
  }

  @ParameterizedTest
  @MethodSource("answers")
  void bothFormsMeanTheSame(String form, int status, String dump, StoreAnswer expected)
      throws Exception {
    byte[] body = written(form, dump);
    try (WebPeer peer = new WebPeer()) {
      peer.script =
          (exchange, any) ->
              WebPeer.answer(
                  exchange,
                  status,
                  "application/dicom+" + form,
                  new String(body, StandardCharsets.UTF_8));
      assertThat(session(peer).store(parcel())).isEqualTo(expected);
    }
  }

  private byte[] written(String form, String dump) throws Exception {
    Path text = Files.writeString(folder.resolve("answer.dump"), dump);
    Path object = folder.resolve("answer.dcm");
    ExternalTool.Result made =
        ExternalTool.require("dump2dcm", "dcmtk").run("-F", text.toString(), object.toString());
    assertThat(made.exitCode()).as(made.errors()).isZero();
    ExternalTool.Result said =
        form.equals("xml")
            ? ExternalTool.require("dcm2xml", "dcmtk")
                .run("-f", "--native-format", object.toString())
            : ExternalTool.require("dcm2json", "dcmtk").run("-f", object.toString());
    assertThat(said.exitCode()).as(said.errors()).isZero();
    return said.output();
  }

  private static ArchiveSession session(WebPeer peer) throws IOException {
    DestinationRules rules =
        new DestinationRules(
            "web",
            true,
            new DestinationRules.Web(peer.service(), TlsFiles.NONE, Optional.empty()),
            Confirm.QUERY,
            Duration.ofMinutes(1),
            Duration.ofSeconds(20));
    return WebArchive.of(rules, Clock.systemUTC())
        .orThrow()
        .open(Set.of(), report -> true)
        .orThrow();
  }

  private static Parcel parcel() {
    byte[] file = new byte[2000];
    return new Parcel(
        new Instance(FiledObjects.PHOTO, UID, "2.25.1", "2.25.2"),
        "1.2.840.10008.1.2.4.50",
        Parcel.Kind.PHOTO,
        () -> new ByteArrayInputStream(file),
        file.length,
        300);
  }
}
