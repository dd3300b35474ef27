package tiptoe.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.time.ZonedDateTime;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import tiptoe.exam.Examination;
import tiptoe.exam.Review;
import tiptoe.wording.RecordWording;

/** The list of what is due; its calendar against RFC 5545. */
class DueListTest {
  private static final ZonedDateTime APRIL = ZonedDateTime.parse("2026-04-15T09:00:00Z");

  /** Born on 1 March 2026, at noon; breech; a hip ultrasound at 4 to 6 weeks. */
  private static RecordWording breech() {
    Examination examination =
        Records.dictated(List.of("baby girl", "born breech", "hearing screen due"));
    Review review = examination.review("Dr Bea Marlow");
    review.context(
        Map.of(
            "name",
            "Ada Wren, twin; two",
            "record-number",
            "K123456",
            "born-at",
            "2026-03-01T12:00"));
    return Records.wording(examination.record());
  }

  private static DueList due(ZonedDateTime now) {
    Map<String, RecordWording> records = new TreeMap<>();
    records.put("one", breech());
    records.put("two", Records.wording(Records.of("vitamin k given", "born breech")));
    return DueList.of(records, now, false);
  }

  @Test
  void whatIsOverdueComesFirstAndWhatHasNoDateLast() {
    List<String> lines = due(APRIL).text().lines().toList();
    // 4 weeks of age and 4 to 6 weeks of age are over; 6 to 8 weeks are not. NIPE handbook, 2024.
    assertTrue(lines.get(0).startsWith("OVERDUE  by 2026-03-29"), lines.get(0));
    assertTrue(
        lines
            .get(0)
            .endsWith(
                "Ada Wren, twin; two, K123456: hearing screen (one hearing-screen-due), not"
                    + " signed"),
        lines.get(0));
    assertTrue(lines.get(1).startsWith("OVERDUE  2026-03-29 to 2026-04-12"), lines.get(1));
    assertTrue(lines.get(1).contains("hip ultrasound"), lines.get(1));
    assertTrue(lines.get(2).startsWith("due      2026-04-12 to 2026-04-26"), lines.get(2));
    assertTrue(lines.get(lines.size() - 1).startsWith("no date"), lines.toString());
  }

  @Test
  void theLastDayIsNotOverdueYet() {
    assertTrue(
        due(ZonedDateTime.parse("2026-04-12T23:59:00Z"))
            .rows()
            .get(1)
            .item()
            .what()
            .equals("hip ultrasound"));
    assertFalse(due(ZonedDateTime.parse("2026-04-12T23:59:00Z")).rows().get(1).overdue());
    assertTrue(due(ZonedDateTime.parse("2026-04-13T00:00:00Z")).rows().get(1).overdue());
  }

  @Test
  void whatWasDoneIsDueNoMoreAndWhatWasOnlySetGoingIs() {
    Examination examination =
        Records.dictated(
            List.of(
                "baby girl",
                "left ortolani positive",
                "referred to orthopaedics",
                "hip scan requested"));
    examination.review("Sam Fell").tick("nipe-review", "all four again", true, "seen at 7 weeks");
    Map<String, RecordWording> records = Map.of("one", Records.wording(examination.record()));
    String due = DueList.of(records, APRIL, false).text();
    assertFalse(due.contains("hip-unstable") || due.contains("nipe-review"), due);
    String said = " (2026-03-02 12:00 UTC, Dr Ada Quill)\n";
    assertTrue(due.contains("not signed; hip ultrasound: requested" + said), due);
    String all = DueList.of(records, APRIL, true).text();
    assertTrue(
        all.contains("(one hip-unstable), not signed; referral to orthopaedics: made" + said), all);
    assertTrue(all.contains("; seen at 7 weeks (2026-03-02 12:00 UTC, Sam Fell)\n"), all);
    assertEquals(2, all.lines().filter(line -> line.startsWith("done ")).count(), all);
    examination.review("Sam Fell").tick("hip-unstable", "refer", false, null);
    Map<String, RecordWording> after = Map.of("one", Records.wording(examination.record()));
    assertTrue(DueList.of(after, APRIL, false).text().contains("one hip-unstable"));
  }

  @Test
  void aTableHasARowForEach() throws IOException {
    List<String> lines = due(APRIL).csv().lines().toList();
    assertTrue(lines.get(0).startsWith("overdue,from,to,what,due,name"), lines.get(0));
    assertTrue(
        lines
            .get(2)
            .startsWith(
                "yes,2026-03-29,2026-04-12,hip ultrasound,at 4 to 6 weeks of age,\"Ada Wren, twin;"
                    + " two\",K123456"),
        lines.get(2));
    assertEquals(due(APRIL).rows().size() + 1, lines.size());
  }

  @Test
  void aCalendarIsMadeOfFoldedLinesWithTheirEnds() {
    String calendar = due(APRIL).calendar();
    // RFC 5545, section 3.1: CRLF ends a line; lines of no more than 75 octets.
    assertFalse(calendar.replace("\r\n", "").contains("\n"));
    assertTrue(calendar.endsWith("END:VCALENDAR\r\n"));
    for (String line : calendar.split("\r\n")) {
      assertTrue(line.getBytes(StandardCharsets.UTF_8).length <= 75, line);
    }
    String unfolded = calendar.replace("\r\n ", "");
    assertTrue(
        unfolded.contains("SUMMARY:hip ultrasound: Ada Wren\\, twin\\; two\\, K123456\r\n"),
        unfolded);
    // Section 3.6.1: DTEND is not part of the event.
    assertTrue(
        unfolded.contains("DTSTART;VALUE=DATE:20260329\r\nDTEND;VALUE=DATE:20260413\r\n"),
        unfolded);
    // Sections 3.6, 3.6.1: what must be there once.
    for (String once : List.of("\r\nVERSION:2.0\r\n", "\r\nPRODID:")) {
      assertEquals(2, unfolded.split(once, -1).length, once);
    }
    int events = unfolded.split("BEGIN:VEVENT\r\n", -1).length;
    assertEquals(events, unfolded.split("\r\nUID:", -1).length);
    assertEquals(events, unfolded.split("\r\nDTSTAMP:20260415T090000Z\r\n", -1).length);
  }

  @Test
  void aCalendarMadeAgainReplacesTheFirst() {
    assertEquals(
        due(APRIL).calendar().lines().filter(line -> line.startsWith("UID")).toList(),
        due(APRIL.plusDays(1)).calendar().lines().filter(line -> line.startsWith("UID")).toList());
  }

  /** The example of RFC 5545, section 3.3.11. */
  @Test
  void textIsEscaped() {
    assertEquals(
        "Project XYZ Final Review\\nConference Room - 3B\\nCome Prepared.",
        Calendar.escaped("Project XYZ Final Review\nConference Room - 3B\nCome Prepared."));
    assertEquals("a\\\\b\\;c\\,d", Calendar.escaped("a\\b;c,d"));
  }

  @Test
  void noLetterIsTornByFolding() {
    String line = "SUMMARY:" + "é".repeat(200);
    String folded = Calendar.folded(line);
    assertEquals(line, folded.replace("\r\n ", ""));
    for (String part : folded.split("\r\n")) {
      assertTrue(part.getBytes(StandardCharsets.UTF_8).length <= 75);
    }
  }

  @Test
  void nothingIsDueWhereThereIsNoRecord() {
    assertEquals("nothing is due\n", DueList.of(Map.of(), APRIL, false).text());
  }
}
