package org.vestibule.web;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import java.util.regex.Pattern;
import org.vestibule.base.ContentHash;

/** Styles, scripts and drawings that come with the program: {@code assets/<name>}. */
final class Assets implements Page {

  private static final Pattern NAME = Pattern.compile("[a-z][a-z0-9-]*\\.(css|js|svg)");
  private static final Map<String, String> TYPES =
      Map.of("css", "text/css", "js", "text/javascript", "svg", "image/svg+xml");

  @SuppressWarnings("ArrayRecordComponent") // Read once, never compared.
  private record Asset(byte[] bytes, String etag) {}

  private final Map<String, Asset> known = new ConcurrentHashMap<>();

  @Override
  public Answer answer(Asked asked) throws IOException {
    String name = asked.path("name");
    Optional<Asset> asset = NAME.matcher(name).matches() ? find(name) : Optional.empty();
    if (asset.isEmpty()) {
      return Answers.notFound(asked);
    }
    String type = TYPES.getOrDefault(name.substring(name.indexOf('.') + 1), "text/plain");
    return Answer.ours(type + ";charset=utf-8", asset.get().bytes(), asset.get().etag());
  }

  /** Only what there is is kept: any name can be asked for. */
  private Optional<Asset> find(String name) {
    Optional<Asset> read = Optional.ofNullable(known.get(name)).or(() -> read(name));
    read.ifPresent(asset -> known.put(name, asset));
    return read;
  }

  private static Optional<Asset> read(String name) {
    try (InputStream in = Assets.class.getResourceAsStream("assets/" + name)) {
      if (in == null) {
        return Optional.empty();
      }
      byte[] bytes = in.readAllBytes();
      return Optional.of(new Asset(bytes, "\"" + ContentHash.of(bytes).brief() + "\""));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
