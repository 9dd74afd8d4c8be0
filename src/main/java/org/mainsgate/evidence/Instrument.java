package org.mainsgate.evidence;

import static java.util.stream.Collectors.joining;

import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;

/**
 * One instrument: what it is, and the list of things on it. Nothing that work can change stands
 * here.
 *
 * @param tag its tag on the bench
 * @param uid an identity that no other instrument has, anywhere
 * @param what what it is, in words
 * @param maker its maker, empty if unknown
 * @param model its model, empty if unknown
 * @param serial its serial number, empty if it has none
 * @param made when it was made, in words; empty if unknown
 * @param photos the pictures that it is recognised by, paths inside its folder: the whole of it,
 *     then its plate
 * @param things the things on it, in the order of their ids
 * @param plate what stands on its plate
 */
public record Instrument(
    String tag,
    String uid,
    String what,
    String maker,
    String model,
    String serial,
    String made,
    List<String> photos,
    Map<String, Thing> things,
    List<Entry> plate) {

  /** The kind of a thing; one that is not listed is its own kind. */
  String kindOf(String thing) {
    Thing listed = things.get(thing);
    return listed == null ? thing : listed.kind();
  }

  /** What it is, its maker, model and serial number, as far as they are known. */
  public String inWords() {
    String named = Stream.of(maker, model).filter(text -> !text.isEmpty()).collect(joining(" "));
    String number = serial.isEmpty() ? "no serial number" : "serial number " + serial;
    return Stream.of(what, named, number).filter(text -> !text.isEmpty()).collect(joining(", "));
  }

  /**
   * Something that exists on an instrument.
   *
   * @param id its id
   * @param kind its kind
   * @param title its name for people
   */
  public record Thing(String id, String kind, String title) {}

  /** Keeps the things and the plate as they are. */
  public Instrument {
    photos = List.copyOf(photos);
    things = Collections.unmodifiableMap(new TreeMap<>(things));
    plate = List.copyOf(plate);
  }
}
