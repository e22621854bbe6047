package org.vestibule.flow.look;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDateTime;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Base64;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.vestibule.ExternalTool;
import org.vestibule.assign.Manifest;
import org.vestibule.base.Outcome;
import org.vestibule.jpeg.JpegStructure;
import org.vestibule.samples.PhoneJpeg;

/** A folder becomes one harmless page and a manifest to be completed, and stays as it was. */
class LookTest {

  private static final Clock CLOCK =
      Clock.fixed(Instant.parse("2026-11-25T18:00:00Z"), ZoneOffset.UTC);
  private static final LocalDateTime MORNING = LocalDateTime.of(2026, 11, 24, 9, 30, 5);
  private static final String EVIL = "<img src=x onerror=alert(1)>\"'&.jpg";

  @TempDir Path place;
  private Path folder;
  private Path sheet;
  private Path manifest;

  @BeforeEach
  void makeFolder() throws IOException {
    folder = Files.createDirectory(place.resolve("roll"));
    sheet = place.resolve("sheet.html");
    manifest = place.resolve("manifest.csv");
  }

  @Test
  void writesAManifestWithWhatIsKnown() throws IOException {
    put("b.jpg", phone(1).takenAt(MORNING.plusHours(2)));
    put("a, \"1\".jpg", phone(2).takenAt(MORNING).offset(ZoneOffset.ofHours(1)));
    put("=1+1.jpg", phone(3));
    Looked looked = look().orThrow();
    assertThat(looked).isEqualTo(new Looked(3, 3, 0, 0, sheet, manifest));
    assertThat(Files.readString(manifest))
        .isEqualTo(
            "\uFEFFfile,taken,visit,patient,view,teeth,mirror,incisors,up,crop,"
                + "accessories,stage,treatment,note,trim,by\r\n"
                + "\"a, \"\"1\"\".jpg\",2026-11-24T09:30:05+01:00,,,,,,,,,,,,,,\r\n"
                + "b.jpg,2026-11-24T11:30:05,,,,,,,,,,,,,,\r\n"
                + "./=1+1.jpg,,,,,,,,,,,,,,,\r\n");
    assertThat(Manifest.read(manifest).orThrow().rows().stream().map(Manifest.Row::file))
        .containsExactly("a, \"1\".jpg", "b.jpg", "=1+1.jpg");
  }

  @Test
  void neverOverwritesAManifest() throws IOException {
    put("a.jpg", phone(1));
    Files.writeString(manifest, "somebody's work");
    assertThat(refusal(look()))
        .isEqualTo(
            "the manifest manifest.csv is already there, perhaps with somebody's work in it: name"
                + " another file, or move this one away");
    assertThat(Files.readString(manifest)).isEqualTo("somebody's work");
    assertThat(sheet).doesNotExist();
  }

  @Test
  void replacesAnOlderSheetButNoOtherPage() throws IOException {
    put("a.jpg", phone(1));
    look().orThrow();
    Files.delete(manifest);
    assertThat(look()).isInstanceOf(Outcome.Done.class);
    Files.delete(manifest);
    Files.writeString(sheet, "<html>other</html>");
    assertThat(refusal(look()))
        .isEqualTo(
            "sheet.html is already there and isn't a sheet that this program wrote: name another"
                + " file");
    assertThat(Files.readString(sheet)).isEqualTo("<html>other</html>");
  }

  @Test
  void writesIntoTheFolderOnlyIfAsked() throws IOException {
    put("a.jpg", phone(1));
    Path inside = folder.resolve("manifest.csv");
    assertThat(refusal(Look.make(folder, sheet, inside, LookRules.DEFAULT, CLOCK)))
        .startsWith("the sheet and the manifest would be written into the folder");
    assertThat(inside).doesNotExist();
    Look.make(folder, sheet, inside, LookRules.DEFAULT.inside(), CLOCK).orThrow();
    assertThat(inside).exists();
  }

  @Test
  void saysThatAFolderIsMissing() throws IOException {
    assertThat(
            refusal(Look.make(place.resolve("nowhere"), sheet, manifest, LookRules.DEFAULT, CLOCK)))
        .isEqualTo(
            "there is no folder of this name: check the name, and that the drive is connected");
  }

