package org.vestibule.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.net.http.HttpResponse;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.vestibule.base.ContentHash;
import org.vestibule.base.Turn;
import org.vestibule.dental.VectorOracle;
import org.vestibule.dental.VectorOracle.Raw;
import org.vestibule.flow.Faces;
import org.vestibule.flow.Ingest;
import org.vestibule.flow.IngestRequest;
import org.vestibule.flow.Practice;
import org.vestibule.flow.Progress;
import org.vestibule.flow.TestHome;
import org.vestibule.flow.WebRules;
import org.vestibule.store.RunLock;

/**
 * The preview's picture and its margin marks, and what is then filed, held against the geometry of
 * mirror and camera, which is worked out apart from the program in {@link VectorOracle}. How each
 * view is to be shown: common practice, no source; letters: PS3.3 C.7.6.1.1.1. Each raw picture has
 * a band of one colour at the edge that is towards one direction in the patient, so that the shown
 * picture itself tells where everything went.
 */
class PreviewMarksTest {

  /** View, the way its camera looks, what is right and down when shown. */
  private record Expected(String view, char looking, char right, char down, boolean occlusal) {}

  private static final List<Expected> VIEWS =
      List.of(
          new Expected("upper-occlusal", 'H', 'L', 'P', true),
          new Expected("lower-occlusal", 'F', 'L', 'A', true),
          new Expected("right-buccal", 'L', 'A', 'F', false),
          new Expected("left-buccal", 'R', 'P', 'F', false),
          new Expected("frontal", 'P', 'L', 'F', false),
          new Expected("palatal-front", 'A', 'R', 'F', false));

  private static final Map<Character, Color> COLOURS =
      Map.of(
          'L', Color.RED,
          'R', Color.BLUE,
          'A', Color.YELLOW,
          'P', Color.CYAN,
          'H', Color.GREEN,
          'F', Color.MAGENTA);

  private static final Map<Character, String> WORDS =
      Map.of(
          'L', "patient&#39;s left",
          'R', "patient&#39;s right",
          'A', "front",
          'P', "back",
          'H', "up",
          'F', "down");

  /** One capture and what a person who sees it truly says of it. */
  private record Case(Expected expected, Raw raw, boolean mirrored, int exif) {

    String mirror() {
      return mirrored ? "as shot" : "none";
    }

    /** Where the incisors lie as the page shows it: turned by Exif, still mirrored. */
    String incisors() {
      Raw seen = VectorOracle.turned(raw, Turn.ofExif(exif));
      return Arrays.stream(new String[] {"TOP", "BOTTOM", "LEFT", "RIGHT"})
          .filter(edge -> seen.at(edge) == 'A')
          .findFirst()
          .orElseThrow()
          .toLowerCase(Locale.ROOT);
    }

    String query() {
      return "view="
          + expected.view()
          + "&mirror="
          + mirror().replace(" ", "+")
          + (expected.occlusal() ? "&incisors=" + incisors() : "");
    }
  }

  @TempDir static Path folder;

  private static final Map<String, Case> CASES = new LinkedHashMap<>();
  private static Practice practice;
  private static Server server;
  private static Caller caller;

  @BeforeAll
  static void start() throws Exception {
    TestHome home = TestHome.in(folder);
    int minute = 0;
    for (Expected expected : VIEWS) {
      for (boolean mirrored : List.of(false, true)) {
        for (Raw raw : VectorOracle.rawPictures(expected.looking(), mirrored)) {
          // Pointing up or down, the camera's own word of what is up means nothing.
          int exif = expected.occlusal() ? List.of(1, 3, 6, 8).get(minute % 4) : level(raw);
          byte[] jpeg = TestHome.photo(picture(raw), minute % 60).orientation(exif).bytes();
          home.put("case-" + minute + ".jpg", jpeg);
          CASES.put(ContentHash.of(jpeg).hex(), new Case(expected, raw, mirrored, exif));
          minute++;
        }
      }
    }
    practice = home.open();
    Ingest.run(
            practice,
            new IngestRequest(home.inbox(), home.inbox().resolve("none.csv"), "job", false, false),
            Progress.NONE)
        .orThrow();
    server = Server.start(practice, WebRules.DEFAULT.at(0), null, said -> {}, defect -> {});
    Sittings sittings = SampleSite.sittings(practice);
    caller = new Caller(server, sittings.begin("", Role.STAFF, "", "B. Rook"));
  }

