package org.mainsgate.benchmarks;

import java.io.PrintStream;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/**
 * Variants of one job, measured in turn: A B C, A B C, and so on in one process. Whatever disturbs
 * the machine disturbs all of them alike; of each round the ratio to the first is taken, and of all
 * rounds the median.
 */
final class Paired {
  /** Work of which the result is used, so that it can't be left out. */
  interface Work {
    long run();
  }

  private final Map<String, Work> variants = new LinkedHashMap<>();
  private long used;

  Paired with(String name, Work work) {
    variants.put(name, work);
    return this;
  }

  /**
   * Measures and prints.
   *
   * @param jobs how many jobs one run does; times are printed for one of them
   * @param unit what a job is
   */
  void measure(int warm, int rounds, double jobs, String unit, PrintStream out) {
    List<String> names = List.copyOf(variants.keySet());
    Map<String, double[]> times = new LinkedHashMap<>();
    names.forEach(name -> times.put(name, new double[rounds]));
    for (int round = -warm; round < rounds; round++) {
      for (String name : names) {
        long before = System.nanoTime();
        used += work(name).run();
        long taken = System.nanoTime() - before;
        if (round >= 0) {
          times(times, name)[round] = taken / jobs;
        }
      }
    }
    print(names, times, rounds, unit, out);
  }

  private Work work(String name) {
    Work work = variants.get(name);
    if (work == null) {
      throw new IllegalArgumentException(name);
    }
    return work;
  }

  private static double[] times(Map<String, double[]> times, String name) {
    double[] found = times.get(name);
    if (found == null) {
      throw new IllegalArgumentException(name);
    }
    return found;
  }

  private void print(
      List<String> names, Map<String, double[]> times, int rounds, String unit, PrintStream out) {
    double[] first = times(times, names.get(0));
    out.println(
        "rounds " + rounds + ", median; ratio to the first; a sum of all results: " + used);
    for (String name : names) {
      double[] own = times(times, name);
      List<Double> ratios = new ArrayList<>();
      for (int i = 0; i < rounds; i++) {
        ratios.add(own[i] / first[i]);
      }
      double ratio = median(ratios.stream().mapToDouble(Double::doubleValue).toArray());
      out.println(
          String.format(
              Locale.ROOT, "%-44s %12.1f ns/%s %8.2f x", name, median(own), unit, ratio));
    }
  }

  private static double median(double[] values) {
    double[] sorted = values.clone();
    Arrays.sort(sorted);
    int half = sorted.length / 2;
    return sorted.length % 2 == 1 ? sorted[half] : (sorted[half - 1] + sorted[half]) / 2;
  }
}
