package org.mainsgate.evidence;

import java.time.LocalDate;
import java.time.ZoneId;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.mainsgate.quantity.MeterRange;

/**
 * The place where instruments are worked on: its supply, its people and its meters.
 *
 * @param name its short name
 * @param title its name for people
 * @param zone the time zone in which its dates are meant
 * @param profile the rules that it works under: a name inside the program, or a path
 * @param people by initials
 * @param meters by name
 * @param methods ways of measuring that the bench uses again and again, by name
 * @param site what is recorded of the bench itself
 */
public record Bench(
    String name,
    String title,
    ZoneId zone,
    String profile,
    Map<String, Person> people,
    Map<String, Meter> meters,
    Map<String, Method> methods,
    List<Entry> site) {

  /**
   * Somebody who records, works or judges.
   *
   * @param initials as in the names of visits
   * @param name as the person wants it printed
   * @param competence in the person's own words
   */
  public record Person(String initials, String name, String competence) {}

  /**
   * A meter, with its data as they changed over time.
   *
   * @param name its short name
   * @param title make and type
   * @param serial its serial number, empty if it has none
   * @param kind one of the ruleset's meter kinds
   * @param history its data, earliest first
   */
  public record Meter(
      String name, String title, String serial, String kind, List<MeterData> history) {

    /** Keeps the history as it is. */
    public Meter {
      history = List.copyOf(history);
    }

    /** What was known of it on a day. */
    public Optional<MeterData> on(LocalDate day) {
      return history.stream().filter(data -> !data.from().isAfter(day)).reduce((a, b) -> b);
    }
  }

  /**
   * What is known of a meter from a day on.
   *
   * @param from the first day
   * @param calibrated how it was calibrated or checked, in words; empty if it was not
   * @param due the day on which the next calibration or check is due
   * @param functions its ranges by function; where a function is missing, those of its kind count
   */
  public record MeterData(
      LocalDate from,
      String calibrated,
      Optional<LocalDate> due,
      Map<String, List<MeterRange>> functions) {

    /** Keeps the functions as they are. */
    public MeterData {
      functions = Collections.unmodifiableMap(new TreeMap<>(functions));
    }
  }

  /**
   * A way of measuring.
   *
   * @param name its short name
   * @param of the quantity that it measures
   * @param meter the meter, if it says so
   * @param range the range's upper end as typed, if it says so
   * @param nulled as in an entry, if it says so
   * @param with what is recorded with each reading
   */
  public record Method(
      String name,
      String of,
      Optional<String> meter,
      Optional<String> range,
      Optional<String> nulled,
      Map<String, Value> with) {

    /** Keeps what is recorded as it is. */
    public Method {
      with = Collections.unmodifiableMap(new TreeMap<>(with));
    }
  }

  /** Keeps the collections as they are. */
  public Bench {
    people = Collections.unmodifiableMap(new TreeMap<>(people));
    meters = Collections.unmodifiableMap(new TreeMap<>(meters));
    methods = Collections.unmodifiableMap(new TreeMap<>(methods));
    site = List.copyOf(site);
  }
}
