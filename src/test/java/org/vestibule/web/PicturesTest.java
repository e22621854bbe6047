package org.vestibule.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.vestibule.base.ContentHash;
import org.vestibule.flow.Faces;
import org.vestibule.flow.KeptPhoto;
import org.vestibule.flow.Practice;
import org.vestibule.flow.Settings;
import org.vestibule.flow.TestHome;
import org.vestibule.store.index.IndexRecord;

/** Pictures as they are sent: the object's own, with its profile, under names that tell nothing. */
class PicturesTest {

  private static final SampleSite SITE = SampleSite.shared();

  @TempDir Path elsewhere;

  @Test
  void aPictureIsTheObjectsOwnBytesWithItsProfileAndASmallOneLooksTheSame() throws Exception {
    int profiles = 0;
    try (Server server = SITE.serve()) {
      Caller caller = new Caller(server, SITE.session(Role.READER));
      for (IndexRecord record : SITE.filed()) {
        HttpResponse<byte[]> large = caller.get("/picture/" + SITE.key(record));
        HttpResponse<byte[]> small = caller.get("/picture/" + SITE.key(record) + "/small");
        assertThat(large.headers().firstValue("Cache-Control")).contains("no-store");
        assertThat(small.headers().firstValue("Cache-Control")).contains("no-store");
        String sent = text(large.body());
        String kept = text(new KeptPhoto(SITE.practice()).jpeg(record.id()).orThrow());
        assertThat(sent).as(record.id()).endsWith(kept.substring(2));
        boolean profile = sent.contains("ICC_PROFILE");
        profiles += profile ? 1 : 0;
        assertThat(text(small.body()).contains("ICC_PROFILE")).isEqualTo(profile);
        var shape = ImageIO.read(new ByteArrayInputStream(small.body()));
        Faces.Facts facts =
            new Faces(SITE.practice()).facts(new ContentHash(record.hash())).orThrow();
        assertThat(Math.max(shape.getWidth(), shape.getHeight())).isLessThanOrEqualTo(440);
        assertThat(shape.getWidth() > shape.getHeight()).isEqualTo(facts.width() > facts.height());
      }
    }
    assertThat(profiles).as("samples with a profile").isPositive();
  }

  private static String text(byte[] bytes) {
    return new String(bytes, StandardCharsets.ISO_8859_1);
  }

  @Test
  void aKeyTellsNothingAndOpensNothingElsewhere() throws Exception {
    IndexRecord record = SITE.filed().get(0);
    String key = SITE.key(record);
    assertThat(key).matches("[A-Za-z0-9_-]{22}").doesNotContain(record.id());
    PhotoKeys here = new PhotoKeys(SITE.practice());
    assertThat(here.find(key)).contains(new ContentHash(record.hash()));
    String changed = (key.charAt(0) == 'A' ? "B" : "A") + key.substring(1);
    assertThat(here.find(changed)).isEmpty();
    Settings settings = Settings.defaults(elsewhere, TestHome.ZONE);
    try (Practice other = Practice.open(elsewhere, settings, TestHome.CLOCK, true).orThrow()) {
      assertThat(new PhotoKeys(other).of(new ContentHash(record.hash()))).isNotEqualTo(key);
      assertThat(new PhotoKeys(other).find(key)).isEmpty();
    }
  }
}
