package org.mainsgate.source;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.yaml.snakeyaml.DumperOptions.ScalarStyle;
import org.yaml.snakeyaml.LoaderOptions;
import org.yaml.snakeyaml.error.Mark;
import org.yaml.snakeyaml.events.AliasEvent;
import org.yaml.snakeyaml.events.CollectionEndEvent;
import org.yaml.snakeyaml.events.CollectionStartEvent;
import org.yaml.snakeyaml.events.DocumentStartEvent;
import org.yaml.snakeyaml.events.Event;
import org.yaml.snakeyaml.events.MappingStartEvent;
import org.yaml.snakeyaml.events.NodeEvent;
import org.yaml.snakeyaml.events.ScalarEvent;
import org.yaml.snakeyaml.events.StreamEndEvent;
import org.yaml.snakeyaml.parser.Parser;
import org.yaml.snakeyaml.parser.ParserImpl;
import org.yaml.snakeyaml.reader.StreamReader;
import org.yaml.snakeyaml.scanner.ScannerImpl;

/**
 * The nodes of one file, grown from the parser's events without recursion.
 *
 * <p>Where something forbidden can be left out and the rest still makes sense, it is left out and
 * the file is followed to its end, so that all complaints come at once.
 */
final class Tree {

  private final SourceText source;
  private final Complaints complaints;
  private final Subset subset;
  private final Parser parser;
  private final Deque<Open> open = new ArrayDeque<>();
  private @Nullable Node root;
  private int documents;
  private int nodes;
  private int lastPlace;

  Tree(SourceText source, String harmless, Complaints complaints) {
    this.source = source;
    this.complaints = complaints;
    this.subset = new Subset(source, complaints);
    // With a line feed at its end the last line counts even if it holds nothing but spaces.
    String ended = harmless.endsWith("\n") ? harmless : harmless + "\n";
    ScannerImpl scanner = new ScannerImpl(new StreamReader(ended), new LoaderOptions());
    this.parser = new ParserImpl(new Watch(scanner, subset::checkToken));
  }

  /**
   * The top node; empty if the file could not be followed to its end, or what was left out changes
   * its meaning.
   */
  Optional<Node> grow() {
    Event event = next();
    while (event != null && !(event instanceof StreamEndEvent) && take(event)) {
      event = next();
    }
    boolean ended = event instanceof StreamEndEvent;
    if (ended && (root == null || (root instanceof Text text && text.isBlank()))) {
      complaints.add(
          new Position(source.name(), 1, 1), "the file is empty", "fields such as `format: 1`");
      return Optional.empty();
    }
    return ended && subset.isKept() ? Optional.ofNullable(root) : Optional.empty();
  }

  // The one place where the parser runs: whatever it throws ends here, as a complaint.
  private @Nullable Event next() {
    try {
      return parser.getEvent();
    } catch (RuntimeException e) {
      SyntaxFault fault = SyntaxFault.of(e);
      int place = fault.mark().map(this::place).orElse(lastPlace);
      complaints.add(source.position(place), fault.what(), fault.right());
      return null;
    }
  }

  /** Whether to go on. */
  private boolean take(Event event) {
    int start = place(event.getStartMark());
    lastPlace = start;
    if (event instanceof DocumentStartEvent) {
      return isFirstDocument(start);
    }
    if (event instanceof NodeEvent node) {
      if (++nodes > StrictYaml.MOST_NODES) {
        complaints.add(
            source.position(start),
            "too many values",
            "at most " + StrictYaml.MOST_NODES + " in a file");
        return false;
      }
      subset.checkDecoration(node, start);
    }
    if (event instanceof AliasEvent) {
      subset.refuseAndStop(start, "an alias", "the value written out");
      skip();
    } else if (event instanceof ScalarEvent scalar) {
      attach(text(scalar, start));
    } else if (event instanceof CollectionStartEvent collection) {
      return enter(start, collection);
    } else if (event instanceof CollectionEndEvent) {
      leave(place(event.getEndMark()));
    }
    return true;
  }

  private boolean isFirstDocument(int start) {
    if (++documents > 1) {
      subset.refuse(start, "a second document", "one document in a file");
      return false;
    }
    return true;
  }

