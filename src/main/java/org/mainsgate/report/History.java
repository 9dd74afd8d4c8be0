package org.mainsgate.report;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.mainsgate.evidence.Bench;
import org.mainsgate.evidence.Entry;
import org.mainsgate.evidence.Instrument;
import org.mainsgate.evidence.Value;
import org.mainsgate.evidence.Visit;
import org.mainsgate.ruleset.Vocabulary;

/**
 * What was found and done, and by whom.
 *
 * @param dossier the instrument and its visits
 * @param phrases the words of the trade
 */
record History(Dossier dossier, Phrases phrases) {

  /** A visit. */
  Sheet.Sitting sitting(Visit visit) {
    List<Sheet.Line> lines = new ArrayList<>();
    entries(lines, "found", visit.found());
    lists(lines, visit.foundLists());
    visit.work().forEach(work -> lines.add(new Sheet.Line("work", work(work))));
    entries(lines, "left", visit.left());
    lists(lines, visit.leftLists());
    if (!visit.note().isEmpty()) {
      lines.add(new Sheet.Line("note", visit.note()));
    }
    String hash =
        visit
            .closing()
            .map(closing -> "closed " + closing.on() + ", SHA-256 " + closing.hash())
            .orElse("a draft, not closed");
    return new Sheet.Sitting(visit.id() + ", " + person(visit.by()), lines, hash);
  }

  /** The entries of one part, a line for each thing. */
  private void entries(List<Sheet.Line> lines, String part, List<Entry> entries) {
    entries.stream()
        .collect(Collectors.groupingBy(Entry::thing, LinkedHashMap::new, Collectors.toList()))
        .forEach(
            (thing, said) ->
                lines.add(
                    new Sheet.Line(
                        part,
                        thing(thing)
                            + ": "
                            + said.stream().map(this::entry).collect(Collectors.joining("; ")))));
  }

  private String entry(Entry entry) {
    String note = entry.note().isEmpty() ? "" : " (" + entry.note() + ")";
    return phrases.titleOf(entry.property()) + " " + text(entry.property(), entry.value()) + note;
  }

  private void lists(List<Sheet.Line> lines, List<Visit.Looked> lists) {
    for (Visit.Looked looked : lists) {
      String kind = phrases.plural(looked.kind());
      lines.add(new Sheet.Line("looked", kind + ": " + looked.count() + ", and these are all"));
    }
  }

  private String work(Visit.Work work) {
    Vocabulary.Act act = phrases.words().acts().get(work.act());
    String done = act == null ? work.act() : act.title();
    return thing(work.on()) + ": " + done + (work.note().isEmpty() ? "" : ", " + work.note());
  }

  /** A value as a person reads it. */
  String text(String property, Value value) {
    if (value instanceof Value.Amount number) {
      return number.typed().text();
    }
    if (value instanceof Value.Names names) {
      return names.candidates().stream()
          .sorted()
          .map(name -> phrases.title(property, name))
          .collect(Collectors.joining(" or "));
    }
    return thing(((Value.Thing) value).thing());
  }

  private String thing(String id) {
    Instrument.Thing thing = dossier.instrument().things().get(id);
    if (thing != null) {
      return thing.title();
    }
    return phrases.words().kind(id).map(kind -> kind.title()).orElse(id);
  }

  private String person(String initials) {
    Bench.Person person = dossier.setting().bench().people().get(initials);
    return person == null ? initials : person.name();
  }

  /** Everybody who recorded or judged, in their own phrases.words(). */
  List<Sheet.Line> people() {
    Set<String> initials = new TreeSet<>();
    for (Visit visit : dossier.visits()) {
      initials.add(visit.by());
      Stream.concat(visit.found().stream(), visit.left().stream())
          .forEach(entry -> entry.by().ifPresent(initials::add));
      visit.judged().forEach(judgement -> initials.add(judgement.by()));
    }
    return initials.stream().map(this::responsible).toList();
  }

  private Sheet.Line responsible(String initials) {
    Bench.Person person = dossier.setting().bench().people().get(initials);
    return person == null
        ? new Sheet.Line(initials, "not among the people of the bench")
        : new Sheet.Line(initials + ", " + person.name(), person.competence());
  }
}
