package org.mainsgate.source;

import org.yaml.snakeyaml.error.Mark;
import org.yaml.snakeyaml.events.AliasEvent;
import org.yaml.snakeyaml.events.CollectionStartEvent;
import org.yaml.snakeyaml.events.NodeEvent;
import org.yaml.snakeyaml.events.ScalarEvent;
import org.yaml.snakeyaml.tokens.DirectiveToken;
import org.yaml.snakeyaml.tokens.KeyToken;
import org.yaml.snakeyaml.tokens.Token;

/**
 * What the parser takes and we do not: the parts of YAML that our subset leaves out, and what is no
 * YAML 1.2 at all.
 */
final class Subset {

  private final SourceText source;
  private final Complaints complaints;
  private boolean kept = true;

  Subset(SourceText source, Complaints complaints) {
    this.source = source;
    this.complaints = complaints;
  }

  /** Whether the file, without what was refused so far, still means what its writer meant. */
  boolean isKept() {
    return kept;
  }

  /** Refuses something that may be left out. */
  void refuse(int place, String what, String right) {
    complaints.add(source.position(place), what + " is not allowed here", right);
  }

  /** Refuses something without which the rest has another meaning. */
  void refuseAndStop(int place, String what, String right) {
    kept = false;
    refuse(place, what, right);
  }

  void complainAndStop(Position at, String what, String right) {
    kept = false;
    complaints.add(at, what, right);
  }

  /** Checks what can be told from the parser's tokens only. */
  void checkToken(Token token) {
    int start = place(token.getStartMark());
    int end = place(token.getEndMark());
    if (token instanceof DirectiveToken) {
      refuse(start, "a directive", "a file without lines that start with `%`");
    } else if (token instanceof KeyToken && end > start) {
      // Before a name that just stands there the token has no length; this one is the sign itself.
      refuse(
          start, "a name that starts with `?`", "a name and `: ` after it, or the name in quotes");
    }
    // The parser takes a comment right after a bracket or a quote; to YAML it is none there.
    if (end > start && isAt(end, '#') && " \t\n".indexOf(source.text().charAt(end - 1)) < 0) {
      complainAndStop(
          source.position(end), "a comment right after a value", "a space before the `#`");
    }
  }

  void checkDecoration(NodeEvent node, int start) {
    if (!(node instanceof AliasEvent) && node.getAnchor() != null) {
      refuse(start, "an anchor", "the value without " + Visible.quoted("&" + node.getAnchor()));
    }
    boolean tagged =
        (node instanceof ScalarEvent scalar && scalar.getTag() != null)
            || (node instanceof CollectionStartEvent collection && collection.getTag() != null);
    if (tagged) {
      refuse(start, "a tag", "the value without its `!`, or in quotes");
    }
  }

  void checkText(Text text, Spelling spelling, int leastIndentation) {
    switch (spelling.style()) {
      case DOUBLE_QUOTED -> {
        checkEscapes(text);
        checkIndentation(spelling.start(), spelling.end(), leastIndentation);
      }
      case SINGLE_QUOTED -> checkIndentation(spelling.start(), spelling.end(), leastIndentation);
      case LITERAL, FOLDED -> checkBlock(text);
      case PLAIN, AS_IT_IS -> checkPlain(text);
    }
  }

  /**
   * Checks that each further line of what stands in brackets or quotes starts far enough to the
   * right, with spaces: the parser is content with less.
   */
  void checkIndentation(int start, int end, int least) {
    String text = source.text();
    for (int i = text.indexOf('\n', start);
        least > 0 && 0 <= i && i < end;
        i = text.indexOf('\n', i + 1)) {
      int first = i + 1;
      while (isAt(first, ' ')) {
        first++;
      }
      boolean empty = first >= end || isAt(first, '\n') || isAt(first, '\r') || isAt(first, '#');
      if (first - i - 1 < least && !empty) {
        String spaces = least == 1 ? "a space" : least + " spaces";
        complainAndStop(
            source.position(first), "this line starts too far left", spaces + " or more before it");
        return;
      }
    }
  }

  // What looks like its content may be a comment to YAML, by a matter of spaces.
  private void checkBlock(Text text) {
    if (text.value().isBlank()) {
      String right = "the text, further right than the line above, or `\"\"`";
      complainAndStop(text.at(), "a text with nothing in it", right);
    }
  }

  private void checkPlain(Text text) {
    if (text.value().equals("-")) {
      complainAndStop(text.at(), "a hyphen alone is no value", "the hyphen in quotes");
    }
  }

  // One complaint a text: finding the place of a char walks the whole of it.
  private void checkEscapes(Text text) {
    String value = text.value();
    int next;
    for (int i = 0; i < value.length(); i = next) {
      int c = value.codePointAt(i);
      next = i + Character.charCount(c);
      String fault = PlainText.isAlwaysAllowed(c) ? null : PlainText.faultOf(c);
      if (fault != null) {
        complainAndStop(text.at(i), fault, "the text without it");
        return;
      }
    }
  }

  private boolean isAt(int place, char c) {
    return place < source.text().length() && source.text().charAt(place) == c;
  }

  private int place(Mark mark) {
    return source.indexOfCodePoint(mark.getIndex());
  }
}
