package org.mainsgate.architecture;

import static com.tngtech.archunit.base.DescribedPredicate.not;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAPackage;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.tngtech.archunit.base.DescribedPredicate;
import com.tngtech.archunit.core.domain.AccessTarget.CodeUnitAccessTarget;
import com.tngtech.archunit.core.domain.JavaAccess;
import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.lang.syntax.elements.GivenClassesConjunction;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.jspecify.annotations.NullMarked;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** The arrows between the rooms, and what only one room may touch. */
class RoomsTest {

  private static final JavaClasses CLASSES =
      new ClassFileImporter()
          .withImportOption(ImportOption.Predefined.DO_NOT_INCLUDE_TESTS)
          .importPackages("org.mainsgate");

  /** The skeleton alone has more classes than this; fewer means that the import has gone wrong. */
  private static final int FEWEST_CLASSES = 11;

  /** The rooms, in the order of the arrows. */
  private enum Room {
    QUANTITY,
    SOURCE,
    FORMULA,
    RULESET,
    VERDICT,
    EVIDENCE,
    AGENDA,
    STORE,
    TRIAL,
    REPORT,
    DESK,
    SIGNATURE,
    SEAL,
    CLI;

    /** The rooms that this one may know. */
    Set<Room> known() {
      return switch (this) {
        case QUANTITY, SOURCE -> Set.of();
        case FORMULA -> Set.of(QUANTITY, SOURCE);
        case RULESET -> Set.of(QUANTITY, SOURCE, FORMULA);
        case VERDICT -> Set.of(QUANTITY, SOURCE, FORMULA, RULESET);
        case EVIDENCE -> Set.of(QUANTITY, SOURCE, FORMULA, RULESET, VERDICT);
        case AGENDA, STORE, TRIAL -> Set.of(QUANTITY, SOURCE, FORMULA, RULESET, VERDICT, EVIDENCE);
        case REPORT -> Set.of(QUANTITY, SOURCE, FORMULA, RULESET, VERDICT, EVIDENCE, AGENDA);
        case DESK ->
            Set.of(QUANTITY, SOURCE, FORMULA, RULESET, VERDICT, EVIDENCE, AGENDA, STORE, REPORT);
        case SIGNATURE -> Set.of();
        case SEAL -> EnumSet.complementOf(EnumSet.of(SEAL, CLI, TRIAL));
        case CLI -> EnumSet.allOf(Room.class);
      };
    }

    String folder() {
      return name().toLowerCase(Locale.ROOT);
    }

    String packages() {
      return "org.mainsgate." + folder() + "..";
    }

    String[] unknownPackages() {
      return Arrays.stream(values())
          .filter(other -> other != this && !known().contains(other))
          .map(Room::packages)
          .toArray(String[]::new);
    }
  }

  private static final DescribedPredicate<JavaAccess<?>> READS_A_CLOCK =
      target(
          "reads a clock",
          (owner, name, parameters) ->
              (owner.startsWith("java.time.") && name.equals("now"))
                  || (owner.equals("java.lang.System")
                      && Set.of("currentTimeMillis", "nanoTime").contains(name))
                  || (owner.equals("java.util.Date")
                      && name.equals("<init>")
                      && parameters.isEmpty())
                  || (owner.equals("java.util.Calendar") && name.equals("getInstance")));

  private static final DescribedPredicate<JavaAccess<?>> USES_A_STANDARD_STREAM =
      target(
          "uses a standard stream",
          (owner, name, parameters) ->
              (owner.equals("java.lang.System")
                      && Set.of("in", "out", "err", "console").contains(name))
                  || (name.equals("printStackTrace") && parameters.isEmpty()));

  private static final DescribedPredicate<JavaAccess<?>> FOLLOWS_A_DEFAULT =
      target(
          "follows the default locale, zone or character set",
          (owner, name, parameters) ->
              (Set.of("java.util.Locale", "java.util.TimeZone").contains(owner)
                      && name.equals("getDefault"))
                  || (owner.equals("java.time.ZoneId") && name.equals("systemDefault"))
                  || (owner.equals("java.nio.charset.Charset") && name.equals("defaultCharset"))
                  || (owner.equals("java.lang.String") && name.equals("formatted"))
                  || (owner.equals("java.lang.String")
                      && name.equals("format")
                      && !parameters.contains("java.util.Locale"))
                  || (owner.equals("java.lang.String")
                      && Set.of("toLowerCase", "toUpperCase").contains(name)
                      && parameters.isEmpty()));

  @Test
  void theClassesWereFound() {
    assertTrue(
        CLASSES.size() >= FEWEST_CLASSES, () -> "only " + CLASSES.size() + " classes were found");
  }

  @Test
  void everyClassStandsInARoom() {
    Set<String> rooms =
        Arrays.stream(Room.values())
            .map(Room::folder)
            .collect(Collectors.toCollection(TreeSet::new));
    Set<String> found =
        CLASSES.stream()
            .map(type -> (type.getPackageName() + ".").split("\\.", -1)[2])
            .collect(Collectors.toCollection(TreeSet::new));
    assertEquals(rooms, found);
  }

  @ParameterizedTest
  @EnumSource(value = Room.class, mode = EnumSource.Mode.EXCLUDE, names = "CLI")
  void theArrowsGoOneWay(Room room) {
    noClasses()
        .that()
        .resideInAPackage(room.packages())
        .should()
        .dependOnClassesThat()
        .resideInAnyPackage(room.unknownPackages())
        .check(CLASSES);
  }

