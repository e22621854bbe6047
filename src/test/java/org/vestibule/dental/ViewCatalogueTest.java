package org.vestibule.dental;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.StringReader;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.vestibule.base.Outcome;

/** The views and the words for them (common practice, no source), their codes and orientations. */
class ViewCatalogueTest {

  private static final ViewCatalogue STANDARD = ViewCatalogue.standard();

  private static final String HEADER =
      "key,name,words,permanent,mixed,deciduous,region,structure,view,modifiers,shown,"
          + "shown_incisors_up,looking,usual,series,arch,side,occlusal,face\n";

  /**
   * How each view must appear and which way the camera looks: the patient faces the camera, so the
   * viewer's right is the patient's left, and so on (worked out by hand).
   */
  @ParameterizedTest
  @CsvSource({
    "frontal, L\\F, POSTERIOR",
    "frontal-apart, L\\F, POSTERIOR",
    "right-buccal, A\\F, LEFT",
    "left-buccal, P\\F, RIGHT",
    "upper-occlusal, L\\P, HEAD",
    "lower-occlusal, L\\A, FEET",
    "upper-anterior, L\\F, POSTERIOR",
    "lower-anterior, L\\F, POSTERIOR",
    "upper-right-occlusal, L\\P, HEAD",
    "upper-left-occlusal, L\\P, HEAD",
    "lower-left-occlusal, L\\A, FEET",
    "lower-right-occlusal, L\\A, FEET",
    "upper-tooth-occlusal, L\\P, HEAD",
    "lower-tooth-occlusal, L\\A, FEET",
    "palatal-right, P\\F, RIGHT",
    "palatal-left, A\\F, LEFT",
    "palatal-front, R\\F, ANTERIOR",
    "lingual-right, P\\F, RIGHT",
    "lingual-left, A\\F, LEFT",
    "lingual-front, R\\F, ANTERIOR",
    "smile, L\\F, POSTERIOR",
    "face-rest, L\\F, POSTERIOR",
    "face-smile, L\\F, POSTERIOR",
    "face-three-quarter-right, L\\F, POSTERIOR",
    "profile-right, A\\F, LEFT",
    "profile-left, P\\F, RIGHT",
    "shade-upper, L\\F, POSTERIOR"
  })
  void eachViewIsShownAsTheTradeShowsIt(String key, String shown, Direction looking) {
    View view = STANDARD.byKey(key).orElseThrow();
    assertThat(view.shownAs().text()).isEqualTo(shown);
    assertThat(view.looking()).isEqualTo(looking);
  }

  /** No view may be shown as its own mirror image; the lower arch has two layouts. */
  @Test
  void everyViewIsTrueHandedInEveryLayout() {
    for (View view : STANDARD.all()) {
      for (LowerArchShown setting : LowerArchShown.values()) {
        PatientOrientation shown = view.shownAs(setting);
        char seen = VectorOracle.cross(shown.right().charAt(0), shown.down().charAt(0));
        assertThat(seen).as(view.key()).isEqualTo(view.looking().letter());
        if (view.occlusal() && view.looking() == Direction.FEET) {
          assertThat(shown.text())
              .as(view.key())
              .isEqualTo(setting == LowerArchShown.INCISORS_UP ? "R\\P" : "L\\A");
        } else {
          assertThat(shown).as(view.key()).isEqualTo(view.shownAs());
        }
      }
    }
  }

  /** Where the camera points up or down, and only there, Exif rotation is not trusted. */
  @Test
  void occlusalViewsAreThoseThatLookUpOrDown() {
    for (View view : STANDARD.all()) {
      assertThat(view.occlusal())
          .as(view.key())
          .isEqualTo(view.looking() == Direction.HEAD || view.looking() == Direction.FEET);
    }
  }

  /** DICOM PS3.16 edition 2026b: values copied here by hand from the context groups named. */
  @ParameterizedTest
  @CsvSource({
    "4028, 123851003, Mouth",
    "4028, 69536005, Head",
    "4028, 48477009, Lip",
    "4061, 89545001, Face",
    "4061, 39481002, Maxillary dental arch",
    "4061, 88176008, Mandibular dental arch",
    "4062, 399033003, frontal",
    "4062, 399198007, right lateral",
    "4062, 399173006, left lateral",
    "4062, 260454004, 45 degree projection",
    "4063, 260499007, Occlusal projection",
    "4065, 789313002, Photo image of anterior teeth",
    "4065, 787610003, Mirrored photo image intraoral corrected",
    "4065, 789130005, Photo image with mouth partially opened and teeth apart",
    "4072, 1332162007, Intraoral photography mirror",
    "4072, 53535004, Retractor",
    "244, 24028007, Right",
    "244, 7771000, Left"
  })
  void contextGroupsCarryThePublishedRows(int cid, String value, String meaning) {
    assertThat(ContextGroup.of(cid).orElseThrow().codes())
        .contains(new Code("SCT", value, meaning));
  }

