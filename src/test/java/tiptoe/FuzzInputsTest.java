package tiptoe;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import com.code_intelligence.jazzer.junit.FuzzTest;
import java.io.IOException;
import java.lang.reflect.Constructor;
import java.lang.reflect.Method;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

/**
 * Every input kept for a fuzz test, the ones it starts from and the ones it found, run once without
 * the fuzzer, which would instrument all classes of all tests.
 */
class FuzzInputsTest {
  private static final Path INPUTS = Path.of("src/test/resources");

  private static List<Path> files() throws IOException {
    try (Stream<Path> all = Files.walk(INPUTS)) {
      return all.filter(Files::isRegularFile)
          .filter(file -> file.getParent().getParent().toString().endsWith("FuzzInputs"))
          .sorted()
          .toList();
    }
  }

  private static Object fuzz(Path folder) throws ReflectiveOperationException {
    String path = INPUTS.relativize(folder).toString().replaceAll("[/\\\\]", ".");
    Constructor<?> made =
        Class.forName(path.substring(0, path.length() - "Inputs".length()))
            .getDeclaredConstructor();
    made.setAccessible(true);
    return made.newInstance();
  }

  private static Method method(Path file, Object fuzz) throws NoSuchMethodException {
    String name = file.getParent().getFileName().toString();
    Method method = fuzz.getClass().getDeclaredMethod(name, byte[].class);
    method.setAccessible(true);
    return method;
  }

  @TestFactory
  List<DynamicTest> everyInputIsTakenOrRefusedWithAMessage() throws IOException {
    List<DynamicTest> tests = new ArrayList<>();
    for (Path file : files()) {
      tests.add(
          DynamicTest.dynamicTest(
              INPUTS.relativize(file).toString(),
              () -> {
                Object fuzz = fuzz(file.getParent().getParent());
                method(file, fuzz).invoke(fuzz, Files.readAllBytes(file));
              }));
    }
    return tests;
  }

  @Test
  void everyFuzzTestHasInputsToStartFrom() throws IOException, ReflectiveOperationException {
    List<String> without = new ArrayList<>();
    List<Path> inputs = files();
    assertFalse(inputs.isEmpty());
    for (Path folder :
        inputs.stream().map(file -> file.getParent().getParent()).distinct().toList()) {
      for (Method method : fuzz(folder).getClass().getDeclaredMethods()) {
        Path own = folder.resolve(method.getName());
        if (method.isAnnotationPresent(FuzzTest.class)
            && inputs.stream().noneMatch(file -> file.startsWith(own))) {
          without.add(own.toString());
        }
      }
    }
    assertEquals(List.of(), without);
  }
}
