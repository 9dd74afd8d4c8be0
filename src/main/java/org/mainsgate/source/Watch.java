package org.mainsgate.source;

import java.util.function.Consumer;
import org.yaml.snakeyaml.scanner.Scanner;
import org.yaml.snakeyaml.tokens.Token;

/**
 * The parser's scanner, watched: some things that are forbidden can be told from its tokens only,
 * not from the events.
 *
 * @param scanner does the work
 * @param watcher is shown each token once, in the order of the file
 */
record Watch(Scanner scanner, Consumer<Token> watcher) implements Scanner {

  @Override
  public boolean checkToken(Token.ID... choices) {
    return scanner.checkToken(choices);
  }

  @Override
  public boolean checkToken(Token.ID choice) {
    return scanner.checkToken(choice);
  }

  @Override
  public Token peekToken() {
    return scanner.peekToken();
  }

  @Override
  public Token getToken() {
    Token token = scanner.getToken();
    watcher.accept(token);
    return token;
  }

  @Override
  public void resetDocumentIndex() {
    scanner.resetDocumentIndex();
  }
}
