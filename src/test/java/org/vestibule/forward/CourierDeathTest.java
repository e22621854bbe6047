package org.vestibule.forward;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.vestibule.forward.DestinationRules.Confirm;
import org.vestibule.store.ledger.DeliveryRow;
import org.vestibule.store.ledger.DeliveryState;
import org.vestibule.store.ledger.LedgerUnusableException;
import org.vestibule.store.steps.WriteStep;
import org.vestibule.store.steps.WriteSteps;

/** A delivery dies before or after each commit of the ledger in turn; the next one completes it. */
class CourierDeathTest {

  @TempDir private Path folder;
  private final Random random = new Random(1);

  /** Dies at one step, counted from the moment it is armed. */
  private static final class Death implements WriteSteps {
    private int left = Integer.MAX_VALUE;

    @Override
    public void reached(WriteStep step) throws IOException {
      if (left-- <= 0) {
        throw new IOException("the machine is gone");
      }
    }
  }

  @Test
  void nothingIsLostAndNothingIsConfirmedThatIsNotThere() throws IOException {
    ObjectsInMemory objects = new ObjectsInMemory();
    int deaths = 0;
    for (int step = 0; step < 200; step++) {
      MovingClock clock = new MovingClock();
      ScriptedArchive archive = new ScriptedArchive();
      Death death = new Death();
      Path home = java.nio.file.Files.createDirectories(folder.resolve("step" + step));
      boolean died = false;
      try (FiledObjects filed = new FiledObjects(home, clock, death, objects)) {
        filed.file("a.jpg", "P1");
        deliver(filed, archive, clock);
        String old = filed.ledger.intents().current(FiledObjects.hash("a.jpg")).get(0).sopUid();
        filed.file("a.jpg", "P2");
        filed.file("b.jpg", "P1");
        death.left = step;
        try {
          deliver(filed, archive, clock);
        } catch (LedgerUnusableException dead) {
          died = true;
          deaths++;
        }
        death.left = Integer.MAX_VALUE;
        clock.move(Duration.ofMinutes(30));
        deliver(filed, archive, clock);
        String now = filed.ledger.intents().current(FiledObjects.hash("a.jpg")).get(0).sopUid();
        String note = filed.note(FiledObjects.hash("a.jpg"), 1).orThrow();
        assertThat(archive.order.stream().distinct().toList().subList(0, 1)).containsExactly(old);
        assertThat(archive.order.indexOf(now))
            .as("step " + step)
            .isGreaterThan(archive.order.indexOf(note));
        for (String name : List.of("a.jpg", "b.jpg")) {
          for (DeliveryRow row : filed.ledger.deliveries().of(FiledObjects.hash(name))) {
            assertThat(row.state())
                .as("step " + step + " " + name)
                .isEqualTo(DeliveryState.CONFIRMED);
            assertThat(archive.holds).containsKey(row.sopUid());
          }
        }
      }
      if (!died) {
        break;
      }
    }
    assertThat(deaths).as("steps at which it died").isGreaterThan(10);
  }

  private void deliver(FiledObjects filed, ScriptedArchive archive, MovingClock clock)
      throws IOException {
    Destination to =
        new Destination(
            CourierTest.destination(Confirm.COMMITMENT),
            CourierTest.rules(10),
            archive,
            filed.ledger,
            filed.objects,
            filed::note,
            "courier");
    Courier.deliver(to, clock, random, clock.instant().plusSeconds(3600));
  }
}
