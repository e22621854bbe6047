package org.vestibule.web;

import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import org.vestibule.flow.phone.Receiving;

/** Every address there is: path, method, who may ask, what answers. There are no others. */
final class Routes {

  private Routes() {}

  static List<Route> of(Site site) {
    Entry entry = new Entry(site);
    Search search = new Search(site);
    Photograph photograph = new Photograph(site);
    GreyCardPage grey = new GreyCardPage(site);
    VisitChoice visits = new VisitChoice(site);
    Sorting sorting = new Sorting(site, visits);
    AskedPictures asked = new AskedPictures(site);
    PreviewPart preview = new PreviewPart(site);
    HandFiling filing = new HandFiling(site);
    Ways ways = new Ways(site);
    PhoneEntry phones = new PhoneEntry(site);
    PhonePages open = new PhonePages(site);
    PhonePage phone = new PhonePage(site, open);
    PhoneFiles files = new PhoneFiles(open, site.receiving());
    TrustPage trust = new TrustPage(site);
    Shares shares = new Shares(site);
    SharedEntry others = new SharedEntry(site);
    Shared shared = new Shared(site);
    Set<Role> onlyReferrers = EnumSet.of(Role.REFERRER);
    Set<Role> onlyPhones = EnumSet.of(Role.PHONE);
    return List.of(
        Route.get("/", Role.PRACTICE, search::page).inMenu("menu-search"),
        Route.get("/results", Role.PRACTICE, search::results),
        Route.get("/photograph/{key}", Role.PRACTICE, photograph::page),
        Route.get("/photograph/{key}/beside/{other}", Role.PRACTICE, photograph::comparison),
        Route.get("/photograph/{key}/grey-card", Role.DECIDES, grey::page).byAPerson(),
        Route.post("/photograph/{key}/grey-card", Role.DECIDES, grey::mark).byAPerson(),
        Route.get("/picture/{key}", Role.PRACTICE, photograph::picture),
        Route.get("/picture/{key}/small", Role.PRACTICE, photograph::small),
        Route.get("/waiting", Role.PRACTICE, sorting::waiting).inMenu("menu-waiting"),
        Route.get("/waiting/{key}", Role.DECIDES, sorting::stretch).byAPerson(),
        Route.get("/asked/{key}", Role.PRACTICE, asked::large),
        Route.get("/asked/{key}/small", Role.PRACTICE, asked::small),
        Route.get("/preview/{key}", Role.DECIDES, preview::part),
        Route.get("/preview/{key}/picture", Role.DECIDES, asked::shown),
        Route.get("/visits", Role.DECIDES, visits::options),
        Route.get("/series", Role.DECIDES, visits::series),
        Route.post("/file", Role.DECIDES, filing::file).byAPerson(),
        Route.get("/correct/{key}", Role.DECIDES, sorting::correcting).byAPerson(),
        Route.post("/correct/{key}", Role.DECIDES, filing::correct).byAPerson(),
        Route.post("/take-back/{key}", Role.DECIDES, filing::takeBack).byAPerson(),
        Route.post("/reject/{key}", Role.DECIDES, filing::reject).byAPerson(),
        Route.get("/ways", Role.DECIDES, ways::page).inMenu("menu-ways"),
        Route.post("/ways", Role.DECIDES, ways::open).byAPerson(),
        Route.post("/ways/{number}/end", Role.DECIDES, ways::end).byAPerson(),
        Route.get("/phone", Role.ANYONE, phones::page),
        Route.post("/phone", Role.ANYONE, phones::opened),
        Route.get("/phone/visit", onlyPhones, phone::page),
        Route.get("/phone/wanted", onlyPhones, phone::missing),
        Route.get("/phone/guide/{view}", onlyPhones, phone::guide),
        Route.get("/phone/files", onlyPhones, files::all),
        Route.post("/phone/files", onlyPhones, files::begin),
        Route.get("/phone/files/{id}", onlyPhones, files::state),
        Route.put(
            "/phone/files/{id}/from/{from}", onlyPhones, files::add, Receiving.LONGEST_PIECE_BYTES),
        Route.post("/phone/files/{id}/end", onlyPhones, files::end),
        Route.get("/shares", Role.DECIDES, shares::page).inMenu("menu-shares"),
        Route.get("/share/{key}", Role.DECIDES, shares::form).byAPerson(),
        Route.post("/share/{key}", Role.DECIDES, shares::make).byAPerson(),
        Route.post("/shares/{number}/end", Role.DECIDES, shares::end).byAPerson(),
        Route.get("/shared", Role.ANYONE, others::page),
        Route.post("/shared", Role.ANYONE, others::opened),
        Route.get("/shared/photographs", onlyReferrers, shared::page),
        Route.get("/shared/photographs/{name}", onlyReferrers, shared::photograph),
        Route.get("/shared/pictures/{name}", onlyReferrers, shared::picture),
        Route.get("/shared/pictures/{name}/small", onlyReferrers, shared::small),
        Route.get("/trust", Role.ANYONE, trust::page),
        Route.get("/trust/vestibule.crt", Role.ANYONE, trust::certificate),
        Route.get("/who", Role.PRACTICE, entry::whoPage),
        Route.post("/who", Role.PRACTICE, entry::who),
        Route.get("/sign-in", Role.ANYONE, entry::signInPage),
        Route.post("/sign-in", Role.ANYONE, entry::signedIn),
        Route.post("/sign-out", Role.ANYONE, entry::signedOut),
        Route.get("/open", Role.ANYONE, entry::openPage),
        Route.post("/open", Role.ANYONE, entry::opened),
        Route.post("/language", Role.ANYONE, new LanguageSwitch()),
        Route.get("/assets/{name}", Role.ANYONE, new Assets()));
  }
}
