package org.vestibule.forward;

import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.TreeMap;
import org.vestibule.base.Outcome;
import org.vestibule.store.objects.ObjectStore;
import org.vestibule.store.objects.Put;

/** Objects that are no files. */
final class ObjectsInMemory implements ObjectStore {

  private final Map<String, byte[]> objects = new TreeMap<>();

  @Override
  public Outcome<Put> putIfAbsent(String uid, byte[] bytes) {
    return Outcome.done(objects.putIfAbsent(uid, bytes) == null ? Put.WRITTEN : Put.ADOPTED);
  }

  @Override
  public Optional<byte[]> get(String uid) {
    return Optional.ofNullable(objects.get(uid)).map(byte[]::clone);
  }

  @Override
  public Optional<Path> path(String uid) {
    return Optional.empty();
  }

  @Override
  public OptionalLong size(String uid) {
    byte[] bytes = objects.get(uid);
    return bytes == null ? OptionalLong.empty() : OptionalLong.of(bytes.length);
  }

  @Override
  public List<String> list() {
    return List.copyOf(objects.keySet());
  }

  @Override
  public List<String> strays() {
    return List.of();
  }

  @Override
  public boolean isInterrupted(String stray) {
    return false;
  }

  @Override
  public int clearInterrupted() {
    return 0;
  }
}
