package org.vestibule.store;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.io.IOException;
import java.nio.file.Path;
import java.security.SecureRandom;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import org.vestibule.base.ContentHash;
import org.vestibule.base.Outcome;
import org.vestibule.encode.Role;
import org.vestibule.store.index.IndexRecord;
import org.vestibule.store.index.IndexRecordJson;
import org.vestibule.store.index.UsualFrame;
import org.vestibule.store.ledger.DecisionRow;
import org.vestibule.store.ledger.Filing;
import org.vestibule.store.ledger.Intent;
import org.vestibule.store.ledger.KeptObject;
import org.vestibule.store.ledger.SeenFile;
import org.vestibule.store.steps.WriteSteps;

/** A store of an invented practice; its objects are a few words, not pictures. */
final class StoreFixture {

  static final String PRACTICE = "willow-lane";
  static final Instant NOW = Instant.parse("2026-03-14T06:00:00Z");
  static final Clock CLOCK = Clock.fixed(NOW, ZoneOffset.UTC);

  private StoreFixture() {}

  static Outcome<Store> open(Path home) throws IOException {
    return Store.open(StoreSettings.in(home, PRACTICE), CLOCK, WriteSteps.PASS, new SecureRandom());
  }

  static ContentHash photo(String name) {
    return ContentHash.of(name.getBytes(UTF_8));
  }

  static byte[] bytes(Intent intent) {
    return ("object " + intent.sopUid() + " of an invented practice").getBytes(UTF_8);
  }

  static List<Intent> begin(Store store, String name, Role... roles) {
    ContentHash hash = photo(name);
    store.ledger().arrivals().seen(new SeenFile(hash, name, 1000, NOW));
    DecisionRow decision = store.ledger().decisions().add(hash, "{}", "A. Finch", "person", "");
    Filing filing =
        new Filing(
            hash,
            decision.id(),
            "decided",
            "1",
            "willow",
            "P1",
            "V1",
            null,
            "Lumo P1",
            "",
            roles.length == 0 ? List.of(Role.FRAME) : List.of(roles));
    return store.ledger().intents().begin(filing, "A. Finch");
  }

  /** Files a photograph to the end and lets the index follow. */
  static Intent file(Store store, String name, Role... roles) throws IOException {
    List<Intent> intents = begin(store, name, roles);
    List<KeptObject> kept = new ArrayList<>();
    for (Intent intent : intents) {
      byte[] bytes = bytes(intent);
      store.objects().putIfAbsent(intent.sopUid(), bytes).orThrow();
      kept.add(
          new KeptObject(
              intent.sopUid(), ContentHash.of(bytes), photo("picture"), bytes.length, 0, 0));
    }
    store.ledger().kept().keep(photo(name), kept, json(name));
    store.followIndex();
    return intents.get(0);
  }

  static String json(String name) {
    ContentHash hash = photo(name);
    IndexRecord.Shows shows =
        new IndexRecord.Shows(
            "", "", "", List.of(16), List.of(), List.of(), UsualFrame.NONE, "none", "", List.of());
    return IndexRecordJson.write(
        new IndexRecord(
            hash.hex(),
            hash.brief(),
            true,
            null,
            null,
            IndexRecord.Who.NOBODY,
            shows,
            "",
            "",
            name));
  }
}
