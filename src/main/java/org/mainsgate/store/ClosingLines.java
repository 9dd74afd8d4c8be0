package org.mainsgate.store;

import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.List;

/** The lines that make a closed visit of a draft. */
final class ClosingLines {
  private static final String FIRST = "closed:\n";

  private ClosingLines() {}

  /** The bytes of the closed visit: those of the draft, then the closing lines. */
  static byte[] append(byte[] draft, LocalDate on, List<String> heads) {
    ByteArrayOutputStream closed = new ByteArrayOutputStream();
    closed.writeBytes(wholeLines(draft));
    closed.writeBytes(lines(on, heads).getBytes(StandardCharsets.UTF_8));
    return closed.toByteArray();
  }

  private static String lines(LocalDate on, List<String> heads) {
    StringBuilder lines = new StringBuilder(FIRST).append("  on: ").append(on).append('\n');
    lines.append(heads.isEmpty() ? "  after: []\n" : "  after:\n");
    heads.forEach(head -> lines.append("    - ").append(head).append('\n'));
    return lines.toString();
  }

  private static byte[] wholeLines(byte[] draft) {
    if (draft.length == 0 || draft[draft.length - 1] == '\n') {
      return draft;
    }
    byte[] lines = Arrays.copyOf(draft, draft.length + 1);
    lines[draft.length] = '\n';
    return lines;
  }

  /** Whether the closed visit is this draft with closing lines. */
  static boolean isMadeOf(byte[] closed, byte[] draft) {
    byte[] start = wholeLines(draft);
    byte[] first = FIRST.getBytes(StandardCharsets.UTF_8);
    int end = start.length + first.length;
    return closed.length >= end
        && Arrays.equals(closed, 0, start.length, start, 0, start.length)
        && Arrays.equals(closed, start.length, end, first, 0, first.length);
  }
}
