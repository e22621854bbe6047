package org.vestibule.check;

import java.util.List;
import java.util.stream.Stream;
import org.vestibule.dental.Code;
import org.vestibule.dicom.DataSet;
import org.vestibule.dicom.Tags;

/** Code items as codes (PS3.3 8.8); a value of more than 16 characters is a long one. */
final class CodeRead {

  private CodeRead() {}

  static Code code(DataSet item) {
    return new Code(
        item.string(Tags.CodingSchemeDesignator).orElse(""),
        item.string(Tags.CodeValue).or(() -> item.string(Tags.LongCodeValue)).orElse(""),
        "");
  }

  static List<Code> codes(DataSet data, int sequence) {
    return data.items(sequence).stream().map(CodeRead::code).toList();
  }

  /** The codes of the view and of everything that modifies it. */
  static List<Code> viewAndModifiers(DataSet data) {
    return data.items(Tags.ViewCodeSequence).stream()
        .flatMap(
            view ->
                Stream.concat(
                    Stream.of(code(view)), codes(view, Tags.ViewModifierCodeSequence).stream()))
        .toList();
  }
}
