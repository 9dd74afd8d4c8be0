package org.mainsgate.formula;

import java.util.List;
import org.mainsgate.source.Complaints;
import org.mainsgate.source.Text;

/**
 * The tokens of a formula and the place where the parser stands in them.
 *
 * <p>A fault moves that place to the end, where nothing can be taken any more; only the first one
 * is complained of.
 */
final class Tokens {
  private final Text source;
  private final Complaints complaints;
  private final List<Token> tokens;
  private int next;
  private boolean failed;

  /** The tokens, of which the last is the end. */
  Tokens(Text source, Complaints complaints, List<Token> tokens) {
    this.source = source;
    this.complaints = complaints;
    this.tokens = tokens;
  }

  boolean failed() {
    return failed;
  }

  Token peek() {
    return tokens.get(next);
  }

  /** The token after the next one. */
  Token second() {
    return tokens.get(Math.min(next + 1, tokens.size() - 1));
  }

  Token advance() {
    Token token = peek();
    next = Math.min(next + 1, tokens.size() - 1);
    return token;
  }

  boolean take(String wanted) {
    boolean found = peek().is(wanted);
    if (found) {
      advance();
    }
    return found;
  }

  void expect(String wanted, String expected) {
    if (!take(wanted)) {
      unexpected(expected);
    }
  }

  /** Complains of the next token. */
  Syntax unexpected(String expected) {
    return wrong(peek(), expected);
  }

  /** Complains of a token that was taken for a word. */
  Syntax.Word misplaced(Token token, String expected) {
    wrong(token, expected);
    return new Syntax.Word(token.text(), token.from());
  }

  private Syntax wrong(Token token, String expected) {
    boolean end = token.kind() == Token.Kind.END;
    String what = end ? "the formula ends too early" : "unexpected " + token.quoted();
    return fail(token.from(), what, expected);
  }

  /** Complains, unless something was wrong before, and goes to the end. */
  Syntax fail(int at, String what, String right) {
    if (!failed) {
      complaints.add(source.at(at), what, right);
    }
    failed = true;
    next = tokens.size() - 1;
    return new Syntax.Wrong(new Syntax.Span(at, at, at));
  }

  /** From a character to the end of what was taken last. */
  Syntax.Span span(int from, int at) {
    int last = next == 0 ? 0 : tokens.get(next - 1).to();
    return new Syntax.Span(from, at, Math.max(last, from));
  }
}