  private boolean enter(int start, CollectionStartEvent event) {
    if (open.size() == StrictYaml.MOST_LEVELS) {
      complaints.add(
          source.position(start),
          "nested too deep",
          "at most " + StrictYaml.MOST_LEVELS + " levels");
      return false;
    }
    boolean fields = event instanceof MappingStartEvent;
    open.push(
        fields ? new OpenFields(start, event.isFlow()) : new OpenItems(start, event.isFlow()));
    return true;
  }

  private void leave(int end) {
    Open closed = open.pop();
    if (closed.inBrackets()) {
      subset.checkIndentation(closed.start(), end, leastIndentation());
    }
    attach(closed.close());
  }

  // Inside other brackets a line may start anywhere, else right of what it belongs to.
  private int leastIndentation() {
    Open around = open.peek();
    return around == null || around.inBrackets() ? 0 : source.position(around.start()).column();
  }

  private void attach(Node node) {
    Open parent = open.peek();
    if (parent == null) {
      root = node;
    } else {
      parent.add(node);
    }
  }

  private void skip() {
    Open parent = open.peek();
    if (parent != null) {
      parent.skip();
    }
  }

  private Text text(ScalarEvent event, int start) {
    Spelling spelling =
        new Spelling(style(event.getScalarStyle()), start, place(event.getEndMark()));
    Text text = new Text(source, start, event.getValue(), spelling);
    subset.checkText(text, spelling, leastIndentation());
    return text;
  }

  private int place(Mark mark) {
    return source.indexOfCodePoint(mark.getIndex());
  }

  private static Spelling.Style style(ScalarStyle style) {
    return switch (style) {
      case SINGLE_QUOTED -> Spelling.Style.SINGLE_QUOTED;
      case DOUBLE_QUOTED -> Spelling.Style.DOUBLE_QUOTED;
      case LITERAL -> Spelling.Style.LITERAL;
      case FOLDED -> Spelling.Style.FOLDED;
      case PLAIN, JSON_SCALAR_STYLE -> Spelling.Style.PLAIN;
    };
  }

  /** A list or fields whose end has not been read yet. */
  private sealed interface Open permits OpenItems, OpenFields {

    int start();

    boolean inBrackets();

    void add(Node node);

    /** Takes notice that something which was refused stood here. */
    void skip();

    Node close();
  }

  private final class OpenItems implements Open {

    private final int start;
    private final boolean inBrackets;
    private final List<Node> items = new ArrayList<>();

    OpenItems(int start, boolean inBrackets) {
      this.start = start;
      this.inBrackets = inBrackets;
    }

    @Override
    public int start() {
      return start;
    }

    @Override
    public boolean inBrackets() {
      return inBrackets;
    }

    @Override
    public void add(Node node) {
      items.add(node);
    }

    @Override
    public void skip() {}

    @Override
    public Node close() {
      return new Items(source, start, items);
    }
  }

  private final class OpenFields implements Open {

    private final int start;
    private final boolean inBrackets;
    private final Map<String, Fields.Field> fields = new LinkedHashMap<>();
    private @Nullable Text key;
    private boolean valueIsDue;

    OpenFields(int start, boolean inBrackets) {
      this.start = start;
      this.inBrackets = inBrackets;
    }

    @Override
    public int start() {
      return start;
    }

    @Override
    public boolean inBrackets() {
      return inBrackets;
    }

    @Override
    public void add(Node node) {
      if (valueIsDue) {
        if (key != null) {
          put(key, node);
        }
      } else {
        key = asKey(node);
      }
      valueIsDue = !valueIsDue;
    }

    @Override
    public void skip() {
      key = null;
      valueIsDue = !valueIsDue;
    }

    @Override
    public Node close() {
      return new Fields(source, start, fields);
    }

    private @Nullable Text asKey(Node node) {
      if (!(node instanceof Text text)) {
        subset.complainAndStop(
            node.at(), "a list or fields can't be the name of a field", "a name");
        return null;
      }
      if (text.value().equals("<<") && !text.quoted()) {
        subset.refuseAndStop(text.start(), "a merge key", "the fields written out");
        return null;
      }
      if (text.value().isEmpty()) {
        subset.complainAndStop(
            text.at(), "a value without a name", "a name and `: ` before the value");
        return null;
      }
      return text;
    }

    private void put(Text name, Node value) {
      Fields.Field first = fields.putIfAbsent(name.value(), new Fields.Field(name, value));
      if (first != null) {
        int line = first.key().at().line();
        String what = Visible.quoted(name.value()) + " stands here twice, first on line " + line;
        complaints.add(name.at(), what, "each name once");
      }
    }
  }
}
