package org.vestibule.dicom;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.vestibule.ExternalTool;

/**
 * Files written by pydicom and converted by DCMTK's dcmconv, read by us and compared, element by
 * element, with what pydicom reads.
 */
class ReaderTest {

  /** The names of PS3.5 annexes H to K, and others, as the standard prints them; from memory. */
  private static final Map<String, String> NAMES =
      Map.ofEntries(
          Map.entry("annex-h1", "Yamada^Tarou=山田^太郎=やまだ^たろう"),
          Map.entry("annex-h2", "ﾔﾏﾀﾞ^ﾀﾛｳ=山田^太郎=やまだ^たろう"),
          Map.entry("annex-i", "Hong^Gildong=洪^吉洞=홍^길동"),
          Map.entry("annex-j1", "Wang^XiaoDong=王^小東"),
          Map.entry("annex-j2", "Wang^XiaoDong=王^小东"),
          Map.entry("annex-j3", "Wang^XiaoDong=王^小东"),
          Map.entry("annex-k", "Zhang^XiaoDong=张^小东"),
          Map.entry("x0212", "A=丂^山"),
          Map.entry("latin1", "Äneas^Rüdiger"),
          Map.entry("latin2", "Żółć^Łukasz"),
          Map.entry("latin3", "Ĝusto^Ŭ"),
          Map.entry("latin4", "Šķēle^Ģ"),
          Map.entry("cyrillic", "Иванова^Ольга"),
          Map.entry("arabic", "سعيد^ليلى"),
          Map.entry("greek", "Διονυσιος"),
          Map.entry("hebrew", "שרון^דבורה"),
          Map.entry("latin5", "Öztürk^Işık"),
          Map.entry("latin9", "Œuvre^Ž€"),
          Map.entry("thai", "ทดสอบ^ก"),
          Map.entry("kana", "ﾔﾏﾀﾞ^ﾀﾛｳ"),
          Map.entry("mixed", "Dioné^Люк"),
          Map.entry("ascii", "Doe^Jane"));

  /** Sets that pydicom 2.3 doesn't decode; there the table above is the only witness. */
  private static final List<String> UNREAD_ELSEWHERE = List.of("annex-k", "latin9");

  @TempDir static Path folder;
  private static Independent independent;

  @BeforeAll
  static void write() throws Exception {
    independent = new Independent(folder);
    independent.write(folder);
  }

  @Test
  void everyCharacterSetIsRead() throws Exception {
    for (Map.Entry<String, String> name : NAMES.entrySet()) {
      DataSet data = read(folder.resolve("name-" + name.getKey() + ".dcm")).data();
      assertThat(data.string(Tags.PatientName)).as(name.getKey()).contains(name.getValue());
    }
    assertThat(files("name-")).hasSize(NAMES.size());
  }

  @Test
  void everyElementReadsAsItDoesElsewhere() throws Exception {
    List<Path> files = new ArrayList<>(files("wide-"));
    files("name-").stream()
        .filter(f -> UNREAD_ELSEWHERE.stream().noneMatch(f.toString()::contains))
        .forEach(files::add);
    files.addAll(converted());
    List<JsonNode> theirs = independent.read(files);
    assertThat(theirs).hasSameSizeAs(files);
    for (int i = 0; i < files.size(); i++) {
      JsonNode ours = Independent.ours(read(files.get(i)));
      assertThat(Independent.difference(ours, theirs.get(i), ""))
          .as(files.get(i).getFileName().toString())
          .isEmpty();
      assertThat(ours.size()).isGreaterThan(5);
    }
  }

  @Test
  void aFileIsWrittenBackByteForByte() throws Exception {
    List<Path> files = new ArrayList<>(files("wide-"));
    files.addAll(files("name-"));
    files.addAll(converted());
    for (Path file : files) {
      byte[] bytes = Files.readAllBytes(file);
      assertThat(Part10Writer.write(read(file)).orThrow())
          .as(file.getFileName().toString())
          .isEqualTo(bytes);
    }
  }

  @Test
  void textIsRecodedWhenTheCharacterSetChanges() throws Exception {
    for (Map.Entry<String, String> name : NAMES.entrySet()) {
      DataSet data = read(folder.resolve("name-" + name.getKey() + ".dcm")).data();
      data.put(Tags.SpecificCharacterSet, "ISO_IR 192");
      byte[] bytes = DataSetWriter.write(data, TransferSyntax.EXPLICIT_LITTLE_ENDIAN).orThrow();
      DataSet again = DataSetReader.read(bytes, TransferSyntax.EXPLICIT_LITTLE_ENDIAN).orThrow();
      assertThat(again.string(Tags.PatientName)).contains(name.getValue());
      assertThat(again).isEqualTo(data);
    }
  }

  /** The same data sets with each transfer syntax and each way to state lengths of DCMTK. */
  private static List<Path> converted() throws Exception {
    ExternalTool dcmconv = ExternalTool.require("dcmconv", "dcmtk");
    List<Path> made = new ArrayList<>();
    Path from = folder.resolve("wide-explicit-defined.dcm");
    for (String syntax : List.of("+ti", "+te")) {
      for (String lengths : List.of("+e", "-e")) {
        Path to = folder.resolve("converted" + syntax + lengths + ".dcm");
        ExternalTool.Result result = dcmconv.run(syntax, lengths, from.toString(), to.toString());
        assertThat(result.exitCode()).as(result.errors()).isZero();
        made.add(to);
      }
    }
    return made;
  }

  private static DicomFile read(Path file) throws IOException {
    return Part10Reader.read(Files.readAllBytes(file)).orThrow();
  }

  private static List<Path> files(String prefix) throws IOException {
    try (Stream<Path> all = Files.list(folder)) {
      return all.filter(f -> f.getFileName().toString().startsWith(prefix)).sorted().toList();
    }
  }
}
