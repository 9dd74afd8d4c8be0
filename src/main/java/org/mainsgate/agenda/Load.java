package org.mainsgate.agenda;

/**
 * How much there is to do.
 *
 * @param readings numbers that a meter shows
 * @param typed other numbers that have to be typed
 * @param ticks observations and lists
 * @param seconds the time for all of it
 */
public record Load(int readings, int typed, int ticks, int seconds) {
  /** Nothing to do. */
  public static final Load NONE = new Load(0, 0, 0, 0);

  private static final int A_MINUTE = 60;

  /** Both together. */
  public Load plus(Load other) {
    return new Load(
        readings + other.readings,
        typed + other.typed,
        ticks + other.ticks,
        seconds + other.seconds);
  }

  /** The time in whole minutes, rounded up. */
  public int minutes() {
    return (seconds + A_MINUTE - 1) / A_MINUTE;
  }
}
