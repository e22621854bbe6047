package org.vestibule.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.net.http.HttpResponse;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.SecureRandom;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.vestibule.base.ContentHash;
import org.vestibule.flow.Faces;
import org.vestibule.flow.Releasing;
import org.vestibule.flow.Sharing;
import org.vestibule.store.index.IndexRecord;
import org.vestibule.store.ledger.ConsentRow;
import org.vestibule.store.ledger.ShareRow;

/** What somebody outside can reach by a link: its copies, as long as it is good, nothing else. */
class SharedTest {

  @TempDir private static Path home;
  private static SampleSite site;
  private static Server server;

  @BeforeAll
  static void start() throws Exception {
    site = SampleSite.own(home);
    server = site.serve();
  }

  @AfterAll
  static void stop() throws Exception {
    server.close();
    site.practice().close();
  }

  @AfterEach
  void noDefectWasMet() {
    assertThat(site.defects()).isEmpty();
  }

  private static String secret() {
    return new Secrets(new SecureRandom()).next();
  }

  private static HttpResponse<byte[]> come(String secret, String second) throws Exception {
    return new Caller(server, secret()).post("/shared", Map.of("secret", secret, "second", second));
  }

  private static Caller let(HttpResponse<byte[]> response) {
    assertThat(response.statusCode()).as(Caller.text(response)).isEqualTo(303);
    String cookie = response.headers().firstValue("Set-Cookie").orElseThrow();
    return new Caller(server, cookie.replaceFirst(".*?=([^;]+).*", "$1"));
  }

  private static void consent(boolean given) {
    site.practice()
        .store()
        .ledger()
        .consents()
        .add(
            new ConsentRow(
                "CROOKED-LANTERN",
                "CL-0417",
                "teaching",
                given,
                LocalDate.of(2026, 3, 13),
                null,
                true,
                "form 3",
                "",
                null,
                "A. Finch",
                site.practice().clock().instant()));
  }

  @Test
  void theCopiesAreSeenAndNothingElse() throws Exception {
    String secret = secret();
    ShareRow share = site.share("own-copy", false, secret).share();
    Caller outside = let(come(secret, ""));
    String page = Caller.text(outside.get("/shared/photographs"));
    assertThat(page).contains("Upper occlusal", "upper right first molar", "copy-01");
    assertThat(outside.get("/shared/photographs/copy-01").statusCode()).isEqualTo(200);
    byte[] shown = outside.get("/shared/pictures/copy-01").body();
    assertThat(ContentHash.of(shown).hex()).isEqualTo(share.photos().get(0).fileHash());
    IndexRecord filed = site.filed().get(0);
    for (String closed :
        List.of(
            "/",
            "/shares",
            "/waiting",
            "/ways",
            "/phone/visit",
            "/picture/" + site.key(filed),
            "/photograph/" + site.key(filed))) {
      assertThat(outside.get(closed).statusCode()).as(closed).isEqualTo(403);
    }
    for (String none :
        List.of("copy-99", "copy-1", "..%2Fcopy-01", "index", site.key(filed), filed.hash())) {
      assertThat(outside.get("/shared/pictures/" + none).statusCode()).as(none).isIn(400, 404);
      assertThat(outside.get("/shared/photographs/" + none).statusCode()).as(none).isIn(400, 404);
    }
    assertThat(site.practice().store().ledger().shares().openings(share.number()))
        .extracting(ShareRow.Opening::opened, ShareRow.Opening::client)
        .containsExactly(org.assertj.core.groups.Tuple.tuple(true, "127.0.0.1"));
  }

  @Test
  void whatIsUnknownEndedPastOrTakenBackAnswersAlike() throws Exception {
    String unknown = plain(come(secret(), ""));
    assertThat(unknown).contains("There is nothing to see behind this link, or no longer");
    assertThat(come(secret(), "").statusCode()).isEqualTo(403);
    assertThat(plain(come("x", ""))).isEqualTo(unknown);

    String ended = secret();
    ShareRow share = site.share("own-copy", false, ended).share();
    Caller outside = let(come(ended, ""));
    new Sharing(site.practice()).end(share.number(), "B. Rook", "seen").orThrow();
    assertThat(plain(come(ended, ""))).isEqualTo(unknown);
    assertThat(outside.get("/shared/pictures/copy-01").statusCode()).isEqualTo(401);
    // A session that somehow outlived its link is of no use either.
    Caller late = new Caller(server, site.referrer(share));
    assertThat(late.get("/shared/photographs").statusCode()).isEqualTo(410);
    assertThat(late.get("/shared/pictures/copy-01").statusCode()).isEqualTo(410);

    String withdrawn = secret();
    ShareRow other = site.share("own-copy", true, withdrawn).share();
    Caller before = new Caller(server, site.referrer(other));
    assertThat(before.get("/shared/pictures/copy-01").statusCode()).isEqualTo(200);
    new Releasing(site.practice()).withdraw(other.release(), "B. Rook", "wrong one").orThrow();
    assertThat(plain(come(withdrawn, ""))).isEqualTo(unknown);
    assertThat(before.get("/shared/pictures/copy-01").statusCode()).isEqualTo(410);
  }

