package org.vestibule.flow.look;

import java.util.ArrayDeque;
import java.util.Iterator;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;

/**
 * Works on a list a few steps ahead of the one who takes the results in order, so that no more than
 * a few lie in memory.
 */
final class Ahead<T> implements AutoCloseable {

  private static final int WORKERS = 2;
  private static final int MOST_AHEAD = 6;

  private final ExecutorService workers = Executors.newFixedThreadPool(WORKERS);
  private final ArrayDeque<Future<T>> started = new ArrayDeque<>();
  private final Iterator<? extends Callable<T>> jobs;

  Ahead(List<? extends Callable<T>> jobs) {
    this.jobs = jobs.iterator();
  }

  /** The next result in order. */
  T next() {
    while (started.size() < MOST_AHEAD && jobs.hasNext()) {
      started.add(workers.submit(jobs.next()));
    }
    try {
      return started.remove().get();
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new IllegalStateException("interrupted while a small picture was drawn", e);
    } catch (ExecutionException e) {
      throw new IllegalStateException("a small picture could not be drawn", e.getCause());
    }
  }

  @Override
  public void close() {
    workers.shutdownNow();
  }
}
