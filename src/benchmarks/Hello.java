/** A Java program that does nothing but print: what any of them takes at least. */
public final class Hello {
  private Hello() {}

  /** Prints one line. */
  public static void main(String[] arguments) {
    System.out.println("hello");
  }
}
