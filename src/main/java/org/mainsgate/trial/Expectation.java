package org.mainsgate.trial;

import java.util.ArrayList;
import java.util.List;
import org.mainsgate.source.Text;

/**
 * What a test expects of a check.
 *
 * @param check the check, by id
 * @param test the test's name
 * @param profiles the profiles that it runs under
 * @param outcome what is expected, such as {@code pass} or {@code hold: not recorded}
 */
public record Expectation(String check, String test, List<String> profiles, String outcome) {

  /** Keeps the profiles as they are. */
  public Expectation {
    profiles = List.copyOf(profiles);
  }

  static List<Expectation> of(TestFile.TestEntry entry) {
    List<String> profiles = entry.profiles().stream().map(Text::value).toList();
    List<Expectation> all = new ArrayList<>();
    entry
        .expect()
        .forEach(
            (key, outcome) -> {
              String check = key.split("/", 2)[0];
              if (!check.equals(TestCase.STAGE)) {
                all.add(new Expectation(check, entry.name().value(), profiles, outcome.value()));
              }
            });
    return all.stream().distinct().toList();
  }
}