  @Test
  void noPackagesKnowEachOtherInARing() {
    slices().matching("org.mainsgate.(*)..").should().beFreeOfCycles().check(CLASSES);
  }

  @Test
  void verdictKnowsOfASourceOnlyItsPositions() {
    noClasses()
        .that(resideInAPackage(Room.VERDICT.packages()))
        .should()
        .dependOnClassesThat(
            resideInAPackage(Room.SOURCE.packages())
                .and(not(named("org.mainsgate.source.Position"))))
        .check(CLASSES);
  }

  @Test
  void onlySourceKnowsTheYamlParserAndTheConstraintEngine() {
    onlyIn("org.yaml.snakeyaml..", Room.SOURCE);
    onlyIn("org.hibernate..", Room.SOURCE);
    noClasses()
        .that(not(resideInAPackage(Room.SOURCE.packages())))
        .should()
        .dependOnClassesThat(
            resideInAPackage("jakarta.validation..")
                .and(not(resideInAPackage("jakarta.validation.constraints..")))
                .and(not(named("jakarta.validation.Valid"))))
        .check(CLASSES);
  }

  @Test
  void onlySourceStoreAndEvidenceDeclareConstraints() {
    onlyIn("jakarta.validation..", Room.SOURCE, Room.STORE, Room.EVIDENCE);
  }

  @Test
  void onlyReportKnowsThePdfAndTemplateLibraries() {
    onlyIn("org.apache.pdfbox..", Room.REPORT);
    onlyIn("org.apache.fontbox..", Room.REPORT);
    onlyIn("org.apache.xmpbox..", Room.REPORT);
    onlyIn("com.openhtmltopdf..", Room.REPORT);
    onlyIn("gg.jte..", Room.REPORT);
  }

  @Test
  void onlySignatureKnowsTheLibraryOfSignatures() {
    onlyIn("org.bouncycastle..", Room.SIGNATURE);
  }

  @Test
  void onlyTheCommandsKnowTheCommandLineLibrary() {
    onlyIn("picocli..", Room.CLI);
  }

  @Test
  void onlyTheCommandsHaveAClock() {
    outsideOf(Room.CLI)
        .should()
        .dependOnClassesThat()
        .haveFullyQualifiedName("java.time.Clock")
        .check(CLASSES);
    outsideOf(Room.CLI).should().accessTargetWhere(READS_A_CLOCK).check(CLASSES);
  }

  @Test
  void onlyTheCommandsUseTheStandardStreams() {
    outsideOf(Room.CLI).should().accessTargetWhere(USES_A_STANDARD_STREAM).check(CLASSES);
  }

  @Test
  void onlyTheCommandsEndTheProgram() {
    outsideOf(Room.CLI).should().callMethod(System.class, "exit", int.class).check(CLASSES);
  }

  @Test
  void onlyTheCommandsAndTheStoreTouchFiles() {
    outsideOf(Room.CLI, Room.STORE)
        .should()
        .dependOnClassesThat(
            named(
                "java.nio.file.Files",
                "java.nio.channels.FileChannel",
                "java.io.FileInputStream",
                "java.io.FileOutputStream",
                "java.io.FileReader",
                "java.io.FileWriter",
                "java.io.RandomAccessFile"))
        .check(CLASSES);
  }

  @Test
  void onlyTheCommandsFollowADefaultLocaleZoneOrCharacterSet() {
    outsideOf(Room.CLI).should().accessTargetWhere(FOLLOWS_A_DEFAULT).check(CLASSES);
  }

  @Test
  void everyPackageIsNullMarked() {
    Set<String> packages =
        CLASSES.stream().map(JavaClass::getPackageName).collect(Collectors.toSet());
    for (String name : packages) {
      assertTrue(
          CLASSES.getPackage(name).isAnnotatedWith(NullMarked.class),
          () -> name + " has no package-info.java with @NullMarked");
    }
  }

  private static void onlyIn(String packages, Room... rooms) {
    outsideOf(rooms).should().dependOnClassesThat().resideInAPackage(packages).check(CLASSES);
  }

  private static GivenClassesConjunction outsideOf(Room... rooms) {
    return noClasses()
        .that()
        .resideOutsideOfPackages(Arrays.stream(rooms).map(Room::packages).toArray(String[]::new));
  }

  private static DescribedPredicate<JavaClass> named(String... names) {
    return DescribedPredicate.describe(
        "named " + String.join(", ", names), type -> Set.of(names).contains(type.getName()));
  }

  private static DescribedPredicate<JavaAccess<?>> target(String description, Access access) {
    return DescribedPredicate.describe(
        description,
        found ->
            access.matches(
                found.getTargetOwner().getName(), found.getTarget().getName(), parameters(found)));
  }

  private static List<String> parameters(JavaAccess<?> access) {
    return access.getTarget() instanceof CodeUnitAccessTarget code
        ? code.getRawParameterTypes().stream().map(JavaClass::getName).toList()
        : List.of();
  }

  /** A method, constructor or field that a class uses, by its owner, name and parameter types. */
  private interface Access {
    boolean matches(String owner, String name, List<String> parameters);
  }
}
