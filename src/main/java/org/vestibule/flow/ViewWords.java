package org.vestibule.flow;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.vestibule.dental.Area;
import org.vestibule.dental.CatalogueCode;
import org.vestibule.dental.Code;
import org.vestibule.dental.Tooth;
import org.vestibule.dicom.DataSet;
import org.vestibule.dicom.Tags;

/** What an object's codes say that its picture shows, as a person reads it. */
final class ViewWords {

  private final DataSet object;

  ViewWords(DataSet object) {
    this.object = object;
  }

  /** The catalogue's name; for objects without one, the standard's view. */
  String view() {
    return inCatalogue().map(Code::meaning).orElseGet(() -> meanings(standard()));
  }

  /** The standard's codes that the catalogue's name stands for; empty if they are all there is. */
  String codedAs() {
    List<Code> rest = new ArrayList<>(inCatalogue().isPresent() ? standard() : List.of());
    modifiers().filter(code -> !isCatalogueView(code)).forEach(rest::add);
    return meanings(rest);
  }

  /** Whether the picture was a mirror image. */
  String mirror() {
    return modifiers().anyMatch(CatalogueCode::saysCorrected)
        ? "was a mirror image, shown corrected"
        : "";
  }

  /** Areas and arches, then teeth. */
  String structures() {
    return object.items(Tags.PrimaryAnatomicStructureSequence).stream()
        .map(
            item ->
                Tooth.byCode(code(item))
                    .map(Tooth::wordsAndNumber)
                    .orElseGet(() -> structure(item)))
        .distinct()
        .collect(Collectors.joining(", "));
  }

  private static String structure(DataSet item) {
    List<Code> modifiers =
        item.items(Tags.PrimaryAnatomicStructureModifierSequence).stream()
            .map(ViewWords::code)
            .toList();
    return Area.ofCodes(code(item), modifiers)
        .map(Area::words)
        .orElseGet(
            () ->
                Stream.concat(Stream.of(code(item)), modifiers.stream())
                    .map(Code::meaning)
                    .collect(Collectors.joining(", ")));
  }

  private Optional<Code> inCatalogue() {
    return Stream.concat(views(), modifiers()).filter(ViewWords::isCatalogueView).findFirst();
  }

  private List<Code> standard() {
    return views().filter(code -> !isCatalogueView(code)).toList();
  }

  private static boolean isCatalogueView(Code code) {
    return CatalogueCode.isOwn(code) && !CatalogueCode.saysCorrected(code);
  }

  private Stream<Code> views() {
    return object.items(Tags.ViewCodeSequence).stream().map(ViewWords::code);
  }

  private Stream<Code> modifiers() {
    return object.items(Tags.ViewCodeSequence).stream()
        .flatMap(view -> view.items(Tags.ViewModifierCodeSequence).stream())
        .map(ViewWords::code);
  }

  private static String meanings(List<Code> codes) {
    return codes.stream().map(Code::meaning).collect(Collectors.joining("; "));
  }

  static Code code(DataSet item) {
    return new Code(
        item.string(Tags.CodingSchemeDesignator).orElse(""),
        item.string(Tags.CodeValue).or(() -> item.string(Tags.LongCodeValue)).orElse(""),
        item.string(Tags.CodeMeaning).orElse(""));
  }
}
