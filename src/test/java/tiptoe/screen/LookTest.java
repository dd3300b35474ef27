package tiptoe.screen;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * NO_COLOR counts when it is there and not empty (no-color.org); LC_ALL goes before LC_CTYPE before
 * LANG (POSIX.1-2017, chapter 8).
 */
class LookTest {
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          TERM=xterm-256color LANG=en_GB.UTF-8            | true  | false
          TERM=xterm LANG=C.utf8                          | true  | false
          TERM=xterm LANG=C.UTF-8 NO_COLOR=1              | false | false
          TERM=xterm LANG=C.UTF-8 NO_COLOR=               | true  | false
          TERM=vt100 LANG=C.UTF-8                         | false | true
          TERM=linux LANG=C.UTF-8                         | true  | true
          TERM=screen-256color LANG=C.UTF-8               | true  | false
          TERM=xterm-mono LANG=C.UTF-8                    | false | false
          TERM=linux LANG=en_GB.ISO-8859-1                | true  | true
          TERM=xterm                                      | true  | true
          TERM=xterm LC_ALL=C LANG=C.UTF-8                | true  | true
          TERM=xterm LC_CTYPE=C.UTF-8 LANG=C              | true  | false
          """)
  void followsTheEnvironment(String environment, boolean coloured, boolean ascii) {
    Map<String, String> variables =
        Stream.of(environment.split(" +"))
            .map(pair -> pair.split("=", 2))
            .collect(Collectors.toMap(pair -> pair[0], pair -> pair[1]));
    assertEquals(new Look(coloured, ascii), Look.of(variables, false));
  }
}
