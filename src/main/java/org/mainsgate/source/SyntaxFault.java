package org.mainsgate.source;

import java.util.List;
import java.util.Optional;
import org.yaml.snakeyaml.error.Mark;
import org.yaml.snakeyaml.error.MarkedYAMLException;

/**
 * What the parser stumbled over, in our own words.
 *
 * @param mark where, if the parser said so
 */
record SyntaxFault(String what, String right, Optional<Mark> mark) {

  /** What the parser says in its own words, where that is best shown, and what it means. */
  private record Translation(String said, boolean whereItBegan, String what, String right) {}

  private static final List<Translation> TRANSLATIONS =
      List.of(
          new Translation("tag handle", false, "a tag is not allowed here", "the value in quotes"),
          new Translation(
              "directive", false, "a directive is not allowed here", "a file without it"),
          new Translation(
              "incompatible YAML", false, "a directive is not allowed here", "a file without it"),
          new Translation(
              "scanning an anchor", false, "an anchor is not allowed here", "the value in quotes"),
          new Translation(
              "scanning an alias", false, "an alias is not allowed here", "the value in quotes"),
          new Translation(
              "scanning a tag", false, "a tag is not allowed here", "the value in quotes"),
          new Translation("(TAB)", false, "a tab can't stand at the start of a value", "spaces"),
          new Translation(
              "that cannot start any token",
              false,
              "a value can't start with this",
              "the value in quotes"),
          new Translation(
              "mapping values are not allowed",
              false,
              "a `:` inside a value",
              "the value in quotes, or a new line with the same indentation"),
          new Translation(
              "could not find expected ':'",
              true,
              "a name without `:`",
              "a name and `: ` after it"),
          new Translation(
              "mapping keys are not allowed", false, "a name can't stand here", "a new line"),
          new Translation(
              "sequence entries are not allowed",
              false,
              "a list can't start here",
              "`- ` on a new line"),
          new Translation(
              "expected <block end>",
              false,
              "this does not line up with the lines above",
              "the same indentation"),
          new Translation(
              "expected ',' or ']'",
              false,
              "a list in brackets goes on wrongly here",
              "`,` or `]`"),
          new Translation(
              "expected ',' or '}'", false, "fields in braces go on wrongly here", "`,` or `}`"),
          new Translation(
              "found unexpected end of stream",
              true,
              "a quote that is never closed",
              "a closing quote"),
          new Translation(
              "found unexpected document separator",
              true,
              "a quote that is never closed",
              "a closing quote"),
          new Translation(
              "escape",
              false,
              "unknown escape in double quotes",
              "`\\\\` for a backslash, or single quotes"),
          new Translation(
              "indicator",
              false,
              "unknown sign after `|` or `>`",
              "nothing, `-`, `+` or an indentation from 1 to 9"),
          new Translation(
              "expected a comment or a line break", false, "text after `|` or `>`", "a new line"),
          new Translation("expected the node content", false, "a value is missing here", "a value"),
          new Translation(
              "expected '<document start>'",
              false,
              "text after the end of the document",
              "nothing more"));

  static SyntaxFault of(RuntimeException thrown) {
    if (thrown instanceof MarkedYAMLException marked) {
      String said = marked.getContext() + "; " + marked.getProblem();
      for (Translation translation : TRANSLATIONS) {
        if (said.contains(translation.said())) {
          Mark mark =
              translation.whereItBegan() ? marked.getContextMark() : marked.getProblemMark();
          return new SyntaxFault(
              translation.what(), translation.right(), Optional.ofNullable(mark));
        }
      }
      return new SyntaxFault(
          "this can't be read as YAML", "", Optional.ofNullable(marked.getProblemMark()));
    }
    return new SyntaxFault("what follows here can't be read as YAML", "", Optional.empty());
  }
}
