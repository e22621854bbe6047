package org.vestibule.check;

import java.util.Map;
import java.util.regex.Pattern;
import org.vestibule.dicom.DataSet;
import org.vestibule.dicom.Element;
import org.vestibule.dicom.Vr;

/** How values of each representation are written (PS3.5 6.2 and 9.1). */
final class ValueForms {

  private static final char UNREADABLE = '\uFFFD';
  private static final int NAME_GROUPS = 3;
  private static final int NAME_COMPONENTS = 5;
  private static final String TIME =
      "(?:[01]\\d|2[0-3])(?:[0-5]\\d(?:(?:[0-5]\\d|60)(?:\\.\\d{1,6})?)?)?";

  private static final Map<Vr, Pattern> FORMS =
      Map.of(
          Vr.AS, Pattern.compile("\\d{3}[DWMY]"),
          Vr.CS, Pattern.compile("[A-Z0-9 _]*"),
          Vr.DS, Pattern.compile("[+-]?(?:\\d+(?:\\.\\d*)?|\\.\\d+)(?:[eE][+-]?\\d+)?"),
          Vr.IS, Pattern.compile("[+-]?\\d+"),
          Vr.TM, Pattern.compile(TIME),
          Vr.DT,
              Pattern.compile(
                  "\\d{4}(?:(?:0[1-9]|1[0-2])(?:(?:0[1-9]|[12]\\d|3[01])(?:"
                      + TIME
                      + ")?)?)?(?:[+-](?:0\\d|1[0-4])[0-5]\\d)?"),
          Vr.UI, Pattern.compile("(?:0|[1-9]\\d*)(?:\\.(?:0|[1-9]\\d*))*"),
          Vr.UR, Pattern.compile("[!-~]+"),
          Vr.AE, Pattern.compile("[ -\\[\\]-~]+"));

  private ValueForms() {}

  static void check(Element element, Findings findings) {
    for (String value : element.strings()) {
      String fault = fault(element, value);
      if (!fault.isEmpty()) {
        findings.error(element.tag(), fault, "PS3.5 6.2 " + element.vr());
        return;
      }
    }
  }

  private static String fault(Element element, String value) {
    Vr vr = element.vr();
    if (!vr.isText() || value.isEmpty()) {
      return "";
    }
    if (value.indexOf(UNREADABLE) >= 0) {
      return "holds bytes that its character set doesn't define";
    }
    if (hasForeignControl(vr, value)) {
      return "holds a control character";
    }
    if (vr == Vr.PN) {
      return name(value);
    }
    if (value.codePointCount(0, value.length()) > vr.maximumCharacters()) {
      return "is longer than " + vr.maximumCharacters() + " characters";
    }
    if (vr == Vr.DA) {
      return isDate(element, value) ? "" : "is not a date of the form YYYYMMDD";
    }
    Pattern form = FORMS.get(vr);
    if (form != null && !form.matcher(value).matches()) {
      return "is not written as " + vr + " is";
    }
    return vr == Vr.IS ? integer(value) : "";
  }

  private static boolean isDate(Element element, String value) {
    return new DataSet().put(element.tag(), Vr.DA, value).date(element.tag()).isPresent();
  }

  private static String integer(String value) {
    long number = Long.parseLong(value);
    return number < Integer.MIN_VALUE || number > Integer.MAX_VALUE
        ? "is outside the range of 32 bits"
        : "";
  }

  /** Paragraph texts may hold line ends, form feeds and tabs; no other text may. */
  private static boolean hasForeignControl(Vr vr, String value) {
    boolean paragraph = vr.followsCharacterSet() && !vr.dividesAtBackslash();
    return value
        .chars()
        .anyMatch(c -> (c < 0x20 || c == 0x7F) && !(paragraph && "\t\n\f\r".indexOf(c) >= 0));
  }

  private static String name(String value) {
    String[] groups = value.split("=", -1);
    if (groups.length > NAME_GROUPS) {
      return "has more than three component groups";
    }
    for (String group : groups) {
      if (group.codePointCount(0, group.length()) > Vr.PN.maximumCharacters()) {
        return "has a component group longer than " + Vr.PN.maximumCharacters() + " characters";
      }
      if (group.split("\\^", -1).length > NAME_COMPONENTS) {
        return "has a component group of more than five components";
      }
    }
    return "";
  }
}
