package org.mainsgate.architecture;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.StringReader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.Test;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.Node;
import org.w3c.dom.NodeList;
import org.xml.sax.InputSource;

/**
 * Each plugin and each library of both builds has one exact version, also where Maven would choose
 * one by itself.
 */
class PinnedVersionsTest {
  private static final List<Path> BUILDS =
      List.of(Path.of("pom.xml"), Path.of("src/judges/pom.xml"));

  /** What Maven runs for a jar without being asked, from `clean` to `deploy` and `site`. */
  private static final Set<String> BY_ITSELF =
      Set.of("clean", "resources", "compiler", "surefire", "jar", "install", "deploy", "site");

  /**
   * A number, and behind it perhaps a word such as `Final`; no range, no property, no word alone.
   */
  private static final Pattern EXACT =
      Pattern.compile("[0-9]+(\\.[0-9]+)*([.-][A-Za-z][A-Za-z0-9]*)?");

  /** A goal by the short name of its plugin, as in `mvn spotless:apply`. */
  private static final Pattern SHORT = Pattern.compile("\\bmvn -[^`|&\\n]*?\\s([a-z]+):[a-zA-Z-]+");

  private static final Pattern PROPERTY = Pattern.compile("\\$\\{([^}]+)}");

  @Test
  void everyVersionIsExact() throws Exception {
    for (Path build : BUILDS) {
      assertEquals(List.of(), complaints(Files.readString(build)), build.toString());
    }
  }

  @Test
  void theGoalsThatOurPagesAndScriptsNameArePinnedToo() throws Exception {
    Set<String> pinned = pinned(Files.readString(BUILDS.get(0)));
    Set<String> named = new TreeSet<>();
    for (Path file : pagesAndScripts()) {
      Matcher goal = SHORT.matcher(Files.readString(file));
      while (goal.find()) {
        named.add(goal.group(1));
      }
    }
    assertTrue(named.contains("spotless"), named.toString());
    for (String name : named) {
      assertTrue(
          pinned.stream()
              .anyMatch(
                  p ->
                      p.equals(name + "-maven-plugin")
                          || p.equals("maven-" + name + "-plugin")
                          || p.equals(name + "-maven")),
          name + ": is called by name, and no plugin of that name has a version in " + pinned);
    }
  }

  @Test
  void whatIsNotExactIsFound() throws Exception {
    String pom = Files.readString(BUILDS.get(0));
    for (String bad :
        List.of("[2.6,3)", "LATEST", "RELEASE", "2.8-SNAPSHOT", "2.+", "${nowhere}", "")) {
      String other =
          pom.replaceFirst(
              "<snakeyaml.version>[^<]+", "<snakeyaml.version>" + Matcher.quoteReplacement(bad));
      assertEquals(1, complaints(other).size(), bad + complaints(other));
    }
    assertEquals(
        List.of("maven-clean-plugin: no version"),
        complaints(
            pom.replaceFirst(
                "(maven-clean-plugin</artifactId>)\\s*<version>[^<]+</version>", "$1")));
    assertEquals(
        List.of("clean: Maven chooses the version"),
        complaints(pom.replaceFirst("maven-clean-plugin", "maven-other-plugin")));
    assertEquals(
        List.of("picocli: no version"),
        complaints(pom.replace("<version>${picocli.version}</version>", "")));
  }

  private static List<String> complaints(String pom) throws Exception {
    Document document = read(pom);
    Map<String, String> properties = properties(document);
    List<String> complaints = new ArrayList<>();
    Set<String> pinned = pinned(pom);
    Set<String> managed = new HashSet<>();
    for (Element dependency : elements(document, "dependency")) {
      if (under(dependency, "dependencyManagement")) {
        managed.add(child(dependency, "groupId") + ":" + child(dependency, "artifactId"));
      }
    }
    for (String kind : List.of("plugin", "dependency", "path", "extension", "parent")) {
      for (Element element : elements(document, kind)) {
        if (child(element, "artifactId").isEmpty()) {
          continue;
        }
        String name = child(element, "artifactId");
        String version = resolved(child(element, "version"), properties);
        boolean elsewhere =
            (kind.equals("plugin") && pinned.contains(name) && under(element, "profile"))
                || (kind.equals("dependency") && isManaged(element, managed));
        if (!has(element, "version")) {
          if (!elsewhere) {
            complaints.add(name + ": no version");
          }
        } else if (!EXACT.matcher(version).matches() || version.endsWith("SNAPSHOT")) {
          complaints.add(name + ": `" + version + "` is not one exact version");
        }
      }
    }
    for (String name : new TreeSet<>(BY_ITSELF)) {
      if (elements(document, "plugin").stream()
          .noneMatch(
              e ->
                  !under(e, "profile")
                      && child(e, "artifactId").equals("maven-" + name + "-plugin"))) {
        complaints.add(name + ": Maven chooses the version");
      }
    }
    return complaints;
  }

