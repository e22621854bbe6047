package org.vestibule.flow.delivering;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;

/** Does the same with several things at once, so that a slow one keeps none of the others back. */
final class SideBySide {

  /** What is done with one of them. */
  @FunctionalInterface
  interface Work<T, R> {
    R with(T one) throws IOException;
  }

  private final int threads;

  SideBySide(int threads) {
    this.threads = threads;
  }

  /** All results in order; if one fails, the others are finished first. */
  <T, R> List<R> each(List<T> all, Work<T, R> work) throws IOException {
    if (all.size() == 1) {
      return List.of(work.with(all.get(0)));
    }
    ExecutorService pool = Executors.newFixedThreadPool(threads);
    try {
      List<Future<R>> running = new ArrayList<>();
      for (T one : all) {
        running.add(pool.submit(() -> work.with(one)));
      }
      return results(running);
    } finally {
      pool.shutdown();
    }
  }

  private static <R> List<R> results(List<Future<R>> running) throws IOException {
    List<R> results = new ArrayList<>();
    Throwable failure = null;
    for (Future<R> one : running) {
      try {
        results.add(one.get());
      } catch (ExecutionException e) {
        failure = e.getCause();
      } catch (InterruptedException e) {
        Thread.currentThread().interrupt();
        throw new IOException("the delivery was interrupted", e);
      }
    }
    if (failure instanceof IOException broken) {
      throw broken;
    }
    if (failure instanceof RuntimeException defect) {
      throw defect;
    }
    if (failure instanceof Error fatal) {
      throw fatal;
    }
    return results;
  }
}