  @Test
  void changesNothingInTheFolder() throws IOException {
    put("a.jpg", phone(1));
    put("sub/b.jpg", phone(2));
    List<String> before = listing();
    look().orThrow();
    assertThat(listing()).isEqualTo(before);
  }

  @Test
  void thePageNeedsNothingElseAndRunsNothing() throws IOException {
    put("a.jpg", phone(1));
    String page = page();
    assertThat(page).doesNotContain("<script").doesNotContain("http://").doesNotContain("https://");
    assertThat(page).contains("default-src 'none'");
    assertThat(page).doesNotContain(place.toString());
    Matcher sources = Pattern.compile("(?:src|href)=\"([^\"]*)\"").matcher(page);
    int pictures = 0;
    while (sources.find()) {
      assertThat(sources.group(1)).matches("(?s)data:image/jpeg;base64,.*|#.*");
      pictures += sources.group(1).startsWith("data:") ? 1 : 0;
    }
    assertThat(pictures).isEqualTo(1);
    assertThat(page).contains("belongs in the practice");
  }

  @Test
  void namesAreTextAndNothingElse() throws IOException {
    put(EVIL, phone(1));
    put("b</h3><b>.jpg", phone(1));
    put("c\u202Egpj.jpg", phone(2));
    String page = page();
    assertThat(page).contains("<bdi>&lt;img src=x onerror=alert(1)&gt;&quot;&#39;&amp;.jpg</bdi>");
    assertThat(page).doesNotContain("<img src=x").doesNotContain("</h3><b>");
    assertThat(page).contains("c\\u202Egpj.jpg").doesNotContain("\u202E");
  }

  /** A browser (Chromium) reads the page as we mean it: names are text, pictures are loaded. */
  @Test
  void aBrowserSeesTextAndPictures() throws Exception {
    put(EVIL, phone(1));
    put("b.jpg", phone(2));
    look().orThrow();
    String dom =
        ExternalTool.require("chromium", "chromium")
            .run(
                "--headless",
                "--no-sandbox",
                "--disable-gpu",
                "--dump-dom",
                sheet.toUri().toString())
            .text();
    assertThat(Pattern.compile("<img ").matcher(dom).results().count()).isEqualTo(2);
    assertThat(Pattern.compile("<article>").matcher(dom).results().count()).isEqualTo(2);
    assertThat(dom).contains("<bdi>&lt;img src=x onerror=alert(1)&gt;\"'&amp;.jpg</bdi>");
  }

  @Test
  void picturesAreUprightAndBare() throws IOException {
    BufferedImage raw = new BufferedImage(96, 64, BufferedImage.TYPE_INT_RGB);
    Graphics2D pen = raw.createGraphics();
    pen.setColor(Color.RED);
    pen.fillRect(0, 0, 48, 64);
    pen.dispose();
    put(
        "a.jpg",
        PhoneJpeg.builder(raw)
            .orientation(6)
            .position(47, 11, 500)
            .thumbnail(raw)
            .comment("SECRET")
            .takenAt(MORNING));
    byte[] shown = pictures(page()).get(0);
    BufferedImage upright = ImageIO.read(new ByteArrayInputStream(shown));
    assertThat(upright.getWidth()).isLessThan(upright.getHeight());
    Color top = new Color(upright.getRGB(upright.getWidth() / 2, upright.getHeight() / 8));
    Color bottom = new Color(upright.getRGB(upright.getWidth() / 2, upright.getHeight() * 7 / 8));
    assertThat(top.getRed()).isGreaterThan(200);
    assertThat(bottom.getRed()).isLessThan(50);
    assertThat(JpegStructure.read(shown).orThrow().embedded())
        .allMatch(what -> what.name().equals("JFIF"));
    assertThat(new String(shown, StandardCharsets.ISO_8859_1)).doesNotContain("SECRET");
  }

