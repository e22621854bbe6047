package org.vestibule.forward;

import com.sun.net.httpserver.HttpExchange;
import com.sun.net.httpserver.HttpServer;
import java.io.IOException;
import java.io.OutputStream;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.atomic.AtomicInteger;

/** A web server that answers what a test says, and keeps what it was asked. */
final class WebPeer implements AutoCloseable {

  /** What it was asked. */
  record Asked(
      String method,
      String target,
      String type,
      String length,
      String token,
      String encodings,
      byte[] body) {
    String text() {
      return new String(body, StandardCharsets.ISO_8859_1);
    }
  }

  /** What it answers. */
  interface Script {
    void answer(HttpExchange exchange, Asked asked) throws IOException;
  }

  final List<Asked> asked = new ArrayList<>();
  int optionsStatus = 204;
  boolean swallows;

  /** What stands in Retry-After of each answer; empty if nothing. */
  String retryAfter = "";

  /** How often it was asked what it can do. */
  final AtomicInteger options = new AtomicInteger();

  private final HttpServer server;
  private final ExecutorService threads = Executors.newCachedThreadPool();
  Script script = (exchange, any) -> answer(exchange, 200, "application/dicom+json", "");

  WebPeer() throws IOException {
    server = HttpServer.create(new InetSocketAddress(InetAddress.getLoopbackAddress(), 0), 0);
    server.setExecutor(threads);
    server.createContext("/dicom-web", this::handle);
    server.start();
  }

  URI service() {
    return URI.create("http://localhost:" + server.getAddress().getPort() + "/dicom-web");
  }

  private void handle(HttpExchange exchange) throws IOException {
    Asked now =
        new Asked(
            exchange.getRequestMethod(),
            exchange.getRequestURI().toString(),
            header(exchange, "Content-Type"),
            header(exchange, "Content-Length"),
            header(exchange, "Authorization"),
            header(exchange, "Accept-Encoding"),
            swallows ? swallowed(exchange) : exchange.getRequestBody().readAllBytes());
    if (!retryAfter.isEmpty()) {
      exchange.getResponseHeaders().set("Retry-After", retryAfter);
    }
    if (now.method().equals("OPTIONS")) {
      options.incrementAndGet();
      answer(exchange, optionsStatus, "text/plain", "");
      return;
    }
    synchronized (asked) {
      asked.add(now);
    }
    script.answer(exchange, now);
  }

  private static byte[] swallowed(HttpExchange exchange) throws IOException {
    exchange.getRequestBody().transferTo(OutputStream.nullOutputStream());
    return new byte[0];
  }

  private static String header(HttpExchange exchange, String name) {
    String value = exchange.getRequestHeaders().getFirst(name);
    return value == null ? "" : value;
  }

  static void answer(HttpExchange exchange, int status, String type, String body)
      throws IOException {
    byte[] bytes = body.getBytes(StandardCharsets.UTF_8);
    exchange.getResponseHeaders().set("Content-Type", type);
    exchange.sendResponseHeaders(status, bytes.length == 0 ? -1 : bytes.length);
    if (bytes.length > 0) {
      exchange.getResponseBody().write(bytes);
    }
    exchange.close();
  }

  @Override
  public void close() {
    server.stop(0);
    threads.shutdownNow();
  }
}
