package tiptoe.report;

import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.UUID;
import tiptoe.wording.PlainText;

/** Writes a calendar that others read: iCalendar (RFC 5545), days without a time of day. */
final class Calendar {
  /** The most octets of a line without its end (section 3.1). */
  static final int LONGEST_LINE = 75;

  private static final DateTimeFormatter MOMENT =
      DateTimeFormatter.ofPattern("uuuuMMdd'T'HHmmss'Z'").withZone(ZoneOffset.UTC);

  private final StringBuilder text = new StringBuilder();
  private final String stamp;

  /**
   * A calendar without events.
   *
   * @param now when it is made
   */
  Calendar(Instant now) {
    stamp = MOMENT.format(now);
    line("BEGIN", "VCALENDAR");
    line("VERSION", "2.0");
    line("PRODID", "-//Tiptoe//Due//EN");
    line("CALSCALE", "GREGORIAN");
    line("METHOD", "PUBLISH");
  }

  /** The same for the same thing of the same record, so that a later calendar replaces it. */
  static String uid(String record, String thing) {
    byte[] name = (record + "/" + thing).getBytes(StandardCharsets.UTF_8);
    return UUID.nameUUIDFromBytes(name).toString();
  }

  /**
   * Adds an event.
   *
   * @param first the first day, or a moment with its offset: ISO 8601
   * @param last the last day or moment
   */
  void event(String uid, String first, String last, String summary, String description) {
    line("BEGIN", "VEVENT");
    line("UID", uid);
    line("DTSTAMP", stamp);
    if (first.length() > 10 || last.length() > 10) {
      line("DTSTART", moment(first));
      if (!moment(last).equals(moment(first))) {
        line("DTEND", moment(last));
      }
    } else {
      line("DTSTART;VALUE=DATE", day(LocalDate.parse(first)));
      // The end is not part of it.
      line("DTEND;VALUE=DATE", day(LocalDate.parse(last).plusDays(1)));
    }
    line("SUMMARY", escaped(summary));
    line("DESCRIPTION", escaped(description));
    line("CLASS", "CONFIDENTIAL");
    line("TRANSP", "TRANSPARENT");
    line("END", "VEVENT");
  }

  String text() {
    return text + "END:VCALENDAR\r\n";
  }

  private static String moment(String iso) {
    return iso.length() > 10
        ? MOMENT.format(OffsetDateTime.parse(iso))
        : MOMENT.format(LocalDate.parse(iso).atStartOfDay(ZoneOffset.UTC));
  }

  private static String day(LocalDate day) {
    return DateTimeFormatter.BASIC_ISO_DATE.format(day);
  }

  /** TEXT of section 3.3.11. */
  static String escaped(String value) {
    return PlainText.lines(value)
        .replace("\\", "\\\\")
        .replace(";", "\\;")
        .replace(",", "\\,")
        .replace("\n", "\\n");
  }

  private void line(String name, String value) {
    text.append(folded(name + ":" + value)).append("\r\n");
  }

  /** A line in pieces, each behind the first begun by a space; no letter is torn. */
  static String folded(String line) {
    StringBuilder folded = new StringBuilder();
    int octets = 0;
    for (int at = 0; at < line.length(); ) {
      int letter = line.codePointAt(at);
      int size = Character.toString(letter).getBytes(StandardCharsets.UTF_8).length;
      if (octets + size > LONGEST_LINE) {
        folded.append("\r\n ");
        octets = 1;
      }
      folded.appendCodePoint(letter);
      octets += size;
      at += Character.charCount(letter);
    }
    return folded.toString();
  }
}