  @AfterAll
  static void stop() throws Exception {
    server.close();
    practice.close();
  }

  /** The Exif value by which a camera held level says where up is; mirrors don't change that. */
  private static int level(Raw raw) {
    return List.of(1, 3, 6, 8).stream()
        .filter(
            exif ->
                VectorOracle.opposite(VectorOracle.turned(raw, Turn.ofExif(exif)).down()) == 'H')
        .findFirst()
        .orElseThrow();
  }

  private static BufferedImage picture(Raw raw) {
    BufferedImage picture = new BufferedImage(192, 128, BufferedImage.TYPE_INT_RGB);
    Graphics2D paint = picture.createGraphics();
    band(paint, raw.at("TOP"), 0, 0, 192, 32);
    band(paint, raw.at("BOTTOM"), 0, 96, 192, 32);
    band(paint, raw.at("LEFT"), 0, 32, 32, 64);
    band(paint, raw.at("RIGHT"), 160, 32, 32, 64);
    // No two are alike, or they would be one photograph.
    paint.setColor(new Color(40 + CASES.size(), 60, 60));
    paint.fillRect(32, 32, 128, 64);
    paint.dispose();
    return picture;
  }

  private static void band(Graphics2D paint, char letter, int x, int y, int width, int height) {
    paint.setColor(COLOURS.get(letter));
    paint.fillRect(x, y, width, height);
  }

  private static char seen(BufferedImage picture, int x, int y) {
    Color there = new Color(picture.getRGB(x, y));
    return COLOURS.entrySet().stream()
        .min((one, other) -> far(there, one.getValue()) - far(there, other.getValue()))
        .orElseThrow()
        .getKey();
  }

  private static int far(Color one, Color other) {
    return Math.abs(one.getRed() - other.getRed())
        + Math.abs(one.getGreen() - other.getGreen())
        + Math.abs(one.getBlue() - other.getBlue());
  }

  private static void holds(byte[] jpeg, Expected expected, String what) throws IOException {
    BufferedImage shown = ImageIO.read(new ByteArrayInputStream(jpeg));
    int middleX = shown.getWidth() / 2;
    int middleY = shown.getHeight() / 2;
    assertThat(seen(shown, shown.getWidth() - 8, middleY)).as(what).isEqualTo(expected.right());
    assertThat(seen(shown, middleX, shown.getHeight() - 8)).as(what).isEqualTo(expected.down());
    assertThat(seen(shown, 8, middleY)).as(what).isEqualTo(VectorOracle.opposite(expected.right()));
    assertThat(seen(shown, middleX, 8)).as(what).isEqualTo(VectorOracle.opposite(expected.down()));
  }

  private static String mark(String html, String edge) {
    Matcher mark =
        Pattern.compile("class=\"mark " + edge + "\">.*?<span>(.*?)</span>", Pattern.DOTALL)
            .matcher(html);
    assertThat(mark.find()).isTrue();
    return mark.group(1);
  }

  private static String key(String hash) {
    return new PhotoKeys(practice).of(new ContentHash(hash));
  }

  @Test
  void pictureAndMarksAreThoseOfTheGeometry() throws Exception {
    assertThat(CASES).hasSize(VIEWS.size() * 2 * 4);
    for (Map.Entry<String, Case> entry : CASES.entrySet()) {
      Case one = entry.getValue();
      Expected expected = one.expected();
      String at = "/preview/" + key(entry.getKey());
      String html = Caller.text(caller.get(at + "?" + one.query()));
      String what = one + "\n" + html;
      assertThat(mark(html, "right")).as(what).isEqualTo(WORDS.get(expected.right()));
      assertThat(mark(html, "left"))
          .as(what)
          .isEqualTo(WORDS.get(VectorOracle.opposite(expected.right())));
      assertThat(mark(html, "bottom")).as(what).isEqualTo(WORDS.get(expected.down()));
      assertThat(mark(html, "top"))
          .as(what)
          .isEqualTo(WORDS.get(VectorOracle.opposite(expected.down())));
      assertThat(html)
          .as(what)
          .contains("data-shown=\"" + expected.right() + "\\" + expected.down() + "\"");
      // Where right and left are at no margin, the way one looks says them.
      assertThat(html.contains("from the patient&#39;s right to the left"))
          .as(what)
          .isEqualTo(expected.looking() == 'L');
      assertThat(html.contains("from the patient&#39;s left to the right"))
          .as(what)
          .isEqualTo(expected.looking() == 'R');
      holds(caller.get(at + "/picture?" + one.query()).body(), expected, what);
    }
  }

