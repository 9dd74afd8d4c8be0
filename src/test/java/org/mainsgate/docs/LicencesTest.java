package org.mainsgate.docs;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.jar.JarEntry;
import java.util.jar.JarFile;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledIfSystemProperty;
import org.yaml.snakeyaml.LoaderOptions;
import org.yaml.snakeyaml.Yaml;
import org.yaml.snakeyaml.constructor.SafeConstructor;

/** The page of licences lists the libraries that the build takes, and the jar keeps their texts. */
class LicencesTest {
  private static final Path PAGE = Path.of("docs/licences.md");

  /** Written by the build before the tests. */
  private static final Path LIBRARIES = Path.of("target/libraries.txt");

  private static final Pattern LIBRARY =
      Pattern.compile("^ +([^: ]+:[^: ]+):jar:([^: ]+):(?:compile|runtime):(.+?\\.jar)\\b.*$");
  private static final Pattern ROW =
      Pattern.compile("^\\| `([^`]+:[^`]+)` \\| (\\S+) \\| ([^|]+) \\| `([^`]+)` \\| [^|]+ \\|$");
  private static final Pattern TEXT =
      Pattern.compile("META-INF/(?:LICEN[CS]E|NOTICE|COPYING|DEPENDENCIES)[^/]*");

  private record Library(String version, Path jar) {}

  private record Row(String version, String licence, String text) {}

  @Test
  void thePageListsTheLibrariesOfTheBuild() throws IOException {
    Map<String, String> built = new TreeMap<>();
    libraries().forEach((name, library) -> built.put(name, library.version()));
    Map<String, String> listed = new TreeMap<>();
    rows().forEach((name, row) -> listed.put(name, row.version()));
    assertEquals(lines(built), lines(listed));
  }

  @Test
  void everyTextIsTheLicenceThatThePageNames() throws IOException {
    Map<String, Library> libraries = libraries();
    for (Map.Entry<String, Row> entry : rows().entrySet()) {
      Row row = entry.getValue();
      String texts = ours(row.text());
      for (Library library : libraries.values()) {
        for (String name : names(library.jar())) {
          texts += name.equalsIgnoreCase(row.text()) ? read(library.jar(), name) : "";
        }
      }
      assertTrue(texts.contains(words(row.licence())), entry.getKey() + " " + row);
    }
    assertTrue(ours("fonts/LICENSE").contains("Bitstream"));
  }

  /** A text that a library brings itself is the one that the page names for it. */
  @Test
  void aLibrarysOwnTextIsNotPassedOver() throws IOException {
    Map<String, Row> rows = rows();
    for (Map.Entry<String, Library> entry : libraries().entrySet()) {
      TreeSet<String> own = new TreeSet<>();
      for (String name : names(entry.getValue().jar())) {
        String upper = name.toUpperCase(Locale.ROOT);
        if (upper.startsWith("META-INF/LICEN")) {
          own.add(upper);
        }
      }
      String named = rows.get(entry.getKey()).text();
      assertTrue(
          own.isEmpty() || own.contains(named.toUpperCase(Locale.ROOT)),
          entry.getKey() + " has " + own);
    }
  }

  /** Of two entries of one name the jar keeps one, unless the build joins them. */
  @Test
  void noTextHidesAnother() throws IOException {
    String pom = Files.readString(Path.of("pom.xml"));
    Map<String, byte[]> seen = new TreeMap<>();
    int joined = 0;
    for (Library library : libraries().values()) {
      for (String name : names(library.jar())) {
        if (!TEXT.matcher(name.toUpperCase(Locale.ROOT)).matches()) {
          continue;
        }
        byte[] bytes = bytes(library.jar(), name);
        // The shade plugin joins without regard to capitals.
        byte[] other = seen.putIfAbsent(name.toUpperCase(Locale.ROOT), bytes);
        if (other != null && !Arrays.equals(other, bytes)) {
          joined++;
          assertTrue(joins(pom, name), name + " of " + library.jar());
        }
      }
    }
    assertTrue(joined > 0, "no two of one name: this looked at nothing");
  }

  /** The page says that the library can be replaced because nothing is left out or renamed. */
  @Test
  void theJarIsMadeAsThePageSays() throws IOException {
    String pom = Files.readString(Path.of("pom.xml"));
    assertEquals(-1, pom.indexOf("<minimizeJar>"));
    assertEquals(-1, pom.indexOf("<relocation"));
    assertTrue(pom.contains("<openhtmltopdf.version>"));
    assertTrue(Files.readString(PAGE).contains("-Dopenhtmltopdf.version="));
  }

