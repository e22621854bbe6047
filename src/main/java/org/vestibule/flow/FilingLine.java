package org.vestibule.flow;

import java.io.IOException;
import java.io.InterruptedIOException;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.vestibule.assign.Assignment.Decided;
import org.vestibule.base.Outcome;
import org.vestibule.base.Outcome.Done;
import org.vestibule.base.Outcome.Refused;
import org.vestibule.intake.Photo;

/**
 * Files the photographs of a roll beside one another. Pictures are made and proved by several
 * threads; how many of them work at once, the memory decides. Ledger and disk are written by the
 * caller's thread alone, photograph by photograph in the roll's order.
 */
final class FilingLine implements AutoCloseable {

  /** What becomes of the photographs, told in the roll's order. */
  interface Ends {

    void ended(Photo photo, Decided decided, Outcome<FiledPhoto> outcome);

    /** The program failed on this photograph. */
    void failed(Photo photo, Throwable failure);
  }

  private record Step<T>(Photo photo, Decided decided, Future<T> result) {}

  private final Filer filer;
  private final Ends ends;
  private final int width;
  private final ExecutorService threads;
  private final Deque<Step<Outcome<Filer.Made>>> made = new ArrayDeque<>();
  private final Deque<Step<Outcome<Filer.Proved>>> proved = new ArrayDeque<>();

  /**
   * A line.
   *
   * @param width how many pictures are made, and how many proved, beside the one that is being
   *     written; with 0 each photograph is ended before the next is begun
   */
  FilingLine(Filer filer, int width, Ends ends) {
    this.filer = filer;
    this.ends = ends;
    this.width = width;
    this.threads =
        Executors.newFixedThreadPool(
            Math.max(1, width),
            work -> {
              Thread thread = new Thread(work, "filing");
              thread.setDaemon(true);
              return thread;
            });
  }

  /** Begins a photograph, and ends others. Its intent is in the ledger when this returns. */
  void add(Photo photo, Decided decided, Picture picture) throws IOException {
    Filer.Task task =
        filer.begin(picture, decided.decision(), decided.laid(), "ingest", Why.NOTHING);
    made.add(new Step<>(photo, decided, threads.submit(() -> filer.make(task))));
    if (made.size() > width) {
      writeNext();
    }
  }

  /** Ends all that were begun. */
  void finish() throws IOException {
    while (!made.isEmpty()) {
      writeNext();
    }
    while (!proved.isEmpty()) {
      keepNext();
    }
  }

  private void writeNext() throws IOException {
    Step<Outcome<Filer.Made>> next = made.remove();
    attempt(
        next,
        () -> {
          Outcome<Filer.Made> written = filer.write(result(next));
          if (written instanceof Done<Filer.Made> done) {
            Future<Outcome<Filer.Proved>> proof = threads.submit(() -> filer.prove(done.value()));
            proved.add(new Step<>(next.photo(), next.decided(), proof));
          } else {
            keepAll();
            ends.ended(next.photo(), next.decided(), ((Refused<Filer.Made>) written).as());
          }
        });
    if (proved.size() > width) {
      keepNext();
    }
  }

  private void keepAll() throws IOException {
    while (!proved.isEmpty()) {
      keepNext();
    }
  }

  private void keepNext() throws IOException {
    Step<Outcome<Filer.Proved>> next = proved.remove();
    attempt(
        next,
        () -> {
          Outcome<FiledPhoto> outcome = result(next).map(filer::keep);
          ends.ended(next.photo(), next.decided(), outcome);
        });
  }

  private interface Attempt {
    void run() throws IOException;
  }

  /** What fails on one photograph stops no other; what fails in the machine ends the run. */
  private void attempt(Step<?> step, Attempt work) throws IOException {
    try {
      work.run();
    } catch (RuntimeException | StackOverflowError | OutOfMemoryError failure) {
      if (Setback.isMachine(failure)) {
        throw failure;
      }
      ends.failed(step.photo(), failure);
    }
  }

  private static <T> T result(Step<T> step) throws IOException {
    try {
      return step.result().get();
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new InterruptedIOException("the run was interrupted");
    } catch (ExecutionException e) {
      Throwable cause = e.getCause();
      if (cause instanceof IOException io) {
        throw io;
      }
      if (cause instanceof Error error) {
        throw error;
      }
      throw cause instanceof RuntimeException failure ? failure : new IllegalStateException(cause);
    }
  }

  /** Photographs that were begun and not ended stay intended; the next run completes them. */
  @Override
  public void close() {
    threads.shutdownNow();
  }
}
