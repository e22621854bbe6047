package org.vestibule.forward;

import static java.nio.charset.StandardCharsets.US_ASCII;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.URI;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublisher;
import java.net.http.HttpRequest.BodyPublishers;
import java.time.Duration;
import java.util.UUID;

/** The requests of Store and Search (PS3.18 10.5.1, 10.6.1). */
final class WebRequests {

  private static final String JSON = "application/dicom+json";

  private final String service;
  private final String token;

  /**
   * @param token the bearer token; empty if none
   */
  WebRequests(URI service, String token) {
    String text = service.toString();
    this.service = text.endsWith("/") ? text.substring(0, text.length() - 1) : text;
    this.token = token;
  }

  private HttpRequest.Builder to(String path, String accept, Duration most) {
    HttpRequest.Builder builder =
        HttpRequest.newBuilder(URI.create(service + path))
            .timeout(most)
            .header("Accept", accept)
            .header("Accept-Encoding", "identity")
            .header("User-Agent", "Vestibule");
    return token.isEmpty() ? builder : builder.header("Authorization", "Bearer " + token);
  }

  HttpRequest options(Duration most) {
    return to("/studies", "*/*", most).method("OPTIONS", BodyPublishers.noBody()).build();
  }

  /**
   * Stores one object, streamed from where it lies. The length is said beforehand, as the object's
   * size is known.
   */
  HttpRequest store(Parcel parcel, Duration most) {
    String boundary = "vestibule-" + UUID.randomUUID();
    byte[] head =
        ("--"
                + boundary
                + "\r\nContent-Type: application/dicom; transfer-syntax="
                + parcel.transferSyntaxUid()
                + "\r\nContent-Length: "
                + parcel.sizeBytes()
                + "\r\n\r\n")
            .getBytes(US_ASCII);
    byte[] tail = ("\r\n--" + boundary + "--\r\n").getBytes(US_ASCII);
    BodyPublisher body =
        BodyPublishers.concat(
            BodyPublishers.ofByteArray(head),
            BodyPublishers.ofInputStream(() -> open(parcel)),
            BodyPublishers.ofByteArray(tail));
    return to("/studies", JSON + ", application/dicom+xml;q=0.5", most)
        .header(
            "Content-Type", "multipart/related; type=\"application/dicom\"; boundary=" + boundary)
        .POST(BodyPublishers.fromPublisher(body, head.length + parcel.sizeBytes() + tail.length))
        .build();
  }

  private static java.io.InputStream open(Parcel parcel) {
    try {
      return parcel.source().open();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /**
   * Searches for one object.
   *
   * @param within its own study and series, or {@code ""} for wherever the archive has it
   */
  HttpRequest search(String within, String sopInstanceUid, Duration most) {
    return to(
            within
                + "/instances?SOPInstanceUID="
                + sopInstanceUid
                + "&includefield=StudyInstanceUID&includefield=SeriesInstanceUID"
                + "&includefield=PatientID&includefield=AccessionNumber",
            JSON,
            most)
        .GET()
        .build();
  }
}
