package org.vestibule.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.vestibule.flow.Practice;
import org.vestibule.flow.Settings;
import org.vestibule.flow.TestHome;
import org.vestibule.flow.WebRules;
import org.vestibule.samples.Scene;

/** Browsers ask all at once, while another run takes photographs in beside the server. */
class ManyAtOnceTest {

  private static final int BROWSERS = 8;
  private static final int EACH = 25;
  private static final String HEAD =
      "file,taken,visit,patient,view,teeth,mirror,incisors,crop,accessories,stage,treatment,note,trim\n";

  @TempDir Path home;

  private final List<Throwable> defects = new ArrayList<>();

  @Test
  void everybodyIsAnsweredAndSeesWhatAnotherRunFiled() throws Exception {
    TestHome practiceHome = TestHome.in(home);
    practiceHome.ingest();
    Settings settings = Settings.defaults(home, TestHome.ZONE);
    try (Practice practice = Practice.open(home, settings, TestHome.CLOCK, false).orThrow();
        Server server =
            Server.start(practice, WebRules.DEFAULT.at(0), null, s -> {}, defects::add)) {
      Sittings sittings = SampleSite.sittings(practice);
      Caller caller = new Caller(server, sittings.begin("", Role.STAFF, "", "B. Rook"));
      assertThat(Caller.text(caller.get("/results"))).contains("0 photographs");
      ExecutorService browsers = Executors.newFixedThreadPool(BROWSERS);
      List<Future<Integer>> answers = new ArrayList<>();
      for (int i = 0; i < BROWSERS; i++) {
        String path = i % 2 == 0 ? "/results?q=frontal" : "/results?tooth=16&view=frontal";
        answers.add(browsers.submit(() -> ask(caller, path)));
      }
      StringBuilder manifest = new StringBuilder(HEAD);
      for (int i = 0; i < 6; i++) {
        String name = "a" + i + ".jpg";
        practiceHome.put(name, Scene.FRONTAL, i);
        manifest.append(name).append(",,V1,P1,frontal,,none,,,,,,,\n");
        practiceHome.manifest(manifest.toString());
        practiceHome.ingest();
      }
      for (Future<Integer> answer : answers) {
        assertThat(answer.get()).isEqualTo(EACH);
      }
      browsers.shutdown();
      assertThat(Caller.text(caller.get("/results"))).contains("6 photographs");
      assertThat(defects).isEmpty();
    }
  }

  private static int ask(Caller caller, String path) throws Exception {
    int answered = 0;
    for (int i = 0; i < EACH; i++) {
      answered += caller.get(path).statusCode() == 200 ? 1 : 0;
    }
    return answered;
  }
}