  /** In the profile of releases the jar is there too: whole texts, also where they were joined. */
  @Test
  @EnabledIfSystemProperty(named = "jar", matches = ".+")
  void theJarKeepsEveryText() throws IOException {
    Path jar = Path.of(System.getProperty("jar"));
    for (Row row : rows().values()) {
      assertTrue(read(jar, row.text()).contains(words(row.licence())), row.toString());
    }
    assertEquals(ours("fonts/LICENSE"), read(jar, "fonts/LICENSE"));
    for (Map.Entry<String, Library> entry : libraries().entrySet()) {
      for (String name : names(entry.getValue().jar())) {
        if (TEXT.matcher(name.toUpperCase(Locale.ROOT)).matches()) {
          String text = read(entry.getValue().jar(), name).strip();
          assertTrue(
              names(jar).stream()
                  .filter(kept -> kept.equalsIgnoreCase(name))
                  .anyMatch(kept -> holds(jar, kept, text)),
              entry.getKey() + ": " + name);
        }
      }
    }
  }

  /** Joined texts may end their lines in another way. */
  private static boolean holds(Path jar, String name, String text) {
    try {
      return read(jar, name).replace("\r\n", "\n").contains(text.replace("\r\n", "\n"));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** In the profile of releases the list for machines is there too. */
  @Test
  @EnabledIfSystemProperty(named = "bom", matches = ".+")
  void theListForMachinesSaysTheSame() throws IOException {
    Map<String, Row> rows = rows();
    Map<?, ?> bom = (Map<?, ?>) json(Path.of(System.getProperty("bom")));
    Map<String, String> versions = new TreeMap<>();
    for (Object each : (List<?>) bom.get("components")) {
      Map<?, ?> part = (Map<?, ?>) each;
      String name = part.get("group") + ":" + part.get("name");
      versions.put(name, String.valueOf(part.get("version")));
      Row row = rows.get(name);
      assertNotNull(row, name);
      String licence = String.valueOf(part.get("licenses"));
      assertTrue(
          Arrays.stream(row.licence().split("[()]"))
              .map(String::strip)
              .anyMatch(word -> licence.matches(".*(id|name)=" + Pattern.quote(word) + "[,}].*")),
          name + ": " + licence + ", on the page " + row.licence());
      assertTrue(String.valueOf(part.get("hashes")).contains("SHA-256"), name);
    }
    Map<String, String> listed = new TreeMap<>();
    rows.forEach((name, row) -> listed.put(name, row.version()));
    assertEquals(lines(listed), lines(versions));
    assertEquals(null, bom.get("serialNumber"));
    assertEquals(null, ((Map<?, ?>) bom.get("metadata")).get("timestamp"));
  }

  private static boolean joins(String pom, String name) {
    return pom.toUpperCase(Locale.ROOT)
        .contains("<RESOURCE>" + name.toUpperCase(Locale.ROOT) + "</RESOURCE>");
  }

  /** Some words of a licence that stand in its text and in no other's. */
  private static String words(String licence) {
    return switch (licence) {
      case "Apache-2.0" -> "TERMS AND CONDITIONS FOR USE, REPRODUCTION, AND DISTRIBUTION";
      case "LGPL-2.1-or-later" -> "GNU LESSER GENERAL PUBLIC LICENSE";
      case "MIT", "MIT (Bouncy Castle Licence)" -> "Permission is hereby granted, free of charge";
      default -> throw new AssertionError("say here how to know the text of " + licence);
    };
  }

  private static Map<String, Library> libraries() throws IOException {
    Map<String, Library> found = new TreeMap<>();
    for (String line : Files.readAllLines(LIBRARIES)) {
      Matcher matcher = LIBRARY.matcher(line);
      if (matcher.matches()) {
        found.put(matcher.group(1), new Library(matcher.group(2), Path.of(matcher.group(3))));
      } else {
        assertTrue(line.isBlank() || line.startsWith("The following"), line);
      }
    }
    return found;
  }

  private static Map<String, Row> rows() throws IOException {
    Map<String, Row> rows = new TreeMap<>();
    for (String line : Files.readAllLines(PAGE)) {
      Matcher row = ROW.matcher(line);
      if (row.matches()) {
        rows.put(row.group(1), new Row(row.group(2), row.group(3), row.group(4)));
      }
    }
    return rows;
  }

  private static String lines(Map<String, String> versions) {
    return versions.entrySet().stream()
        .map(entry -> entry.getKey() + " " + entry.getValue())
        .collect(Collectors.joining("\n"));
  }

  private static List<String> names(Path jar) throws IOException {
    try (JarFile file = new JarFile(jar.toFile())) {
      return file.stream().map(JarEntry::getName).toList();
    }
  }

  private static byte[] bytes(Path jar, String name) throws IOException {
    try (JarFile file = new JarFile(jar.toFile())) {
      JarEntry entry = file.getJarEntry(name);
      if (entry == null) {
        return new byte[0];
      }
      try (InputStream in = file.getInputStream(entry)) {
        return in.readAllBytes();
      }
    }
  }

  private static String read(Path jar, String name) throws IOException {
    return new String(bytes(jar, name), UTF_8);
  }

  /** A text of our own resources, or nothing. */
  private static String ours(String name) throws IOException {
    Path file = Path.of("src/main/resources").resolve(name);
    return Files.exists(file) ? Files.readString(file) : "";
  }

  /** JSON is YAML. */
  private static Object json(Path file) throws IOException {
    return new Yaml(new SafeConstructor(new LoaderOptions())).load(Files.readString(file));
  }
}
