package org.vestibule.simulator;

import java.util.Optional;
import java.util.function.Predicate;

/** What can go wrong with a roll: TRADE's failure modes, and what common practice adds to them. */
public enum Fault {
  LIST_MOVED("visit moved, list stale", Regime::times, ScheduleFaults::moved),
  LIST_SWAPPED("two visits swapped, list stale", Regime::times, ScheduleFaults::swapped),
  LIST_CANCELLED("visit cancelled, a walk-in instead", Fault::always, ScheduleFaults::cancelled),
  OVERRUN("visit overruns", Fault::always, ScheduleFaults::overrun),
  SAME_NAMES("two patients of one name", Fault::always, ScheduleFaults::sameNames),
  TWICE_A_DAY("same patient twice a day", Fault::always, ScheduleFaults::twiceADay),
  EARLIER_CARD("card of an earlier day", Regime::cards, ScheduleFaults::cardOfEarlierDay),
  CHAIRS_ONE_PHONE("one phone, two chairs at once", Fault::always, ScheduleFaults::twoChairs),
  LIST_OF_YESTERDAY("list of the day before", Regime::list, ScheduleFaults::listOfYesterday),

  LATE_WITH_CLOSING(
      "late photo and closing card after the next card",
      Regime::closing,
      ShotFaults::lateWithClosing),
  LATE_AFTER_CLOSING("late photo after the next card", Fault::always, ShotFaults::lateAfterClosing),
  RETAKES("retakes after closing", Fault::always, ShotFaults::retakes),
  RETURNS("patient leaves and returns", Fault::always, ShotFaults::returns),
  FAMILY_NO_CARD("family member within a visit", Fault::always, ShotFaults::familyWithoutCard),
  FAMILY_CARD("family member, own card", Regime::cards, ShotFaults::familyWithCard),
  PRIVATE_BETWEEN("private photo between visits", Fault::always, ShotFaults::privateBetween),
  PRIVATE_WITHIN("private photo within a visit", Fault::always, ShotFaults::privateWithin),
  DELETED_PHOTOS("deleted photos", Fault::always, ShotFaults::deletedPhotos),
  DELETED_CARD("deleted card photo", Regime::cards, ShotFaults::deletedCard),

  MISSED_OPENING("missed opening card", Regime::cards, CardFaults::missedOpening),
  MISSED_CLOSING("missed closing card", Regime::closing, CardFaults::missedClosing),
  MISSED_SEPARATOR("missed separator", Regime::closing, CardFaults::missedSeparator),
  WRONG_CARD("wrong patient's card", Regime::cards, CardFaults::wrongCard),
  OTHER_CHAIRS_CARD("card of the other chair", Regime::cards, CardFaults::cardOfOtherChair),
  CARD_UNREADABLE("unreadable code", Regime::cards, CardFaults::unreadable),
  CARD_NOT_SEEN("code not seen", Regime::cards, CardFaults::notSeen),
  SEVERAL_CARDS("several cards in frame", Regime::cards, CardFaults::severalCards),
  CARD_IN_PHOTO("card in a clinical photo", Regime::cards, CardFaults::cardInClinicalPhoto),
  CARD_TWICE("card photographed twice", Regime::cards, CardFaults::twice),
  CARD_BY_OTHER_PHONE("card by the other phone", Regime::cards, CardFaults::byOtherPhone),
  VIEW_CARD_MISSED("missed view card", Regime::cards, CardFaults::viewCardMissed),
  VIEW_CARD_WRONG("wrong view card", Regime::cards, CardFaults::viewCardWrong),
  VIEW_CARD_NOT_SEEN("view card not seen", Regime::cards, CardFaults::viewCardNotSeen),

