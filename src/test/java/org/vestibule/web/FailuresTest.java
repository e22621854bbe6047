package org.vestibule.web;

import static org.assertj.core.api.Assertions.assertThat;

import io.javalin.Javalin;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.vestibule.flow.WebRules;

/** What goes wrong in a page becomes words, and the next request is answered. */
class FailuresTest {

  private final List<Throwable> defects = new ArrayList<>();

  private HttpResponse<String> failing(Throwable failure) throws Exception {
    return failing("GET", failure);
  }

  private HttpResponse<String> failing(String method, Throwable failure) throws Exception {
    SampleSite sample = SampleSite.shared();
    Site site =
        new Site(
            sample.practice(), WebRules.DEFAULT, SampleSite.CLOCK, words -> {}, Optional.empty());
    Cookies cookies = new Cookies(false);
    Gate gate = new Gate(site, new Shell(site, cookies, List::of), cookies);
    Route route =
        Route.get(
            "/fails",
            Role.ANYONE,
            asked -> {
              if (failure instanceof Error error) {
                throw error;
              }
              throw (RuntimeException) failure;
            });
    Javalin javalin = Javalin.create(config -> config.showJavalinBanner = false);
    new Failures(site, gate, defects::add).register(javalin);
    javalin.get("/fails", context -> gate.handle(context, route));
    javalin.post("/fails", context -> gate.handle(context, route));
    javalin.start("127.0.0.1", 0);
    try {
      HttpRequest request =
          HttpRequest.newBuilder(URI.create("http://127.0.0.1:" + javalin.port() + "/fails"))
              .method(method, HttpRequest.BodyPublishers.noBody())
              .build();
      return HttpClient.newHttpClient().send(request, HttpResponse.BodyHandlers.ofString());
    } finally {
      javalin.stop();
    }
  }

  @Test
  void memoryThatIsNotThereIsSaidAndTheServerGoesOn() throws Exception {
    HttpResponse<String> answer = failing(new OutOfMemoryError("Java heap space"));
    assertThat(answer.statusCode()).isEqualTo(503);
    assertThat(answer.body())
        .contains("There is not enough memory for this at the moment.")
        .contains("Try again in a moment.")
        .doesNotContain("OutOfMemoryError", "heap");
    assertThat(answer.headers().firstValue("Retry-After")).as("a page may ask again").isPresent();
    assertThat(defects).hasSize(1);
  }

  /** What was decided may have got halfway: no script repeats it, a person looks first. */
  @Test
  void whatRanOutOfMemoryWhileItDecidedIsNotAskedAgainByItself() throws Exception {
    HttpResponse<String> answer = failing("POST", new OutOfMemoryError("Java heap space"));
    assertThat(answer.statusCode()).isEqualTo(503);
    assertThat(answer.headers().firstValue("Retry-After")).isEmpty();
  }

  @Test
  void aDefectIsSaidWithoutItsTrace() throws Exception {
    HttpResponse<String> answer = failing(new IllegalStateException("inside"));
    assertThat(answer.statusCode()).isEqualTo(500);
    assertThat(answer.body())
        .contains("A defect in Vestibule stopped this")
        .doesNotContain("inside", "Exception");
    assertThat(defects).hasSize(1);
  }
}
