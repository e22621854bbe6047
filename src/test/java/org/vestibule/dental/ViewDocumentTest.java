package org.vestibule.dental;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

/**
 * The tables of docs/views-and-codes.md are those of the program. If this fails, the tables as they
 * should be stand in target/views-and-codes-tables.md.
 */
class ViewDocumentTest {

  private static final Path DOCUMENT = Path.of("docs", "views-and-codes.md");

  @Test
  void theDocumentsTablesAreThoseOfTheProgram() throws IOException {
    List<String> tables = new ArrayList<>();
    tables.add(shown());
    tables.add(codes());
    tables.add(accessories());
    Files.createDirectories(Path.of("target"));
    Files.writeString(
        Path.of("target", "views-and-codes-tables.md"),
        String.join("\n", tables),
        StandardCharsets.UTF_8);
    String document = Files.readString(DOCUMENT, StandardCharsets.UTF_8).replace("\r\n", "\n");
    for (String table : tables) {
      assertThat(document).contains("\n\n" + table + "\n");
    }
    String fromViews = document.substring(document.indexOf("\n## Views\n"));
    long rows = fromViews.lines().filter(line -> line.startsWith("| `")).count();
    assertThat(rows)
        .as("no row of a table stands in the document that the program doesn't have")
        .isEqualTo(2L * ViewCatalogue.standard().all().size() + AccessoryCatalogue.all().size());
  }

  private static String shown() {
    return table(
        "| Key | Name | Also called | Teeth usually in frame: permanent; mixed; deciduous | Shown as |"
            + " Usual capture | Series |",
        7,
        ViewCatalogue.standard().all().stream()
            .map(
                view ->
                    row(
                        "`" + view.key() + "`",
                        view.name(),
                        view.words().stream().skip(2).collect(Collectors.joining(", ")),
                        teeth(view),
                        shown(view),
                        switch (view.usualMirror()) {
                          case NONE -> "direct";
                          case AS_SHOT -> "mirror";
                          default -> "direct or mirror";
                        },
                        view.series().stream()
                            .sorted()
                            .map(Series::words)
                            .collect(Collectors.joining(", ")))));
  }

  private static String teeth(View view) {
    List<String> texts =
        Stream.of(view.teeth().permanent(), view.teeth().mixed(), view.teeth().deciduous())
            .map(teeth -> Teeth.of(teeth).text().replace("FDI ", ""))
            .toList();
    return texts.stream().allMatch(String::isEmpty) ? "-" : String.join("; ", texts);
  }

  private static String shown(View view) {
    String shown = view.shownAs().text();
    return view.shownIncisorsUp() == null
        ? shown
        : shown + ", or " + view.shownIncisorsUp().text() + " incisors up";
  }

  private static String codes() {
    return table(
        "| Key | Region (CID 4028) | Structure (CID 4061) | View (CID 4062, 4063) | Modifiers (CID 4065)"
            + " | Camera points up or down | Shows a face |",
        7,
        ViewCatalogue.standard().all().stream()
            .map(
                view ->
                    row(
                        "`" + view.key() + "`",
                        code(view.region()),
                        code(view.structure()),
                        code(view.view()),
                        view.modifiers().isEmpty()
                            ? "-"
                            : view.modifiers().stream()
                                .map(ViewDocumentTest::code)
                                .collect(Collectors.joining(", ")),
                        view.occlusal() ? "yes" : "no",
                        view.showsFace() ? "yes" : "no")));
  }

  private static String accessories() {
    return table(
        "| Key | Name | Also called | Code (CID 4072) | Device description |",
        5,
        AccessoryCatalogue.all().stream()
            .map(
                accessory ->
                    row(
                        "`" + accessory.key() + "`",
                        accessory.name(),
                        accessory.words().stream().skip(1).collect(Collectors.joining(", ")),
                        code(accessory.code()),
                        accessory.description())));
  }

  private static String code(@Nullable Code code) {
    return code == null ? "-" : code.value() + " " + code.meaning();
  }

  private static String row(String... cells) {
    return "| " + String.join(" | ", cells) + " |";
  }

  private static String table(String header, int columns, Stream<String> rows) {
    return header
        + "\n|"
        + "---|".repeat(columns)
        + "\n"
        + rows.collect(Collectors.joining("\n"))
        + "\n";
  }
}
