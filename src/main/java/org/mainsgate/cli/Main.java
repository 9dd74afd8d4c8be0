package org.mainsgate.cli;

/** The program's entry point. */
public final class Main {
  private Main() {}

  /**
   * Runs one command and ends the program with its exit code.
   *
   * @param arguments the command and its arguments
   */
  public static void main(String[] arguments) {
    System.out.println("mainsgate");
  }
}
