package org.mainsgate.desk;

import java.util.ArrayDeque;
import java.util.Iterator;
import java.util.List;
import java.util.Queue;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.function.Consumer;
import java.util.function.Function;

/**
 * Work on many things, by all processors at once; what comes of it arrives in the order of the
 * things. Only a few results wait at any time, however many things there are.
 */
final class InTurn {
  /** So many results for each worker: one slow thing does not stop the others. */
  private static final int AHEAD = 8;

  private InTurn() {}

  static <T, R> void each(List<T> things, Function<T, R> work, Consumer<R> result) {
    int workers = Math.min(Runtime.getRuntime().availableProcessors(), things.size());
    if (workers < 2) {
      things.forEach(thing -> result.accept(work.apply(thing)));
      return;
    }
    ExecutorService pool = Executors.newFixedThreadPool(workers);
    try {
      Queue<Future<R>> waiting = new ArrayDeque<>();
      Iterator<T> left = things.iterator();
      while (left.hasNext() || !waiting.isEmpty()) {
        while (left.hasNext() && waiting.size() < workers * AHEAD) {
          T thing = left.next();
          waiting.add(pool.submit(() -> work.apply(thing)));
        }
        result.accept(done(waiting.remove()));
      }
    } finally {
      pool.shutdownNow();
    }
  }

  private static <R> R done(Future<R> future) {
    try {
      return future.get();
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new IllegalStateException("interrupted while judging", e);
    } catch (ExecutionException e) {
      if (e.getCause() instanceof RuntimeException cause) {
        throw cause;
      }
      if (e.getCause() instanceof Error cause) {
        throw cause;
      }
      throw new IllegalStateException(e.getCause());
    }
  }
}
