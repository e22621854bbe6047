package org.vestibule.base;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;

/**
 * The program's own tables: UTF-8 text whose line one names source and edition and whose line two
 * names the columns.
 */
public final class ResourceTable {

  private static final int HEAD_LINES = 2;

  private ResourceTable() {}

  /**
   * The lines of a table after its head, as they stand.
   *
   * @param owner a class of the room in which the table lies
   * @throws IllegalStateException if the program was built without it
   */
  public static List<String> lines(Class<?> owner, String name) {
    try (InputStream bytes = owner.getResourceAsStream(name)) {
      if (bytes == null) {
        throw new IllegalStateException("the program lacks its table " + name);
      }
      return new BufferedReader(new InputStreamReader(bytes, StandardCharsets.UTF_8))
          .lines()
          .skip(HEAD_LINES)
          .toList();
    } catch (IOException e) {
      throw new UncheckedIOException("the program's table " + name + " can't be read", e);
    }
  }
}
