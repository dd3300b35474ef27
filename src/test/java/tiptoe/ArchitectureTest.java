package tiptoe;

import static com.tngtech.archunit.base.DescribedPredicate.describe;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;

import com.tngtech.archunit.base.DescribedPredicate;
import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

/** Data flows one way: a stage may use those before it, never one behind it. */
class ArchitectureTest {
  private static final List<String> FOUNDATIONS =
      List.of("files", "protocol", "grammar", "settings");
  private static final List<String> STAGES =
      List.of(
          "finding",
          "audio",
          "graph",
          "speech",
          "language",
          "exam",
          "clinical",
          "wording",
          "measure",
          "session",
          "report",
          "screen",
          "cli");
  private static final List<String> SOCKET_CLASSES =
      List.of(
          "java.net.Socket",
          "java.net.ServerSocket",
          "java.net.DatagramSocket",
          "java.net.MulticastSocket",
          "java.net.URLConnection",
          "java.net.HttpURLConnection",
          "java.net.JarURLConnection",
          "java.nio.channels.SocketChannel",
          "java.nio.channels.ServerSocketChannel",
          "java.nio.channels.DatagramChannel",
          "java.nio.channels.AsynchronousSocketChannel",
          "java.nio.channels.AsynchronousServerSocketChannel");

  private static final JavaClasses CLASSES =
      new ClassFileImporter()
          .withImportOption(ImportOption.Predefined.DO_NOT_INCLUDE_TESTS)
          .importPackages("tiptoe");

  static Stream<String> foundations() {
    return FOUNDATIONS.stream();
  }

  static Stream<String> stages() {
    return STAGES.stream();
  }

  @ParameterizedTest
  @MethodSource("foundations")
  void aFoundationKnowsNoStageAndNoOtherFoundation(String foundation) {
    String[] others =
        Stream.concat(FOUNDATIONS.stream(), STAGES.stream())
            .filter(name -> !name.equals(foundation))
            .map(ArchitectureTest::packages)
            .toArray(String[]::new);
    noClasses()
        .that()
        .resideInAPackage(packages(foundation))
        .should()
        .dependOnClassesThat()
        .resideInAnyPackage(others)
        .allowEmptyShould(true)
        .check(CLASSES);
  }

  @ParameterizedTest
  @MethodSource("stages")
  void aStageKnowsNoneBehindIt(String stage) {
    String[] behind =
        STAGES.subList(STAGES.indexOf(stage) + 1, STAGES.size()).stream()
            .map(ArchitectureTest::packages)
            .toArray(String[]::new);
    if (behind.length > 0) {
      noClasses()
          .that()
          .resideInAPackage(packages(stage))
          .should()
          .dependOnClassesThat()
          .resideInAnyPackage(behind)
          .allowEmptyShould(true)
          .check(CLASSES);
    }
  }

  @ParameterizedTest
  @CsvSource({
    "graph, audio",
    "language, audio",
    "clinical, audio",
    "clinical, speech",
    "report, speech",
    "measure, speech",
    "report, measure",
    "screen, measure",
    "screen, audio",
    "screen, speech",
    "screen, report",
  })
  void aStageDoesNotKnowWhatIsNotItsBusiness(String stage, String other) {
    noClasses()
        .that()
        .resideInAPackage(packages(stage))
        .should()
        .dependOnClassesThat()
        .resideInAPackage(packages(other))
        .allowEmptyShould(true)
        .check(CLASSES);
  }

  @Test
  void packagesFormNoCycle() {
    slices().matching("tiptoe.(*)..").should().beFreeOfCycles().check(CLASSES);
    slices().matching("tiptoe.(**)").should().beFreeOfCycles().check(CLASSES);
  }

  /** Sending is the one place that talks to a network, and only to the server the user names. */
  @Test
  void nothingButSendingOpensASocket() {
    noClasses()
        .that()
        .resideOutsideOfPackage("tiptoe.report.send..")
        .should()
        .dependOnClassesThat(OPEN_SOCKETS)
        .orShould()
        .callMethod(java.net.URL.class, "openStream")
        .orShould()
        .callMethod(java.net.URL.class, "openConnection")
        .check(CLASSES);
  }

  private static final DescribedPredicate<JavaClass> OPEN_SOCKETS =
      describe(
          "open sockets",
          used ->
              SOCKET_CLASSES.contains(used.getName())
                  || used.getPackageName().startsWith("java.net.http")
                  || used.getPackageName().startsWith("javax.net"));

  private static String packages(String name) {
    return "tiptoe." + name + "..";
  }
}
