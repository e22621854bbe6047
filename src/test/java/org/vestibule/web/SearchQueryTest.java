package org.vestibule.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.vestibule.dental.Notation;
import org.vestibule.dental.Tooth;
import org.vestibule.dental.View;
import org.vestibule.dental.ViewCatalogue;
import org.vestibule.flow.Browse;
import org.vestibule.flow.Browse.Order;
import org.vestibule.flow.OnPages;

/** What is chosen on the page is understood as `find` understands it. */
class SearchQueryTest {

  private static final SampleSite SITE = SampleSite.shared();

  private static SearchQuery query(String words, List<Tooth> teeth, List<View> views, Order order) {
    return new SearchQuery(words, teeth, views, "", "", "", "", order, Notation.ISO_3950, 1);
  }

  private static Browse.Answer ask(SearchQuery query) throws IOException {
    return new Browse(SITE.practice())
        .ask(query.question(), query.options(), query.order(), 0, 100, new OnPages("", "", ""))
        .orThrow();
  }

  @Test
  void oneViewIsThatViewAndTwoAreAlternatives() throws IOException {
    View other = ViewCatalogue.standard().byKey("upper-occlusal").orElseThrow();
    for (View view : ViewCatalogue.standard().all()) {
      assertThat(ask(query("", List.of(), List.of(view), Order.CLOSEST)).understood())
          .containsExactly("view " + view.name());
      if (!view.equals(other)) {
        Browse.Answer both = ask(query("", List.of(), List.of(view, other), Order.CLOSEST));
        assertThat(both.understood()).hasSize(1);
        assertThat(both.understood().get(0)).contains("view " + view.name(), other.name());
      }
    }
  }

  @Test
  void everyToothOfTheChartIsThatTooth() throws IOException {
    for (Tooth tooth : Tooth.all()) {
      assertThat(ask(query("", List.of(tooth), List.of(), Order.CLOSEST)).understood())
          .containsExactly(tooth.wordsAndNumber());
    }
  }

  @Test
  void theNewestAreTheSamePhotographsInAnotherOrder() throws IOException {
    List<Tooth> teeth = List.of(Tooth.ofIso(46).orThrow());
    Browse.Answer closest = ask(query("", teeth, List.of(), Order.CLOSEST));
    Browse.Answer newest = ask(query("", teeth, List.of(), Order.NEWEST));
    assertThat(newest.total()).isEqualTo(closest.total()).isGreaterThan(2);
    assertThat(newest.hits().stream().map(hit -> hit.record().hash()))
        .containsExactlyInAnyOrderElementsOf(
            closest.hits().stream().map(hit -> hit.record().hash()).toList());
    assertThat(newest.hits().stream().map(hit -> hit.record().takenAt()).toList())
        .isSortedAccordingTo((one, other) -> other.compareTo(one));
    assertThat(closest.hits().get(0).closeness()).isEqualTo("named");
  }
}