  PHONES_ONE_FOLDER("two phones in one folder", Fault::always, PhoneFaults::oneFolder),
  PHONES_SAME_MODEL("two phones of one model in one folder", Fault::always, PhoneFaults::sameModel),
  CLOCK_MINUTES("clock wrong by minutes", Fault::always, PhoneFaults::clockMinutes),
  CLOCK_HOUR("clock wrong by an hour", Fault::always, PhoneFaults::clockHour),
  CLOCK_DAY("clock wrong by a day", Fault::always, PhoneFaults::clockDay),
  CLOCK_JUMPS("clock set during the day", Fault::always, PhoneFaults::clockJumps),
  CLOCK_RESET("clock reset", Fault::always, PhoneFaults::clockReset),
  PHONE_CARRIED("phone carried to the other chair, no card", Fault::always, ShotFaults::carried),
  ZONE_MISSING("zone missing", Fault::always, PhoneFaults::zoneMissing),
  ZONE_OTHER("phone in another zone", Fault::always, PhoneFaults::otherZone),
  COUNTER_RESET("counter reset", Fault::always, PhoneFaults::counterReset),

  EDITED_TIME("edited, time changed", Fault::always, FileFaults::editedTime),
  EDITED_COPY("edited copy beside the original", Fault::always, FileFaults::editedCopy),
  TIMES_GONE("times gone from some files", Fault::always, FileFaults::timesGone),
  LATE_FILES("files in a later run", Fault::always, FileFaults::lateFiles),
  OUT_OF_ORDER("a piece of the day in a later run", Fault::always, FileFaults::outOfOrder),
  DUPLICATES("duplicated files", Fault::always, FileFaults::duplicates),
  WRONG_FOLDER("photo in the wrong patient's folder", Regime::folders, FileFaults::wrongFolder),
  SHARED_FOLDER("two patients in one folder", Regime::folders, FileFaults::sharedFolder);

  /** When in the making of a day a fault comes in. */
  enum Stage {
    SCHEDULE,
    SHOTS,
    FILES
  }

  private final String words;

  // Method references only: nothing in them changes.
  @SuppressWarnings("ImmutableEnumChecker")
  private final Predicate<Regime> occursIn;

  @SuppressWarnings("ImmutableEnumChecker")
  private final Injector injector;

  Fault(String words, Predicate<Regime> occursIn, Injector injector) {
    this.words = words;
    this.occursIn = occursIn;
    this.injector = injector;
  }

  private static boolean always(Regime regime) {
    return true;
  }

  /** The fault in words. */
  public String words() {
    return words;
  }

  /** True if the fault can occur where the practice works like this. */
  public boolean occursIn(Regime regime) {
    return occursIn.test(regime);
  }

  /**
   * True if no fact in the roll gives the fault away where the practice works like this: whatever
   * is filed by itself there can be wrong, and only the rarity of the fault protects. Judged from
   * what is visible, not from what a sorter does. Where times are known, another patient's visit at
   * the same time is a trace. A clock wrong by a day meets the visit of the day before if the same
   * patient came then at that time.
   */
  public boolean silentIn(Regime regime) {
    return switch (this) {
      case LATE_AFTER_CLOSING, PRIVATE_WITHIN -> regime.cards();
      case PRIVATE_BETWEEN, RETURNS -> regime == Regime.OPENING_CARD;
      case WRONG_CARD, EARLIER_CARD, TWICE_A_DAY, FAMILY_NO_CARD, PHONE_CARRIED ->
          regime == Regime.BOTH_CARDS_NO_TIMES;
      case CLOCK_DAY -> regime == Regime.FOLDERS_AND_LIST;
      case WRONG_FOLDER, SHARED_FOLDER -> regime == Regime.FOLDERS;
      default -> false;
    };
  }

  /** True if no fact in the roll tells that a view was meant otherwise, or that a card is one. */
  public boolean silentForViews() {
    return this == VIEW_CARD_MISSED || this == VIEW_CARD_WRONG || this == VIEW_CARD_NOT_SEEN;
  }

  Stage stage() {
    if (compareTo(LIST_OF_YESTERDAY) <= 0) {
      return Stage.SCHEDULE;
    }
    return compareTo(COUNTER_RESET) <= 0 ? Stage.SHOTS : Stage.FILES;
  }

  boolean needsTwoPhones() {
    return this == PHONES_ONE_FOLDER
        || this == PHONES_SAME_MODEL
        || this == CARD_BY_OTHER_PHONE
        || this == PHONE_CARRIED
        || this == OTHER_CHAIRS_CARD;
  }

  Optional<String> inject(Plan plan, Dice dice) {
    return injector.inject(plan, dice);
  }
}
