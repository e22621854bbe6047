package org.vestibule.assign;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.vestibule.base.Outcome;
import org.vestibule.intake.FileNames;

/**
 * What a person wrote about photographs in a list beside them.
 *
 * @param rows one for each file
 * @param warnings recoverable oddities, each a sentence
 */
public record Manifest(List<Row> rows, List<String> warnings) {

  /**
   * What is said of one file.
   *
   * @param number of the row as a spreadsheet counts, the header being 1
   * @param file name or path below the folder, with forward slashes
   * @param taken when, as the list has it; empty if it doesn't say
   * @param words what is said of it
   */
  public record Row(int number, String file, String taken, PersonWords words) {}

  /** Cells that a spreadsheet may have marked as text. */
  private static final Set<PhotoFact> NUMBERS =
      Set.of(PhotoFact.VISIT, PhotoFact.PATIENT, PhotoFact.TEETH);

  static final List<Column> COLUMNS =
      Stream.of(
              Stream.of(
                  Column.required("file", "file name", "filename", "photo", "datei"),
                  Column.optional("taken", "taken at", "time")),
              Stream.of(PhotoFact.values()).map(PhotoFact::column),
              Stream.of(Column.optional("by", "decided by", "person")))
          .flatMap(columns -> columns)
          .toList();

  public Manifest {
    rows = List.copyOf(rows);
    warnings = List.copyOf(warnings);
  }

  /** Reads a manifest from a file. */
  public static Outcome<Manifest> read(Path file) {
    try {
      return parse(Files.readAllBytes(file), "the manifest");
    } catch (IOException e) {
      return Outcome.refused(
          "the manifest can't be read (" + e.getClass().getSimpleName() + ")",
          "check that it is there and that no other program holds it");
    }
  }

  /**
   * Reads a manifest.
   *
   * @param name what messages call it
   */
  public static Outcome<Manifest> parse(byte[] bytes, String name) {
    try {
      TextTable table = TextTable.read(bytes, name, COLUMNS);
      NumberDamage.refuseExponents(table.rows(), "patient");
      NumberDamage.refuseExponents(table.rows(), "visit");
      List<String> warnings = new ArrayList<>(table.warnings());
      Map<String, Row> byFile = new LinkedHashMap<>();
      for (TableRow cells : table.rows()) {
        add(byFile, cells, warnings);
      }
      return Outcome.done(new Manifest(List.copyOf(byFile.values()), warnings));
    } catch (Refusal refusal) {
      return refusal.outcome();
    }
  }

  private static void add(Map<String, Row> byFile, TableRow cells, List<String> warnings)
      throws Refusal {
    refuseDates(cells);
    Row row = new Row(cells.number(), path(cells.get("file")), cells.get("taken"), words(cells));
    if (row.file().isEmpty()) {
      throw cells.refusal("file", "it is empty", "name the photograph that the row is about");
    }
    Row earlier = byFile.putIfAbsent(FileNames.key(row.file()), row);
    if (earlier == null) {
      return;
    }
    if (!earlier.words().sameFacts(row.words())) {
      throw cells.refusal(
          "file",
          "row " + earlier.number() + " names the same file and says something else of it",
          "keep the row that is right");
    }
    warnings.add("rows " + earlier.number() + " and " + row.number() + " say the same of one file");
  }

  private static void refuseDates(TableRow cells) throws Refusal {
    Optional<String> probably = SpreadsheetDates.probably(cells.get("teeth"));
    if (probably.isPresent()) {
      throw cells.refusal(
          "teeth",
          "a spreadsheet turned the teeth into a date; they probably were " + probably.get(),
          "set the column's format to text and enter the teeth again, or write FDI before them");
    }
  }

  private static PersonWords words(TableRow cells) {
    PersonWords words = PersonWords.by(cells.get("by"));
    for (PhotoFact fact : PhotoFact.values()) {
      String cell = cells.get(fact.word());
      words = words.with(fact, NUMBERS.contains(fact) ? NumberDamage.unmarked(cell) : cell);
    }
    return words;
  }

  private static String path(String file) {
    String path = file.replace('\\', '/');
    return path.startsWith("./") ? path.substring(2) : path;
  }

  /**
   * The rows of each photograph: a row names it by path, or by a file name that no other photograph
   * has. Rows that name none, or several, are said in the notes.
   *
   * @param photoOfFile the photograph's name by the path of each file that holds it, which are
   *     several where a copy lies beside it; paths below the folder, with forward slashes
   */
  Matches match(Map<String, String> photoOfFile) {
    Map<String, Set<String>> byName = new HashMap<>();
    Map<String, String> byPath = new HashMap<>();
    photoOfFile.forEach(
        (file, photo) -> {
          byPath.put(FileNames.key(file), photo);
          byName
              .computeIfAbsent(FileNames.key(FileNames.last(file)), k -> new TreeSet<>())
              .add(photo);
        });
    Map<String, List<Row>> found = new HashMap<>();
    List<String> unclear = new ArrayList<>();
    List<String> notes = new ArrayList<>();
    for (Row row : rows) {
      String key = FileNames.key(row.file());
      Set<String> meant =
          byPath.containsKey(key) ? Set.of(byPath.get(key)) : byName.getOrDefault(key, Set.of());
      String place = "row " + row.number() + ", column file: ";
      if (meant.size() == 1) {
        found.computeIfAbsent(meant.iterator().next(), k -> new ArrayList<>()).add(row);
      } else if (meant.isEmpty()) {
        notes.add(place + "no photograph of this name is here");
      } else {
        notes.add(place + "several folders hold a file of this name");
        unclear.addAll(meant);
      }
    }
    return new Matches(found, unclear, notes);
  }

  /**
   * @param rows of each photograph; two if one row gives its path and another its name
   * @param unclear photographs that a row may mean
   * @param notes rows that name no photograph, or several
   */
  record Matches(Map<String, List<Row>> rows, List<String> unclear, List<String> notes) {}
}