  @Test
  void saysWhatAPersonShouldKnow() throws IOException {
    byte[] twice =
        put("IMG_0001.jpg", phone(1).takenAt(MORNING).digitalZoom(3, 1).position(47, 11, 500));
    Files.write(folder.resolve("copy.jpg"), twice);
    put("IMG_0002.jpg", phone(2).takenAt(MORNING.plusMinutes(1)).digitalZoom(2, 1));
    put("IMG_E0002.jpg", phone(3).takenAt(MORNING.plusMinutes(1)));
    put("IMG_0003.jpg", phone(4).takenAt(MORNING.plusMinutes(2)).lens("front camera"));
    Files.write(folder.resolve("IMG_0004.png"), new byte[] {(byte) 0x89, 'P', 'N', 'G'});
    Files.write(folder.resolve("IMG_0005.jpg"), new byte[0]);
    String page = page();
    assertThat(page).contains("<li class=\"care\">digital zoom 3×</li>");
    assertThat(page).doesNotContain("digital zoom 2×");
    assertThat(page).contains("<strong>1</strong> <span>with digital zoom above 2×</span>");
    assertThat(page).contains("<strong>1</strong> <span>carry their position</span>");
    assertThat(page).contains("The same file lies here too: copy.jpg.");
    assertThat(page)
        .contains("Same shot as IMG_0002.jpg, one of them perhaps an edited copy")
        .contains("Same shot as IMG_E0002.jpg, one of them perhaps an edited copy");
    assertThat(page).contains("<li class=\"care\">front camera</li>");
    assertThat(page).contains("Not taken: please look").contains("It is empty (0 bytes);");
    assertThat(page).contains("The place where it was taken (GPS). In 1 of 4 photographs.");
    assertThat(page).contains("Tuesday, 24 November 2026, 09:30 to 09:32");
  }

  @Test
  void aPictureThatCannotBeDrawnSaysWhy() throws IOException {
    byte[] bytes = put("a.jpg", phone(1).takenAt(MORNING));
    int frame = 2;
    while (bytes[frame + 1] != (byte) 0xC0) {
      frame += 2 + (((bytes[frame + 2] & 0xFF) << 8) | (bytes[frame + 3] & 0xFF));
    }
    bytes[frame + 1] = (byte) 0xC9;
    Files.write(folder.resolve("a.jpg"), bytes);
    assertThat(page())
        .contains("<figure class=\"none\"><p>It can't be shown: ")
        .contains("arithmetic");
  }

  private static PhoneJpeg.Builder phone(int seed) {
    BufferedImage picture = new BufferedImage(48, 32, BufferedImage.TYPE_INT_RGB);
    for (int i = 0; i < 48 * 32; i++) {
      picture.setRGB(i % 48, i / 48, 0xFF000000 | (i * 31 + seed * 4001) * 7);
    }
    return PhoneJpeg.builder(picture).camera("Invented Works", "Model 1");
  }

  private byte[] put(String name, PhoneJpeg.Builder photo) throws IOException {
    Path file = folder.resolve(name);
    Files.createDirectories(file.getParent());
    byte[] bytes = photo.bytes();
    Files.write(file, bytes);
    return bytes;
  }

  private Outcome<Looked> look() throws IOException {
    return Look.make(folder, sheet, manifest, LookRules.DEFAULT, CLOCK);
  }

  private String page() throws IOException {
    look().orThrow();
    return Files.readString(sheet);
  }

  private static List<byte[]> pictures(String page) {
    List<byte[]> found = new ArrayList<>();
    Matcher data = Pattern.compile("base64,([A-Za-z0-9+/=]+)").matcher(page);
    while (data.find()) {
      found.add(Base64.getDecoder().decode(data.group(1)));
    }
    return found;
  }

  private static String refusal(Outcome<Looked> outcome) {
    assertThat(outcome).isInstanceOf(Outcome.Refused.class);
    return ((Outcome.Refused<Looked>) outcome).sentence();
  }

  private List<String> listing() throws IOException {
    try (var files = Files.walk(folder)) {
      return files.map(file -> file + " " + file.toFile().lastModified()).sorted().toList();
    }
  }
}
