package org.mainsgate.store;

import java.util.Random;
import java.util.concurrent.Callable;
import java.util.concurrent.FutureTask;
import org.jspecify.annotations.NullMarked;

/**
 * Two programs of which only one runs at a time; before each step on the disk a seed says which.
 *
 * <p>The same seed gives the same order.
 */
@NullMarked
final class Turns {
  private static final int PROGRAMS = 2;
  private final Random random;
  private static final int MOST_AHEAD = 200;
  private final boolean[] ended = new boolean[PROGRAMS];
  private final double share;
  private int ahead;
  private int turn;

  /**
   * One program goes ahead by some steps, and then the first takes a share of the turns: with equal
   * turns from the start, the shorter of the two would always be through before the longer writes.
   */
  Turns(long seed) {
    this.random = new Random(seed);
    this.turn = random.nextInt(PROGRAMS);
    this.ahead = random.nextInt(MOST_AHEAD);
    this.share = random.nextDouble();
  }

  /** A program that was stopped: nothing of it runs any more. */
  static final class Stopped extends Error {
    private static final long serialVersionUID = 1L;

    Stopped() {
      super("stopped", null, false, false);
    }
  }

  /** What one of the programs meets before each step; after so many it is stopped. */
  SteppedDisk.Steps of(int program, int most) {
    int[] done = {0};
    return (step, file) -> {
      if (done[0]++ >= most) {
        throw new Stopped();
      }
      give(program);
      await(program);
    };
  }

  private synchronized void give(int program) {
    if (ahead > 0) {
      ahead--;
    } else if (!ended[1 - program]) {
      turn = random.nextDouble() < share ? 0 : 1;
    }
    notifyAll();
  }

  private synchronized void await(int program) {
    while (turn != program) {
      try {
        wait();
      } catch (InterruptedException e) {
        throw new IllegalStateException(e);
      }
    }
  }

  private synchronized void end(int program) {
    ended[program] = true;
    turn = 1 - program;
    notifyAll();
  }

  /** Runs both to their ends. */
  <T> void run(FutureTask<T> first, FutureTask<T> second) throws InterruptedException {
    Thread one = new Thread(() -> inTurn(0, first));
    Thread other = new Thread(() -> inTurn(1, second));
    one.start();
    other.start();
    one.join();
    other.join();
  }

  private void inTurn(int program, Runnable task) {
    await(program);
    try {
      task.run();
    } finally {
      end(program);
    }
  }

  /** A task that can be run here. */
  static <T> FutureTask<T> task(Callable<T> program) {
    return new FutureTask<>(program);
  }
}
