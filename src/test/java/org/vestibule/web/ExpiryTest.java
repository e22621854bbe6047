package org.vestibule.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.net.http.HttpResponse;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Map;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.vestibule.forward.MovingClock;
import org.vestibule.store.ledger.PhoneLinkRow;

/** What was opened for a time is closed after it, for whoever still holds the secret. */
class ExpiryTest {

  @TempDir private Path home;
  private final MovingClock clock = new MovingClock(SampleSite.CLOCK.instant());
  private SampleSite site;
  private Server server;

  @BeforeEach
  void start() throws Exception {
    site = SampleSite.own(home, clock);
    site.visitsOfToday();
    server = site.serve(SampleSite.REACHED);
  }

  @AfterEach
  void stop() throws Exception {
    server.close();
    site.practice().close();
    assertThat(site.defects()).isEmpty();
  }

  private Caller let(String path, String secret) throws Exception {
    HttpResponse<byte[]> in =
        new Caller(server, site.secret()).post(path, Map.of("secret", secret));
    assertThat(in.statusCode()).isEqualTo(303);
    return new Caller(
        server,
        in.headers().firstValue("Set-Cookie").orElseThrow().replaceFirst(".*?=([^;]+).*", "$1"));
  }

  private void assertRefusedAsAGuess(String path, String secret) throws Exception {
    Caller stranger = new Caller(server, site.secret());
    HttpResponse<byte[]> late = stranger.post(path, Map.of("secret", secret));
    HttpResponse<byte[]> guess = stranger.post(path, Map.of("secret", site.secret()));
    assertThat(late.statusCode()).isEqualTo(403);
    assertThat(Caller.text(late)).isEqualTo(Caller.text(guess));
  }

  /** Opened at 07:00 of the practice's day, which ends 17 hours later (Europe/Vienna, UTC+1). */
  @Test
  void aPhonesPageEndsWithItsDay() throws Exception {
    String secret = site.secret();
    PhoneLinkRow page = site.phonesPage(SampleSite.TODAY_ONE, secret);
    clock.move(Duration.ofHours(17).minusMinutes(1));
    Caller phone = let("/phone", secret);
    assertThat(phone.get("/phone/visit").statusCode()).isEqualTo(200);
    clock.move(Duration.ofMinutes(1));
    assertThat(phone.get("/phone/visit").statusCode()).isEqualTo(401);
    assertRefusedAsAGuess("/phone", secret);
    Caller outlived = new Caller(server, site.phone(page));
    HttpResponse<byte[]> begun =
        outlived.post("/phone/files", Map.of("name", "a.jpg", "size", "10", "view", ""));
    assertThat(begun.statusCode()).isEqualTo(410);
    assertThat(outlived.get("/phone/files").statusCode()).isEqualTo(410);
    assertThat(Caller.text(outlived.get("/phone/visit"))).contains("This page has ended");
  }

  @Test
  void aSharedLinkEndsAfterItsDays() throws Exception {
    String secret = site.secret();
    ShareLinks.Made made = site.share("own-copy", false, secret);
    String picture = "/shared/pictures/" + made.share().photos().get(0).name();
    Duration lasts = Duration.between(clock.instant(), made.share().endsAt());
    // The words that were shown when it was made: 14 days.
    assertThat(lasts.toDays()).isBetween(13L, 14L);
    clock.move(lasts.minusMinutes(1));
    Caller referrer = let("/shared", secret);
    assertThat(referrer.get("/shared/photographs").statusCode()).isEqualTo(200);
    assertThat(referrer.get(picture).statusCode()).isEqualTo(200);
    clock.move(Duration.ofMinutes(1));
    assertThat(referrer.get("/shared/photographs").statusCode()).isIn(401, 410);
    assertThat(referrer.get(picture).statusCode()).isIn(401, 410);
    assertRefusedAsAGuess("/shared", secret);
    Caller outlived = new Caller(server, site.referrer(made.share()));
    assertThat(outlived.get("/shared/photographs").statusCode()).isEqualTo(410);
    assertThat(outlived.get(picture).statusCode()).isEqualTo(410);
    assertThat(outlived.get(picture + "/small").statusCode()).isEqualTo(410);
  }
}
