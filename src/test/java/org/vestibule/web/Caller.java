package org.vestibule.web;

import java.io.IOException;
import java.net.URI;
import java.net.URLEncoder;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.util.Map;
import java.util.stream.Collectors;

/** Asks a server as a browser with this session's secret does, or without one. */
final class Caller {

  static final String FORM = "application/x-www-form-urlencoded";

  private static final HttpClient HTTP =
      HttpClient.newBuilder().followRedirects(HttpClient.Redirect.NEVER).build();

  private final int port;
  private final String secret;

  /**
   * @param secret empty for none
   */
  Caller(Server server, String secret) {
    this(server.port(), secret);
  }

  /** Asks whoever listens at this port of this machine. */
  Caller(int port, String secret) {
    this.port = port;
    this.secret = secret;
  }

  HttpRequest.Builder request(String path) {
    HttpRequest.Builder request =
        HttpRequest.newBuilder(URI.create("http://127.0.0.1:" + port + path));
    return secret.isEmpty() ? request : request.header("Cookie", "vestibule=" + secret);
  }

  /** A request with the proof that a page's script would send. */
  HttpRequest.Builder proved(String path) {
    return request(path).header("X-Vestibule-Form", Secrets.csrf(secret));
  }

  HttpResponse<byte[]> get(String path) throws IOException, InterruptedException {
    return send(request(path).GET());
  }

  /** Sends a form with the proof that a page of ours would hold. */
  HttpResponse<byte[]> post(String path, Map<String, String> form)
      throws IOException, InterruptedException {
    return post(path, form, secret.isEmpty() ? "" : Secrets.csrf(secret));
  }

  HttpResponse<byte[]> post(String path, Map<String, String> form, String proof)
      throws IOException, InterruptedException {
    String body =
        form.entrySet().stream()
            .map(field -> field.getKey() + "=" + encoded(field.getValue()))
            .collect(Collectors.joining("&", "form=" + encoded(proof) + "&", ""));
    return send(request(path).header("Content-Type", FORM).POST(BodyPublishers.ofString(body)));
  }

  HttpResponse<byte[]> send(HttpRequest.Builder request) throws IOException, InterruptedException {
    return HTTP.send(request.build(), HttpResponse.BodyHandlers.ofByteArray());
  }

  static String text(HttpResponse<byte[]> response) {
    return new String(response.body(), StandardCharsets.UTF_8);
  }

  static String encoded(String value) {
    return URLEncoder.encode(value, StandardCharsets.UTF_8);
  }
}
