package org.vestibule;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;
import static org.assertj.core.api.Assertions.assertThat;

import com.tngtech.archunit.base.DescribedPredicate;
import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.Test;

/** The rooms of the house and who may go where; the table stands in docs/architecture.md. */
class HouseTest {

  private static final String ROOT = "org.vestibule.";

  private static final Map<String, Set<String>> MAY_USE =
      Map.ofEntries(
          Map.entry("base", Set.of()),
          Map.entry("dental", Set.of("base")),
          Map.entry("words", Set.of("base", "dental")),
          Map.entry("jpeg", Set.of("base")),
          Map.entry("dicom", Set.of("base", "keys")),
          Map.entry("intake", Set.of("base", "jpeg", "dental")),
          Map.entry("card", Set.of("base", "jpeg", "dental", "words")),
          Map.entry("assign", Set.of("base", "card", "intake", "jpeg", "dental")),
          Map.entry("quality", Set.of("base", "intake", "jpeg", "dental")),
          Map.entry("deid", Set.of("base", "dicom", "jpeg")),
          Map.entry("check", Set.of("base", "dicom", "jpeg", "dental")),
          Map.entry(
              "encode", Set.of("base", "assign", "intake", "deid", "jpeg", "dicom", "dental")),
          Map.entry(
              "store",
              Set.of(
                  "base", "encode", "check", "quality", "intake", "assign", "dicom", "dental",
                  "jpeg")),
          Map.entry("search", Set.of("base", "store", "dental")),
          Map.entry(
              "release",
              Set.of(
                  "base", "store", "deid", "encode", "assign", "check", "dicom", "dental", "jpeg",
                  "words")),
          Map.entry("keys", Set.of("base")),
          Map.entry("audit", Set.of("base", "keys")),
          Map.entry("forward", Set.of("base", "keys", "store", "encode", "dicom", "dental")),
          Map.entry(
              "flow",
              Set.of(
                  "base", "dental", "jpeg", "dicom", "intake", "card", "assign", "quality", "check",
                  "deid", "encode", "store", "search", "release", "keys", "audit", "forward",
                  "words")),
          Map.entry(
              "web",
              Set.of(
                  "base", "dental", "jpeg", "intake", "card", "assign", "quality", "store",
                  "search", "release", "keys", "words", "flow")),
          Map.entry(
              "cli",
              Set.of(
                  "base", "dental", "dicom", "intake", "card", "assign", "quality", "check",
                  "store", "search", "release", "keys", "audit", "forward", "words", "flow",
                  "web")));

  private static final JavaClasses CLASSES =
      new ClassFileImporter()
          .withImportOption(new ImportOption.DoNotIncludeTests())
          .importPackages("org.vestibule");

  @Test
  void eachRoomUsesOnlyItsNeighbours() {
    List<String> trespasses = new ArrayList<>();
    for (JavaClass from : CLASSES) {
      Set<String> allowed = MAY_USE.get(room(from));
      if (allowed == null) {
        continue;
      }
      from.getDirectDependenciesFromSelf().stream()
          .map(dependency -> dependency.getTargetClass())
          .filter(to -> to.getPackageName().startsWith(ROOT) && !room(to).equals(room(from)))
          .filter(to -> !allowed.contains(room(to)))
          .forEach(to -> trespasses.add(from.getName() + " uses " + to.getName()));
    }
    assertThat(new HashSet<>(trespasses)).isEmpty();
  }

  @Test
  void roomsFormNoCycle() {
    slices().matching("org.vestibule.(*)..").should().beFreeOfCycles().check(CLASSES);
  }

  @Test
  void librariesStayInTheirRooms() {
    confine("org.apache.lucene", "org.vestibule.store.index..");
    confine("java.sql", "org.vestibule.store.ledger..");
    confine("org.sqlite", "org.vestibule.store.ledger..");
    confine("com.drew", "org.vestibule.intake..");
    confine("picocli", "org.vestibule.cli..");
    confine("net.lingala.zip4j", "org.vestibule.release..");
    confine("io.javalin", "org.vestibule.web..");
    confine("com.samskivert", "org.vestibule.web..");
    confine("jakarta.servlet", "org.vestibule.web..");
    confine("org.eclipse.jetty", "org.vestibule.web..");
    confine("org.bouncycastle", "org.vestibule.keys..");
    confine("com.google.zxing", "org.vestibule.card..");
    confine("org.apache.pdfbox", "org.vestibule.card..", "org.vestibule.release..");
  }

  private static void confine(String library, String... rooms) {
    noClasses()
        .that()
        .resideOutsideOfPackages(rooms)
        .should()
        .dependOnClassesThat(
            DescribedPredicate.describe(
                "reside in " + library, c -> c.getPackageName().startsWith(library)))
        .check(CLASSES);
  }

  private static String room(JavaClass c) {
    String rest = c.getPackageName().substring(ROOT.length() - 1);
    return rest.isEmpty() ? "" : rest.substring(1).split("\\.", 2)[0];
  }
}