  /** The other answer about the mirror, or the opposite edge, never shows the same picture. */
  @Test
  void aWrongAnswerIsSeenInThePicture() throws Exception {
    for (Map.Entry<String, Case> entry : CASES.entrySet()) {
      Case one = entry.getValue();
      String wrong =
          one.mirrored()
              ? one.query().replace("as+shot", "none")
              : one.query().replace("none", "as+shot");
      HttpResponse<byte[]> answer =
          caller.get("/preview/" + key(entry.getKey()) + "/picture?" + wrong);
      BufferedImage shown = ImageIO.read(new ByteArrayInputStream(answer.body()));
      Raw seen =
          new Raw(
              seen(shown, shown.getWidth() - 8, shown.getHeight() / 2),
              seen(shown, shown.getWidth() / 2, shown.getHeight() - 8));
      assertThat(VectorOracle.cross(seen.right(), seen.down()))
          .as(one.toString())
          .isEqualTo(VectorOracle.opposite(one.expected().looking()));
    }
  }

  @Test
  void whatIsFiledIsWhatWasPreviewed() throws Exception {
    Map<String, String> form = new HashMap<>(Map.of("visit", "V1"));
    List<String> answers = new ArrayList<>();
    int at = 0;
    for (Map.Entry<String, Case> entry : CASES.entrySet()) {
      if (at++ % 5 != 0) {
        continue;
      }
      Case one = entry.getValue();
      String key = key(entry.getKey());
      form.put("photo", key);
      form.put(key + ".view", one.expected().view());
      form.put(key + ".mirror", one.mirror());
      form.put(key + ".incisors", one.expected().occlusal() ? one.incisors() : "");
      form.put(key + ".shown", one.expected().right() + "\\" + one.expected().down());
      form.put(key + ".answered", "USUALLY_MIRROR,USUALLY_DIRECT");
      answers.add(Caller.text(caller.post("/file", form)));
      Faces faces = new Faces(practice);
      ContentHash photo = new ContentHash(entry.getKey());
      assertThat(faces.facts(photo).orThrow().orientation().orElseThrow().text())
          .isEqualTo(one.expected().right() + "\\" + one.expected().down());
      holds(faces.picture(photo).orThrow(), one.expected(), one.toString());
    }
    assertThat(answers)
        .hasSizeGreaterThan(8)
        .allMatch(html -> html.contains("data-state=\"filed\""));
  }

  @Test
  void whileAnotherRunIsAtWorkNothingIsLost() throws Exception {
    Map.Entry<String, Case> entry = List.copyOf(CASES.entrySet()).get(1);
    String key = key(entry.getKey());
    Map<String, String> form =
        Map.of(
            "visit",
            "V1",
            "photo",
            key,
            key + ".view",
            entry.getValue().expected().view(),
            key + ".mirror",
            entry.getValue().mirror(),
            key + ".incisors",
            entry.getValue().incisors(),
            key + ".shown",
            "L\\P",
            key + ".answered",
            "USUALLY_MIRROR");
    RunLock held = practice.store().lock("another run").orThrow();
    try {
      assertThat(Caller.text(caller.post("/file", form)))
          .contains("data-state=\"busy\"", "Another run is at work at the moment");
    } finally {
      held.close();
    }
    assertThat(Caller.text(caller.post("/file", form))).contains("data-state=\"filed\"");
  }
}
