package org.vestibule.forward;

import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.vestibule.base.Outcome;
import org.vestibule.base.Outcome.Done;
import org.vestibule.base.Outcome.Refused;
import org.vestibule.keys.TlsSide;

/** An archive that is spoken with by DICOMweb: Store (PS3.18 10.5) and Search (10.6). */
public final class WebArchive implements Archive {

  private static final Duration CONNECT = Duration.ofSeconds(20);
  private static final long LONGEST_TOKEN_FILE = 1 << 16;

  private final HttpClient client;
  private final URI service;
  private final Optional<Path> tokenFile;
  private final Duration answerWait;
  private final Clock clock;
  private volatile Instant notBefore = Instant.MIN;

  private WebArchive(
      HttpClient client, URI service, Optional<Path> tokenFile, Duration answerWait, Clock clock) {
    this.clock = clock;
    this.client = client;
    this.service = service;
    this.tokenFile = tokenFile;
    this.answerWait = answerWait;
  }

  /**
   * The archive that these rules describe; nothing is called yet.
   *
   * @return refused if a file for TLS is not as it must be
   */
  public static Outcome<WebArchive> of(DestinationRules rules, Clock clock) {
    if (!(rules.line() instanceof DestinationRules.Web line)) {
      throw new IllegalArgumentException(rules.name() + " is not spoken with by DICOMweb");
    }
    HttpClient.Builder builder =
        HttpClient.newBuilder()
            .version(HttpClient.Version.HTTP_1_1)
            .followRedirects(HttpClient.Redirect.NEVER)
            .connectTimeout(CONNECT);
    if (line.service().getScheme().equals("https")) {
      Outcome<TlsSide> side = line.tls().client(clock);
      if (!(side instanceof Done<TlsSide> tls)) {
        return ((Refused<TlsSide>) side).as();
      }
      builder.sslContext(tls.value().context()).sslParameters(tls.value().parameters());
    }
    return Outcome.done(
        new WebArchive(
            builder.build(), line.service(), line.tokenFile(), rules.answerWait(), clock));
  }

  /** Nothing is held open; one request says whether anybody is there and lets us in. */
  @Override
  public Outcome<ArchiveSession> open(Set<Form> forms, ReportSink reports) {
    if (notBefore().isPresent()) {
      return Outcome.refused(WebSession.NOT_NOW, "the first run after that tries again");
    }
    Outcome<String> token = tokenFile.isPresent() ? token(tokenFile.get()) : Outcome.done("");
    if (!(token instanceof Done<String> known)) {
      return ((Refused<String>) token).as();
    }
    WebCall call = new WebCall(client, peer(), this::waitFor);
    WebRequests requests = new WebRequests(service, known.value());
    HttpRequest ask = requests.options(answerWait);
    WebCall.Result result = call.send(ask, answerWait);
    if (result instanceof WebCall.Silence silence) {
      return Outcome.refused(silence.words(), silence.advice());
    }
    int status = ((WebCall.Answer) result).status();
    return List.of(401, 403, 502, 503, 504).contains(status)
        ? Outcome.refused(
            StatusTable.HTTP.meaning(status).words() + " (HTTP status " + status + ")",
            status < 500
                ? "see whether token or certificate in the settings are still good"
                : "see whether it runs")
        : Outcome.done(new WebSession(call, requests, answerWait, () -> notBefore().isPresent()));
  }

  private void waitFor(String retryAfter) {
    RetryAfter.read(retryAfter, clock.instant()).ifPresent(until -> notBefore = until);
  }

  @Override
  public Optional<Instant> notBefore() {
    Instant until = notBefore;
    return until.isAfter(clock.instant()) ? Optional.of(until) : Optional.empty();
  }

  private String peer() {
    return service.getPort() < 0 ? service.getHost() : service.getHost() + ":" + service.getPort();
  }

  /** Read anew for each session, since tokens are renewed. */
  private static Outcome<String> token(Path file) {
    try {
      if (Files.size(file) > LONGEST_TOKEN_FILE) {
        return noToken(file, "is too long for a token");
      }
      String line = Files.readString(file).lines().findFirst().orElse("").strip();
      boolean fits = !line.isEmpty() && line.chars().allMatch(c -> c > ' ' && c < 0x7F);
      return fits ? Outcome.done(line) : noToken(file, "holds no token in its first line");
    } catch (IOException e) {
      return noToken(file, "can't be read");
    }
  }

  private static Outcome<String> noToken(Path file, String what) {
    return Outcome.refused(
        "the token file " + file.getFileName() + " " + what,
        "put the archive's bearer token into its first line");
  }
}
