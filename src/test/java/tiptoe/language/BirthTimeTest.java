package tiptoe.language;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.file.Path;
import java.time.ZoneId;
import java.time.ZonedDateTime;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** How a moment is said and which of several is likelier is common practice, no source. */
class BirthTimeTest {
  // A Wednesday.
  private static final ZonedDateTime NOW =
      ZonedDateTime.of(2026, 3, 4, 10, 0, 0, 0, ZoneId.of("Europe/London"));

  private static TypedText typed;

  @BeforeAll
  static void loadSpellings() throws IOException {
    typed = TypedText.load(Path.of("grammars/spellings.txt"));
  }

  private static String read(String text, ZonedDateTime now) {
    return BirthTime.of(typed.utterance(text), now)
        .map(birth -> birth.moment() + (birth.doubtful() ? " ?" : ""))
        .orElse("nothing");
  }

  /** A question mark: it may be another moment, so that it is to be read back. */
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          born at ten past four                                       | 2026-03-04T04:10 ?
          born at four fifteen this morning                           | 2026-03-04T04:15
          born this morning at twenty five to six                     | 2026-03-04T05:35
          born at sixteen twenty                                      | 2026-03-03T16:20 ?
          born at quarter to six in the morning                       | 2026-03-04T05:45 ?
          born yesterday at half past nine in the evening             | 2026-03-03T21:30
          the baby was born yesterday at sixteen twenty               | 2026-03-03T16:20
          she was born yesterday evening at a quarter past eight      | 2026-03-03T20:15
          born yesterday at ten past four                             | 2026-03-03T16:10 ?
          born today at ten past four                                 | 2026-03-04T04:10
          born on the third of march at quarter to six in the morning | 2026-03-03T05:45
          born on march the third at twenty two forty                 | 2026-03-03T22:40
          born on 3 March 2026 at 05:45                               | 2026-03-03T05:45
          born on the twenty eighth of february at noon               | 2026-02-28T12:00
          born on the twenty eighth of february at midnight           | 2026-02-28T00:00 ?
          time of birth oh four ten                                   | 2026-03-04T04:10 ?
          time of birth was ten twenty                                | 2026-03-03T22:20 ?
          date and time of birth the second of march at oh four oh five | 2026-03-02T04:05
          born today at 0410                                          | 2026-03-04T04:10
          born yesterday at 16:20                                     | 2026-03-03T16:20
          born yesterday at 1620 hours                                | 2026-03-03T16:20
          born yesterday at 4:15 pm                                   | 2026-03-03T16:15
          born the day before yesterday at seven minutes past one p m | 2026-03-02T13:07
          born yesterday at sixteen hundred hours                     | 2026-03-03T16:00
          born at eleven last night                                   | 2026-03-03T23:00 ?
          born last night at two                                      | 2026-03-04T02:00 ?
          born on monday at four in the afternoon                     | 2026-03-02T16:00 ?
          born on wednesday at four in the afternoon                  | 2026-02-25T16:00 ?
          born yesterday at half four                                 | 2026-03-03T16:30 ?
          born yesterday at quarter to twelve in the morning          | 2026-03-03T11:45
          born yesterday at ten past twelve in the morning            | 2026-03-03T00:10 ?
          """)
  void readsAMoment(String said, String expected) {
    assertEquals(expected, read(said, NOW));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "born at about ten past four",
        "I think born at ten past four",
        "born at ten past four I think",
        "born around half past nine in the evening yesterday",
        "mother was born on the third of march at ten past four",
        "his brother was born yesterday at ten past four",
        "the other twin was born at ten past four",
        "when was he born?",
        "born at ten past four?",
        "not born at ten past four",
        "due on the third of march at ten past four",
        "born on the third of march",
        "born on the fifth of march at ten past four",
        "born on the third of january at ten past four",
        "born on the third of march twenty twenty five at ten past four",
        "born on the thirtieth of february at ten past four",
        "born today at eleven in the morning",
        "born this morning at sixteen twenty",
        "born yesterday this morning at ten past four",
        "born at ten seventy",
        "born at twenty five",
        "born at four pounds ten",
        "born at thirty nine weeks"
      })
  void takesNothingElseForAMoment(String said) {
    assertEquals("nothing", read(said, NOW));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          born on the thirtieth of december at oh four ten | 2025-12-30T04:10
          born yesterday at sixteen twenty                 | 2026-01-01T16:20
          born at ten past four                            | 2026-01-01T16:10 ?
          """)
  void findsTheLatestThatIsPast(String said, String expected) {
    assertEquals(expected, read(said, NOW.withMonth(1).withDayOfMonth(2).withHour(1)));
  }

  /** In 2026 the clocks of the United Kingdom go from 01:00 to 02:00 on 29 March. */
  @ParameterizedTest
  @ValueSource(
      strings = {"born today at oh one thirty", "born today at half past one in the morning"})
  void takesNoHourThatTheClocksLeftOut(String said) {
    assertEquals("nothing", read(said, NOW.withDayOfMonth(29)));
  }
}
