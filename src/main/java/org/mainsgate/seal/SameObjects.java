package org.mainsgate.seal;

import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import org.mainsgate.seal.PdfValue.Dictionary;
import org.mainsgate.seal.PdfValue.Stream;

/** Whether two files hold the same objects, though another library has packed them. */
final class SameObjects {
  private static final int MOST = 64 << 20;

  private SameObjects() {}

  static boolean in(byte[] one, byte[] other) {
    Optional<PdfObjects> left = PdfObjects.read(one);
    Optional<PdfObjects> right = PdfObjects.read(other);
    return left.isPresent()
        && right.isPresent()
        && left.get().size() == right.get().size()
        && left.get().all().keySet().equals(right.get().all().keySet())
        && trailer(left.get()).equals(trailer(right.get()))
        && left.get().all().keySet().stream()
            .allMatch(number -> same(one, left.get(), other, right.get(), number));
  }

  private static Dictionary trailer(PdfObjects objects) {
    return without(objects.trailer(), "Length", "Index", "W", "Size");
  }

  private static boolean same(
      byte[] one, PdfObjects left, byte[] other, PdfObjects right, int number) {
    PdfValue a = left.all().get(number);
    PdfValue b = right.all().get(number);
    if (!(a instanceof Stream first) || !(b instanceof Stream second)) {
      return a != null && a.equals(b);
    }
    if (!without(first.dictionary(), "Length").equals(without(second.dictionary(), "Length"))) {
      return false;
    }
    boolean packed = first.dictionary().says("Filter", "FlateDecode");
    return packed
        ? left.content(first, MOST)
            .flatMap(x -> right.content(second, MOST).map(y -> Arrays.equals(x, y)))
            .orElse(false)
        : Arrays.equals(one, first.from(), first.to(), other, second.from(), second.to());
  }

  private static Dictionary without(Dictionary dictionary, String... names) {
    Map<String, PdfValue> left = new LinkedHashMap<>(dictionary.entries());
    Arrays.asList(names).forEach(left::remove);
    return new Dictionary(left);
  }
}
