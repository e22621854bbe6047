package org.vestibule.release;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.vestibule.dental.Arch;
import org.vestibule.dental.Side;
import org.vestibule.dental.Tooth;

/**
 * The teeth as one looks at the patient: upper above lower, the patient's right at the reader's
 * left, numbers of ISO 3950. A tooth that a photograph names can be chosen.
 *
 * <p>The numbers are drawn by style rules from an attribute: as text of their own they would be
 * found by the search wherever a patient's number is as short.
 */
final class ToothChart {

  static final String STYLE =
      ".chart{max-width:46rem}.word{margin:.3rem 0 .1rem;text-align:center;font-size:.85rem}"
          + ".arch{display:grid;grid-template-columns:repeat(16,minmax(0,1fr));"
          + "gap:clamp(1px,.3vw,.2rem)}"
          + ".arch>*{text-align:center;padding:.35rem 0;border:1px solid #d9d4c8;"
          + "border-radius:.5rem .5rem .2rem .2rem;font-size:clamp(.62rem,2.2vw,.85rem);"
          + "color:#6f6a5e;min-width:0}"
          + ".lower>*{border-radius:.2rem .2rem .5rem .5rem}"
          + ".arch>label{background:#e6efe9;border-color:#2f5d62;color:#1e3d40;font-weight:600}"
          + ".arch>*::before{content:attr(data-iso)}"
          + ".middle{margin-left:.4rem}";

  private final PageFilters filters;
  private final SheetWords words;

  ToothChart(PageFilters filters, SheetWords words) {
    this.filters = filters;
    this.words = words;
  }

  String html() {
    StringBuilder html = new StringBuilder("<div class=\"chart\">\n");
    html.append("<p class=\"sides\"><span>\u2190 ")
        .append(said("chart-right"))
        .append("</span><span>")
        .append(said("chart-left"))
        .append(" \u2192</span></p>\n");
    boolean hasDeciduous =
        Tooth.all().stream()
            .anyMatch(tooth -> tooth.deciduous() && filters.named(tooth.iso()).isPresent());
    arch(html, Arch.UPPER, false);
    if (hasDeciduous) {
      arch(html, Arch.UPPER, true);
      arch(html, Arch.LOWER, true);
    }
    arch(html, Arch.LOWER, false);
    return html.append("</div>\n<p>").append(said("chart-help")).append("</p>\n").toString();
  }

  private String said(String key) {
    return HtmlSheet.escaped(words.say(key));
  }

  private void arch(StringBuilder html, Arch arch, boolean deciduous) {
    List<Tooth> teeth =
        Tooth.all().stream()
            .filter(tooth -> tooth.arch() == arch && tooth.deciduous() == deciduous)
            .sorted(Comparator.comparingInt(ToothChart::column))
            .toList();
    String which = arch == Arch.UPPER ? "upper" : "lower";
    html.append("<p class=\"word\">")
        .append(said("chart-" + which + (deciduous ? "-deciduous" : "")))
        .append("</p><div class=\"arch ")
        .append(which)
        .append("\">\n");
    teeth.forEach(tooth -> tooth(html, tooth));
    html.append("</div>\n");
  }

  /** From 1, the patient's last right tooth, to 16, the last left one. */
  private static int column(Tooth tooth) {
    int fromMidline = tooth.iso() % 10;
    return tooth.side() == Side.RIGHT ? 9 - fromMidline : 8 + fromMidline;
  }

  private void tooth(StringBuilder html, Tooth tooth) {
    Optional<Tooth> named = filters.named(tooth.iso());
    String place =
        (column(tooth) == 9 ? " class=\"middle\"" : "")
            + " style=\"grid-column:"
            + column(tooth)
            + "\" data-iso=\""
            + tooth.iso()
            + "\"";
    if (named.isEmpty()) {
      html.append("<span aria-hidden=\"true\"").append(place).append("></span>\n");
      return;
    }
    long count = filters.count(tooth);
    html.append("<label for=\"t")
        .append(tooth.iso())
        .append("\"")
        .append(place)
        .append("><span class=\"spoken\">")
        .append(HtmlSheet.escaped(words.tooth(tooth) + ", " + words.photographs(count)))
        .append("</span></label>\n");
  }
}