  /**
   * A version for it stands in dependencyManagement, or in the list that JUnit publishes of its
   * own.
   */
  private static boolean isManaged(Element dependency, Set<String> managed) {
    String group = child(dependency, "groupId");
    return managed.contains(group + ":" + child(dependency, "artifactId"))
        || (group.startsWith("org.junit.") && managed.contains("org.junit:junit-bom"));
  }

  private static Set<String> pinned(String pom) throws Exception {
    Set<String> names = new TreeSet<>();
    for (Element plugin : elements(read(pom), "plugin")) {
      if (has(plugin, "version")) {
        names.add(child(plugin, "artifactId"));
      }
    }
    return names;
  }

  private static Map<String, String> properties(Document document) {
    Map<String, String> properties = new HashMap<>();
    for (Element block : elements(document, "properties")) {
      NodeList children = block.getChildNodes();
      for (int i = 0; i < children.getLength(); i++) {
        if (children.item(i) instanceof Element property) {
          properties.put(property.getTagName(), property.getTextContent().strip());
        }
      }
    }
    return properties;
  }

  private static String resolved(String version, Map<String, String> properties) {
    return PROPERTY
        .matcher(version)
        .replaceAll(m -> Matcher.quoteReplacement(properties.getOrDefault(m.group(1), m.group())));
  }

  private static Document read(String pom) throws Exception {
    DocumentBuilderFactory factory = DocumentBuilderFactory.newInstance();
    factory.setFeature("http://apache.org/xml/features/disallow-doctype-decl", true);
    return factory.newDocumentBuilder().parse(new InputSource(new StringReader(pom)));
  }

  private static List<Element> elements(Document document, String name) {
    NodeList nodes = document.getElementsByTagName(name);
    List<Element> elements = new ArrayList<>();
    for (int i = 0; i < nodes.getLength(); i++) {
      elements.add((Element) nodes.item(i));
    }
    return elements;
  }

  private static boolean under(Node node, String name) {
    for (Node up = node.getParentNode(); up != null; up = up.getParentNode()) {
      if (up.getNodeName().equals(name)) {
        return true;
      }
    }
    return false;
  }

  private static boolean has(Element element, String name) {
    NodeList children = element.getChildNodes();
    for (int i = 0; i < children.getLength(); i++) {
      if (children.item(i).getNodeName().equals(name)) {
        return true;
      }
    }
    return false;
  }

  /** The text of a direct child, or nothing. */
  private static String child(Element element, String name) {
    NodeList children = element.getChildNodes();
    for (int i = 0; i < children.getLength(); i++) {
      if (children.item(i).getNodeName().equals(name)) {
        return children.item(i).getTextContent().strip();
      }
    }
    return "";
  }

  private static List<Path> pagesAndScripts() throws IOException {
    List<Path> files =
        new ArrayList<>(
            List.of(Path.of("README.md"), Path.of("DEVELOPERS.md"), Path.of(".ci/run")));
    for (String folder : List.of("docs", "src/benchmarks", "src/faults", "src/launcher")) {
      if (!Files.isDirectory(Path.of(folder))) {
        continue;
      }
      try (Stream<Path> below = Files.walk(Path.of(folder))) {
        below
            .filter(Files::isRegularFile)
            .filter(f -> !f.toString().endsWith(".svg"))
            .forEach(files::add);
      }
    }
    return files;
  }
}
