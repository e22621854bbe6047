package org.vestibule.forward;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.vestibule.base.Outcome.Refused;
import org.vestibule.forward.DestinationRules.Confirm;
import org.vestibule.keys.TlsFiles;
import org.vestibule.store.ledger.DeliveryRow;
import org.vestibule.store.ledger.DeliveryState;

/** An archive that says for how long it wants to be left alone (RFC 9110 10.2.3). */
class RetryAfterTest {

  private static final int OBJECTS = 5;

  @TempDir private Path folder;
  private final MovingClock clock = new MovingClock();
  private FiledObjects filed;
  private WebPeer peer;

  @BeforeEach
  void start() throws IOException {
    peer = new WebPeer();
    filed = new FiledObjects(folder, clock);
    for (int i = 0; i < OBJECTS; i++) {
      filed.file("p" + i + ".jpg", "P1");
    }
  }

  @AfterEach
  void stop() {
    filed.close();
    peer.close();
  }

  private String deliver() throws IOException {
    DestinationRules rules =
        new DestinationRules(
            "web",
            true,
            new DestinationRules.Web(peer.service(), TlsFiles.NONE, Optional.empty()),
            Confirm.QUERY,
            Duration.ofMinutes(10),
            Duration.ofSeconds(20));
    Destination to =
        new Destination(
            rules,
            CourierTest.rules(4),
            WebArchive.of(rules, clock).orThrow(),
            filed.ledger,
            filed.objects,
            filed::note,
            "courier");
    return Courier.deliver(to, clock, new Random(1), clock.instant().plus(Duration.ofHours(1)))
        .map(Refused::sentence)
        .orElse("");
  }

  private String later(Duration pause) throws IOException {
    clock.move(pause);
    return deliver();
  }

  private int calls() {
    return peer.options.get() + peer.asked.size();
  }

  private void answers(int status) {
    peer.script = (exchange, any) -> WebPeer.answer(exchange, status, "text/plain", "");
  }

  private List<DeliveryRow> rows() {
    return java.util.stream.IntStream.range(0, OBJECTS)
        .mapToObj(i -> filed.ledger.deliveries().of(FiledObjects.hash("p" + i + ".jpg")).get(0))
        .toList();
  }

  /** 503 of RFC 9110 15.6.4, 429 of RFC 6585 section 4; in seconds and as a date. */
  @ParameterizedTest
  @CsvSource({
    "503, 1800",
    "429, 1800",
    "503, 'Sat, 14 Mar 2026 02:30:00 GMT'",
    "429, 'Saturday, 14-Mar-26 02:30:00 GMT'"
  })
  void untilThenNothingIsAskedOfIt(int status, String retryAfter) throws IOException {
    answers(status);
    peer.retryAfter = retryAfter;
    assertThat(deliver())
        .endsWith(
            ": it is left alone for 30 minutes, as it asked; the first run after that tries again");
    assertThat(peer.asked).as("one object was enough").hasSize(1);
    assertThat(rows())
        .allMatch(row -> !row.dueAt().isBefore(Instant.parse("2026-03-14T02:30:00Z")))
        .allMatch(row -> row.attempts() == 0)
        .filteredOn(DeliveryRow::perhapsThere)
        .as("a failing archive may have kept it (15.6), one that counts our requests has not")
        .hasSize(status == 503 ? 1 : 0);
    answers(200);
    peer.retryAfter = "";
    int before = calls();
    assertThat(later(Duration.ofMinutes(29))).isEmpty();
    assertThat(calls()).as("too early").isEqualTo(before);
    later(Duration.ofMinutes(5));
    assertThat(peer.asked).hasSizeGreaterThan(OBJECTS);
    assertThat(rows()).allMatch(row -> row.state() == DeliveryState.SENT);
  }

  /** Already when it is asked whether it is there. */
  @Test
  void anArchiveThatIsNotOpenYetIsLeftAloneToo() throws IOException {
    peer.optionsStatus = 503;
    peer.retryAfter = "61";
    assertThat(deliver())
        .isEqualTo(
            "the archive is not available now (HTTP status 503): it is left alone for 2 minutes,"
                + " as it asked; the first run after that tries again");
    assertThat(calls()).isEqualTo(1);
    assertThat(later(Duration.ofSeconds(60))).isEmpty();
    assertThat(calls()).isEqualTo(1);
    peer.optionsStatus = 204;
    later(Duration.ofSeconds(2));
    assertThat(peer.asked).isNotEmpty();
  }

  /** In the midst of being asked what it keeps: the other questions wait as well. */
  @Test
  void aSearchMayBePutOffToo() throws IOException {
    peer.script =
        (exchange, any) ->
            WebPeer.answer(
                exchange, any.method().equals("GET") ? 429 : 200, "application/dicom+json", "");
    peer.retryAfter = "1800";
    deliver();
    assertThat(peer.asked.stream().filter(any -> any.method().equals("GET"))).hasSize(1);
    assertThat(rows())
        .allMatch(row -> row.state() == DeliveryState.SENT && row.asks() == 0)
        .allMatch(row -> !row.dueAt().isBefore(Instant.parse("2026-03-14T02:30:00Z")));
  }

  /** Ten days are longer than the longest pause of the settings, six hours. */
  @Test
  void noArchiveIsLeftAloneForLongerThanTheLongestPause() throws IOException {
    answers(503);
    peer.retryAfter = "864000";
    assertThat(deliver()).contains("it is left alone for 360 minutes");
    assertThat(rows())
        .allMatch(row -> row.dueAt().equals(clock.instant().plus(Duration.ofHours(6))));
  }

  /** A success, a date that is over, and what nobody can read put nothing off. */
  @ParameterizedTest
  @CsvSource({
    "200, 1800",
    "500, 1800",
    "503, 0",
    "503, -5",
    "503, soon",
    "503, 'Sat, 14 Mar 2026 01:59:59 GMT'"
  })
  void whatSaysNothingPutsNothingOff(int status, String retryAfter) throws IOException {
    answers(status);
    peer.retryAfter = retryAfter;
    assertThat(deliver()).doesNotContain("left alone");
    assertThat(rows())
        .anyMatch(row -> row.dueAt().isBefore(clock.instant().plus(Duration.ofMinutes(25))));
  }

  /** The three forms of one moment are the examples of RFC 9110 5.6.7. */
  @ParameterizedTest
  @ValueSource(
      strings = {
        "Sun, 06 Nov 1994 08:49:37 GMT", "Sunday, 06-Nov-94 08:49:37 GMT",
        "Sun Nov  6 08:49:37 1994", " Sun, 06 Nov 1994 08:49:37 GMT "
      })
  void eachFormOfADateIsRead(String text) {
    assertThat(RetryAfter.read(text, Instant.parse("1994-11-06T08:00:00Z")))
        .contains(Instant.parse("1994-11-06T08:49:37Z"));
  }

  /** 120 seconds is the example of RFC 9110 10.2.3. */
  @Test
  void secondsAreReadHoweverManyDigitsTheyHave() {
    Instant now = Instant.parse("2026-03-14T02:00:00Z");
    assertThat(RetryAfter.read("120", now)).contains(now.plusSeconds(120));
    assertThat(RetryAfter.read("000000000000120", now)).contains(now.plusSeconds(120));
    assertThat(RetryAfter.read("9".repeat(100), now)).contains(now.plusSeconds(1_000_000_000));
    for (String none :
        List.of("", " ", "1.5", "+5", "-5", "\u0661", "12 s", "Sun", "06 Nov 1994")) {
      assertThat(RetryAfter.read(none, now)).as(none).isEmpty();
    }
  }
}
