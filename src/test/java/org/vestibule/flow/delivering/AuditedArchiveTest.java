package org.vestibule.flow.delivering;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.lang.reflect.Method;
import java.lang.reflect.Modifier;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.vestibule.audit.AuditPeer;
import org.vestibule.audit.AuditRules;
import org.vestibule.base.Outcome;
import org.vestibule.encode.Recipe;
import org.vestibule.flow.Practice;
import org.vestibule.flow.Settings;
import org.vestibule.flow.SettingsWith;
import org.vestibule.flow.TestHome;
import org.vestibule.forward.Archive;
import org.vestibule.forward.ArchiveSession;
import org.vestibule.forward.CommitmentAnswer;
import org.vestibule.forward.Instance;
import org.vestibule.forward.Parcel;
import org.vestibule.forward.PresenceAnswer;
import org.vestibule.forward.StoreAnswer;
import org.vestibule.samples.Scene;
import org.vestibule.store.ledger.Intent;

/** A session with an archive, as it is told: events of PS3.15 A.5.3.3 and A.5.3.7. */
class AuditedArchiveTest {

  @TempDir private Path folder;

  @Test
  void beginningEndAndFailuresAreToldForTheStudy() throws Exception {
    TestHome home = TestHome.in(folder);
    home.put("a.jpg", Scene.FRONTAL, 1);
    home.put("b.jpg", Scene.FRONTAL, 2);
    home.manifest("file,visit,view,mirror\na.jpg,V1,frontal,none\nb.jpg,V1,frontal,none\n");
    home.ingest();
    Settings settings =
        SettingsWith.audit(
            Settings.defaults(folder, TestHome.ZONE),
            new AuditRules(true, "vestibule", "", Optional.empty()));
    try (Practice practice = Practice.open(folder, settings, TestHome.CLOCK, true).orThrow()) {
      Deque<StoreAnswer> answers =
          new ArrayDeque<>(
              List.of(
                  new StoreAnswer.Accepted(0, "", Map.of()),
                  new StoreAnswer.Failed(
                      0xA700, "the archive is full", StoreAnswer.Reach.DESTINATION)));
      Archive audited =
          new AuditedArchive(
              (forms, reports) -> Outcome.done(new Scripted(answers)),
              practice.audit(),
              new AuditPeer("archive", "", "", ""));
      try (ArchiveSession session = audited.open(Set.of(), report -> false).orThrow()) {
        for (var kept : practice.store().ledger().kept().all().toList()) {
          session.store(parcel(practice.store().ledger().intents().find(kept.sopUid()).get()));
        }
      }
    }
    List<String> lines = Files.readAllLines(folder.resolve("audit/2026-03.log"));
    assertThat(lines).hasSize(3).allMatch(line -> line.contains("Tallgrass^Orla"));
    assertThat(lines.get(0)).contains("csd-code=\"110102\"");
    assertThat(lines.get(1))
        .contains("csd-code=\"110104\"")
        .contains("EventOutcomeIndicator=\"0\"")
        .contains("NumberOfInstances=\"1\"");
    assertThat(lines.get(2))
        .contains("csd-code=\"110104\"")
        .contains("EventOutcomeIndicator=\"4\"")
        .contains("the archive is full");
  }

  /** What it does not hand on, an archive is never asked, and nobody would notice. */
  @Test
  void everythingIsHandedOn() throws Exception {
    TestHome home = TestHome.in(folder);
    Settings settings =
        SettingsWith.audit(
            Settings.defaults(folder, TestHome.ZONE),
            new AuditRules(true, "vestibule", "", Optional.empty()));
    try (Practice practice =
        Practice.open(home.folder(), settings, TestHome.CLOCK, true).orThrow()) {
      Archive audited =
          new AuditedArchive(
              (forms, reports) -> Outcome.done(new Scripted(new ArrayDeque<>())),
              practice.audit(),
              new AuditPeer("archive", "", "", ""));
      try (ArchiveSession session = audited.open(Set.of(), report -> false).orThrow()) {
        assertThat(methods(session.getClass())).containsAll(methods(ArchiveSession.class));
        assertThat(methods(AuditedArchive.class)).containsAll(methods(Archive.class));
      }
    }
  }

  private static List<String> methods(Class<?> of) {
    return Stream.of(of.getDeclaredMethods())
        .filter(method -> !Modifier.isStatic(method.getModifiers()) && !method.isSynthetic())
        .map(Method::getName)
        .toList();
  }

  private static Parcel parcel(Intent intent) {
    return new Parcel(
        new Instance(Recipe.SOP_CLASS, intent.sopUid(), intent.studyUid(), intent.seriesUid()),
        "1.2.840.10008.1.2.4.50",
        Parcel.Kind.PHOTO,
        () -> new ByteArrayInputStream(new byte[0]),
        0,
        0);
  }

  private record Scripted(Deque<StoreAnswer> answers) implements ArchiveSession {
    @Override
    public StoreAnswer store(Parcel parcel) {
      return answers.remove();
    }

    @Override
    public CommitmentAnswer requestCommitment(String transactionUid, List<Instance> instances) {
      throw new AssertionError("not asked for");
    }

    @Override
    public void awaitReports(Duration most) {
      throw new AssertionError("not asked for");
    }

    @Override
    public PresenceAnswer ask(List<Instance> instances) {
      throw new AssertionError("not asked for");
    }

    @Override
    public void close() {}
  }
}
