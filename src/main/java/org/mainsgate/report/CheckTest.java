package org.mainsgate.report;

import java.util.List;

/**
 * What one of the rules' own tests expects of a check.
 *
 * @param check the check, by id
 * @param name the test's name
 * @param profiles the profiles that it runs under
 * @param outcome what is expected
 */
public record CheckTest(String check, String name, List<String> profiles, String outcome) {

  /** Keeps the profiles as they are. */
  public CheckTest {
    profiles = List.copyOf(profiles);
  }
}