  /** A page without what every answer has of its own: the form's proof. */
  private static String plain(HttpResponse<byte[]> response) {
    return Caller.text(response).replaceAll("name=\"form\" value=\"[^\"]*\"", "");
  }

  @Test
  void aConsentThatIsTakenBackEndsWhatItAllowed() throws Exception {
    consent(true);
    String secret = secret();
    ShareRow share = site.share("teaching", false, secret).share();
    Caller outside = let(come(secret, ""));
    String page = Caller.text(outside.get("/shared/photographs"));
    // Without identity: neither name nor number, nor the day, is on any page.
    String large = Caller.text(outside.get("/shared/photographs/copy-01"));
    assertThat(page + large)
        .doesNotContain("Quillfeather", "Odalys", "CL-0417", "V-1201", "2026-03-12", "Mossgrove");
    assertThat(page).contains(share.photos().get(0).who());
    consent(false);
    assertThat(outside.get("/shared/photographs").statusCode()).isEqualTo(410);
    assertThat(come(secret, "").statusCode()).isEqualTo(403);
  }

  @Test
  void aSecondSecretIsAskedAndItsAttemptsAreCounted() throws Exception {
    String secret = secret();
    ShareLinks.Made made = site.share("own-copy", true, secret);
    HttpResponse<byte[]> asked = come(secret, "");
    assertThat(asked.statusCode()).isEqualTo(200);
    assertThat(Caller.text(asked)).contains("The second secret").doesNotContain("copy-01");
    HttpResponse<byte[]> wrong = come(secret, "abcd-efgh-jkmn");
    assertThat(wrong.statusCode()).isEqualTo(403);
    assertThat(Caller.text(wrong)).contains("That is not the second secret.");
    // As people type it.
    let(come(secret, made.second().toUpperCase(java.util.Locale.ROOT).replace("-", " ")));
    for (int attempt = 0; attempt < 5; attempt++) {
      assertThat(come(secret, "wrong " + attempt).statusCode()).isEqualTo(403);
    }
    assertThat(come(secret, made.second()).statusCode()).isEqualTo(429);
    Sharing sharing = new Sharing(site.practice());
    for (int attempt = 0; attempt < 4; attempt++) {
      assertThat(sharing.comes(made.share(), "wrong", "192.0.2.7")).isFalse();
    }
    assertThat(sharing.find(made.share().number())).isPresent();
    assertThat(sharing.comes(made.share(), "wrong", "192.0.2.7")).isFalse();
    assertThat(sharing.find(made.share().number())).isEmpty();
    assertThat(site.practice().store().ledger().shares().find(made.share().number()))
        .hasValueSatisfying(
            row -> assertThat(row.ended().why()).isEqualTo("too many wrong second secrets"));
  }

  @Test
  void aCopyThatWasChangedIsNotShown() throws Exception {
    String secret = secret();
    ShareRow share = site.share("own-copy", false, secret).share();
    Caller outside = let(come(secret, ""));
    Path copy = home.resolve("shares").resolve(share.mark()).resolve("jpeg/copy-01.jpg");
    // An identified original in the copy's place is not shown.
    Files.write(
        copy,
        new Faces(site.practice()).picture(new ContentHash(site.filed().get(0).hash())).orThrow());
    assertThat(outside.get("/shared/pictures/copy-01").statusCode()).isEqualTo(404);
    assertThat(outside.get("/shared/pictures/copy-02").statusCode()).isEqualTo(200);
  }

  @Test
  void aLinkIsMadeOnThePageAndEndedThere() throws Exception {
    IndexRecord photo = site.filed().get(0);
    String id = site.practice().store().ids().of(new ContentHash(photo.hash()));
    Map<String, String> form =
        Map.of(
            "photo", id,
            "purpose", "own-copy",
            "recipient", "the patient",
            "asked-by", "A. Finch",
            "why", "asked",
            "days", "2",
            "second", "yes");
    Caller nowhere = new Caller(server, site.session(Role.STAFF));
    HttpResponse<byte[]> refused = nowhere.post("/share/" + site.key(photo), form);
    assertThat(refused.statusCode()).isEqualTo(409);
    assertThat(Caller.text(refused)).contains("Nobody outside this machine can open the pages");
    try (Server other = site.serve(SampleSite.REACHED)) {
      Caller staff = new Caller(other, site.session(Role.STAFF));
      HttpResponse<byte[]> made = staff.post("/share/" + site.key(photo), form);
      assertThat(made.statusCode()).as(Caller.text(made)).isEqualTo(200);
      assertThat(Caller.text(made))
          .containsPattern("http://localhost:\\d+/shared#[A-Za-z0-9_-]{43}")
          .containsPattern("[a-z2-9]{4}-[a-z2-9]{4}-[a-z2-9]{4}");
      List<ShareRow> all = new Sharing(site.practice()).all();
      int number = all.get(all.size() - 1).number();
      assertThat(Caller.text(staff.get("/shares"))).contains("the patient");
      assertThat(staff.post("/shares/" + number + "/end", Map.of()).statusCode()).isEqualTo(303);
      assertThat(new Sharing(site.practice()).find(number)).isEmpty();
    }
  }
}
