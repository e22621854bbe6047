package org.vestibule.web;

import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import org.eclipse.jetty.server.Request;
import org.eclipse.jetty.server.handler.ErrorHandler;

/** Where no request could be made out at all: one plain sentence, in English. */
final class PlainErrors extends ErrorHandler {

  private static final String WORDS =
      "This request can't be answered as it was sent. Go back to the first page.";

  @Override
  public void handle(
      String target, Request baseRequest, HttpServletRequest request, HttpServletResponse response)
      throws IOException {
    baseRequest.setHandled(true);
    Headers.all().forEach(response::setHeader);
    response.setContentType("text/plain;charset=utf-8");
    response.getOutputStream().write(WORDS.getBytes(StandardCharsets.UTF_8));
  }

  @Override
  public java.nio.ByteBuffer badMessageError(
      int status, String reason, org.eclipse.jetty.http.HttpFields.Mutable fields) {
    Headers.all().forEach(fields::put);
    fields.put("Content-Type", "text/plain;charset=utf-8");
    return java.nio.ByteBuffer.wrap(WORDS.getBytes(StandardCharsets.UTF_8));
  }
}