  /** Rows in each group of PS3.16 edition 2026b, counted in the published tables. */
  @ParameterizedTest
  @CsvSource({
    "4018, 32",
    "4019, 20",
    "4061, 6",
    "4062, 10",
    "4063, 1",
    "4064, 4",
    "4065, 11",
    "4072, 7"
  })
  void contextGroupsAreComplete(int cid, int rows) {
    assertThat(ContextGroup.of(cid).orElseThrow().codes()).hasSize(rows).doesNotHaveDuplicates();
  }

  @Test
  void everyCodeOfTheCatalogueIsARowOfItsContextGroup() {
    for (View view : STANDARD.all()) {
      assertThat(group(4028)).as(view.key()).contains(view.region());
      if (view.structure() != null) {
        assertThat(group(4061)).as(view.key()).contains(view.structure());
      }
      if (view.view() != null) {
        assertThat(List.of(group(4062), group(4063))).anyMatch(g -> g.contains(view.view()));
      }
      assertThat(group(4065)).as(view.key()).containsAll(view.modifiers());
    }
  }

  private static List<Code> group(int cid) {
    return ContextGroup.of(cid).orElseThrow().codes();
  }

  @ParameterizedTest
  @CsvSource({
    "upper occlusal, upper-occlusal",
    "maxillary occlusal, upper-occlusal",
    "Occlusal Upper, upper-occlusal",
    "upper-occlusal, upper-occlusal",
    "mandibular occlusal, lower-occlusal",
    "right buccal, right-buccal",
    "buccal right, right-buccal",
    "right lateral, right-buccal",
    "left lateral, left-buccal",
    "the left buccal view, left-buccal",
    "frontal, frontal",
    "front, frontal",
    "retracted, frontal",
    "teeth apart, frontal-apart",
    "smile, smile",
    "smiling, smile",
    "face smiling, face-smile",
    "face at rest, face-rest",
    "profile right, profile-right",
    "3/4 face left, face-three-quarter-left",
    "UR occlusal, upper-right-occlusal",
    "lower left quadrant, lower-left-occlusal",
    "q4, lower-right-occlusal",
    "palatal right, palatal-right",
    "upper right palatal, palatal-right",
    "lingual front, lingual-front",
    "upper front teeth, upper-anterior",
    "lower anterior contraster, lower-anterior",
    "upper shade tab, shade-upper",
    "isolated upper tooth, isolated-upper-occlusal",
    "lesion left cheek close-up, " + "lesion-cheek-left-close-up"
  })
  void viewsAreFoundByWhatPeopleSay(String words, String key) {
    assertThat(STANDARD.find(words).orThrow().key()).isEqualTo(key);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "palatal|\"palatal\" could mean several views: say which: Palatal, right side; Palatal, left"
            + " side; Palatal, front teeth",
        "profile|\"profile\" could mean several views: say which: Profile, right side seen; Profile,"
            + " left side seen",
        "shade|\"shade\" could mean several views: say which: Shade tab, upper; Shade tab, lower",
        "occlusal|\"occlusal\" could mean several views: say which: Upper occlusal; Lower occlusal;"
            + " Upper right quadrant, occlusal; Upper left quadrant, occlusal; Lower left quadrant,"
            + " occlusal; Lower right quadrant, occlusal; or 6 more",
        "oclusal upper|\"oclusal\" is not a word for a view: did you mean \"occlusal\"?",
        "banana|\"banana\" is not a word for a view: see the view catalogue for the words",
        "isolated labial tooth front smile|no view is called \"isolated labial tooth front smile\":"
            + " see the view catalogue for the names of views",
        "right|\"right\" could mean several views: say which: Right buccal; Front teeth from the"
            + " right; Upper right quadrant, occlusal; Lower right quadrant, occlusal; Palatal, right"
            + " side; Lingual, right side; or 6 more",
        "bite right|\"bite right\" is not a full name of a view: say which: Right buccal",
        "the|\"the\" names no view: say a view, such as upper occlusal",
      })
  void unknownAndAmbiguousWordsAreRefusedWithTheNearestNames(String words, String sentence) {
    Outcome<View> found = STANDARD.find(words);
    assertThat(found).isInstanceOf(Outcome.Refused.class);
    assertThat(((Outcome.Refused<View>) found).sentence()).isEqualTo(sentence);
  }

  /** A phrase that named two views would be guessed at. */
  @Test
  void everyPhraseFindsItsOwnView() {
    Map<String, String> owners = new HashMap<>();
    for (View view : STANDARD.all()) {
      for (String phrase : view.words()) {
        assertThat(STANDARD.find(phrase).orThrow().key()).as(phrase).isEqualTo(view.key());
        assertThat(owners.put(phrase, view.key())).as(phrase).isNull();
        assertThat(STANDARD.vocabulary()).containsAll(ViewWords.tokens(phrase));
      }
    }
    assertThat(STANDARD.phrases()).containsAll(owners.keySet());
  }

  @Test
  void searchingFindsAllViewsThatAWordCouldMean() {
    assertThat(STANDARD.allNaming("palatal"))
        .extracting(View::key)
        .containsExactly("palatal-right", "palatal-left", "palatal-front");
    assertThat(STANDARD.allNaming("face")).allMatch(View::showsFace).hasSize(6);
    assertThat(STANDARD.allNaming("the")).isEmpty();
    assertThat(STANDARD.allNaming("banana")).isEmpty();
  }

  /** Each side view must have its teeth on its own side, and in its own arch. */
  @Test
  void usualTeethStandOnTheViewsSideAndArch() {
    for (View view : STANDARD.all()) {
      for (List<Tooth> teeth :
          List.of(view.teeth().permanent(), view.teeth().mixed(), view.teeth().deciduous())) {
        boolean front = view.series().contains(Series.AESTHETIC) && !view.key().endsWith("buccal");
        if (view.side() != null && !front) {
          assertThat(teeth).as(view.key()).allMatch(tooth -> tooth.side() == view.side());
        }
        if (view.arch() != null) {
          assertThat(teeth).as(view.key()).allMatch(tooth -> tooth.arch() == view.arch());
        }
      }
      assertThat(view.teeth().permanent()).as(view.key()).noneMatch(Tooth::deciduous);
      assertThat(view.teeth().deciduous()).as(view.key()).allMatch(Tooth::deciduous);
    }
  }

  /** The baseline of eight, and the orthodontic three of the face and five of the mouth. */
  @Test
  void seriesHaveTheirViews() {
    assertThat(keys(Series.BASELINE))
        .containsExactlyInAnyOrder(
            "frontal",
            "right-buccal",
            "left-buccal",
            "upper-occlusal",
            "lower-occlusal",
            "smile",
            "face-rest",
            "profile-right",
            "profile-left");
    assertThat(keys(Series.ORTHODONTIC))
        .containsExactlyInAnyOrder(
            "frontal",
            "right-buccal",
            "left-buccal",
            "upper-occlusal",
            "lower-occlusal",
            "face-rest",
            "face-smile",
            "profile-right",
            "profile-left");
    for (Series series : Series.values()) {
      assertThat(keys(series)).as(series.words()).isNotEmpty();
    }
  }

  private static List<String> keys(Series series) {
    return STANDARD.all().stream()
        .filter(view -> view.series().contains(series))
        .map(View::key)
        .toList();
  }

  @Test
  void aPracticeAddsItsOwnViews() throws IOException {
    String own =
        "# our own\n"
            + HEADER
            + "overjet-right,Overjet from the right,overjet right|bite depth,11-13,,,123851003,,"
            + "399198007,,A\\F,,L,direct,orthodontic,,right,no,no\n";
    ViewCatalogue catalogue = STANDARD.with(new StringReader(own)).orThrow();
    assertThat(catalogue.all()).hasSize(STANDARD.all().size() + 1);
    View view = catalogue.find("bite depth").orThrow();
    assertThat(view.key()).isEqualTo("overjet-right");
    assertThat(view.teeth().permanent()).hasSize(3);
    assertThat(STANDARD.byKey("overjet-right")).isEmpty();
    String semicolons = own.replace(',', ';');
    assertThat(STANDARD.with(new StringReader(semicolons))).isInstanceOf(Outcome.Done.class);
  }

  /** Each row spoils one field of a good one. */
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "key| My View|line 2, column key: \"My View\" is not a key: use small letters, digits and"
            + " single hyphens",
        "key|frontal|line 2, column key: the key frontal is already taken: choose another",
        "name|''|line 2, column name: the field is empty: every view needs it",
        "words|smile|line 2, column words: \"smile\" already means Smile, front: choose other words",
        "permanent|19|line 2, column permanent: \"19\" is not a tooth as ISO 3950 (FDI) writes it; it"
            + " could be lower left first molar (36) in Universal: say which is meant: write #19",
        "region|1|line 2, column region: \"1\" is not a code of CID 4028: use a SNOMED CT value of"
            + " CID 4028",
        "region|''|line 2, column region: the field is empty: every view needs it",
        "structure|123851003|line 2, column structure: \"123851003\" is not a code of CID 4061: use a"
            + " SNOMED CT value of CID 4061",
        "view|5|line 2, column view: \"5\" is not a code of CID 4062 or CID 4063: use a SNOMED CT value"
            + " of CID 4062 or CID 4063",
        "modifiers|5|line 2, column modifiers: \"5\" is not a code of CID 4064 or CID 4065: use a SNOMED"
            + " CT value of CID 4064 or CID 4065",
        "view|''|line 2, column modifiers: modifiers stand without a view code: add a view code, or"
            + " drop them",
        "shown|LF|line 2, column shown: \"LF\" is not a Patient Orientation: write the directions of"
            + " image right and image down, such as L\\F",
        "shown|P\\F|line 2, column shown: P\\F is not what a camera looking towards L sees: it would"
            + " show a mirror image or another side; correct this or the looking column",
        "shown|F\\P|line 2, column shown: F\\P does not have up at the top: the second letter must be"
            + " F",
        "looking|X|line 2, column looking: \"X\" is no direction: use A, P, R, L, H or F",
        "usual|maybe|line 2, column usual: \"maybe\" is not one of the choices: use direct, either,"
            + " mirror",
        "series|holiday|line 2, column series: \"holiday\" is not a series: use baseline, orthodontic,"
            + " aesthetic, single restoration, shade, trauma, lesion",
        "arch|middle|line 2, column arch: \"middle\" is not one of the choices: use lower, upper, or"
            + " nothing",
        "occlusal|1|line 2, column occlusal: \"1\" is not one of the choices: use no, yes",
      })
  void aPracticesMistakeIsToldByLineAndColumn(String column, String value, String sentence)
      throws IOException {
    List<String> columns = List.of(HEADER.trim().split(",", -1));
    List<String> fields =
        new ArrayList<>(
            List.of(
                "ours",
                "Our view",
                "our words",
                "11",
                "",
                "",
                "123851003",
                "",
                "399198007",
                "789131009",
                "A\\F",
                "",
                "L",
                "direct",
                "baseline",
                "",
                "right",
                "no",
                "no"));
    fields.set(columns.indexOf(column), value.trim());
    Outcome<ViewCatalogue> outcome =
        STANDARD.with(new StringReader(HEADER + String.join(",", fields) + "\n"));
    assertThat(outcome).isInstanceOf(Outcome.Refused.class);
    assertThat(((Outcome.Refused<ViewCatalogue>) outcome).sentence()).isEqualTo(sentence);
  }

  /** How a practice's view is shown must be possible, in both layouts. */
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "L\\F||P|yes|line 2, column shown: L\\F has no margin at the incisors: one letter must be A or P",
        "L\\A|L\\P|F|yes|line 2, column shown_incisors_up: L\\P is not what a camera looking towards F"
            + " sees: it would show a mirror image or another side; correct this or the looking column",
        "A\\F|A\\F|L|no|line 2, column shown_incisors_up: only occlusal views have a second layout:"
            + " leave the field empty",
      })
  void anImpossibleLayoutIsRefused(
      String shown, String incisorsUp, String looking, String occlusal, String sentence)
      throws IOException {
    String up = incisorsUp == null ? "" : incisorsUp;
    assertThat(
            sentence(
                HEADER
                    + String.join(
                        ",",
                        "ours",
                        "Our view",
                        "",
                        "",
                        "",
                        "",
                        "123851003",
                        "",
                        "",
                        "",
                        shown,
                        up,
                        looking,
                        "direct",
                        "",
                        "",
                        "",
                        occlusal,
                        "no\n")))
        .isEqualTo(sentence);
  }

  @Test
  void aFileOfAnotherShapeIsRefused() throws IOException {
    assertThat(sentence("a,b\n1,2\n"))
        .startsWith("the view table's columns are a, b: they must be key, name, words, permanent");
    assertThat(sentence("")).isEqualTo("the table is empty: its first line must name the columns");
    assertThat(sentence(HEADER + "a,b\n"))
        .isEqualTo(
            "line 2 has 2 fields where the header has 19: give every column a field, and put fields"
                + " that contain the separator in quotes");
    assertThat(sentence(HEADER + "\"a,b\n"))
        .isEqualTo("line 2 has a quote that is never closed: close it on the same line");
  }

  private static String sentence(String file) throws IOException {
    return ((Outcome.Refused<ViewCatalogue>) STANDARD.with(new StringReader(file))).sentence();
  }
}
