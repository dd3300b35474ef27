package tiptoe.report;

import java.io.IOException;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.time.ZonedDateTime;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.stream.Stream;
import tiptoe.clinical.PlanItem;
import tiptoe.exam.Handled;
import tiptoe.wording.PlainText;
import tiptoe.wording.RecordWording;
import tiptoe.wording.Words;

/**
 * What is to be done, over many records: what is overdue first, then by date, what has none last.
 *
 * @param rows in that order
 * @param now what they are overdue by
 */
public record DueList(List<Row> rows, ZonedDateTime now) {
  private static final String COLUMNS =
      "overdue,from,to,what,due,name,record-number,born-at,examination,signed,reason,source,item,done,"
          + "how,said-at,said-by";

  /**
   * One thing to be done for one baby.
   *
   * @param examination name of the record that asks for it
   * @param item with its words in the chosen spelling
   * @param overdue whether its last day or moment is over
   */
  public record Row(String examination, RecordWording wording, PlanItem item, boolean overdue) {
    /** Whose it is, or else what the record is called. */
    String whose() {
      return wording.whose().orElse(examination);
    }

    boolean signed() {
      return wording.record().signed();
    }

    private String fact(String id) {
      return wording.record().baby().fact(id).orElse("");
    }

    /** The last day, or else the first; null where no date is known. */
    private String day() {
      return item.to() == null ? item.from() : item.to();
    }
  }

  /**
   * What the records ask for, by their names.
   *
   * @param all whether what was done is in it, too
   */
  public static DueList of(Map<String, RecordWording> records, ZonedDateTime now, boolean all) {
    return new DueList(
        records.entrySet().stream()
            .flatMap(one -> rows(one.getKey(), one.getValue(), now))
            .filter(row -> all || !row.item().isDone())
            .sorted(
                Comparator.comparing(Row::overdue)
                    .reversed()
                    .thenComparing(Row::day, Comparator.nullsLast(Comparator.naturalOrder()))
                    .thenComparing(Row::examination))
            .toList(),
        now);
  }

  private static Stream<Row> rows(String examination, RecordWording wording, ZonedDateTime now) {
    return wording.assessment().plan().stream()
        .map(
            item ->
                new Row(
                    examination,
                    wording,
                    spelled(item, wording.words()),
                    !item.isDone() && isOver(item.to(), now)));
  }

  private static PlanItem spelled(PlanItem item, Words words) {
    return new PlanItem(
        item.id(),
        words.spelled(item.what()),
        words.spelled(item.due()),
        item.from(),
        item.to(),
        words.spelled(item.reason()),
        item.source(),
        item.handled());
  }

  // A day is over when the next one begins, a moment when it has come.
  private static boolean isOver(String to, ZonedDateTime now) {
    if (to == null) {
      return false;
    }
    return to.length() > 10
        ? OffsetDateTime.parse(to).toInstant().isBefore(now.toInstant())
        : LocalDate.parse(to).isBefore(now.toLocalDate());
  }

  private static String state(Row row) {
    return row.item().isDone()
        ? "done"
        : row.overdue() ? "OVERDUE" : row.day() == null ? "no date" : "due";
  }

  public enum Form {
    /** Lines for people. */
    TXT,
    /** Rows of RFC 4180. */
    CSV,
    /** A calendar of RFC 5545. */
    ICS
  }

  public String in(Form form) throws IOException {
    return switch (form) {
      case TXT -> text();
      case CSV -> csv();
      case ICS -> calendar();
    };
  }

  String text() {
    if (rows.isEmpty()) {
      return "nothing is due\n";
    }
    StringBuilder text = new StringBuilder();
    for (Row row : rows) {
      text.append(
          "%-8s %-33s %s: %s (%s %s)%s%s%n"
              .formatted(
                  state(row),
                  when(row.item()),
                  row.whose(),
                  PlainText.line(row.item().what()),
                  row.examination(),
                  row.item().id(),
                  row.signed() ? "" : ", not signed",
                  row.item().handled() == null
                      ? ""
                      : "; " + RecordWording.handled(row.item().handled())));
    }
    return text.toString();
  }

  private static String when(PlanItem item) {
    String dates = Words.dates(minute(item.from()), minute(item.to()));
    return dates.isEmpty() ? item.due() : dates;
  }

  private static String minute(String moment) {
    return moment == null || moment.length() <= 10
        ? moment
        : moment.substring(0, 16).replace('T', ' ');
  }

  String csv() throws IOException {
    return CsvReport.table(COLUMNS, rows.stream().map(DueList::cells).toList());
  }

  private static List<String> cells(Row row) {
    return Stream.of(
            row.overdue() ? "yes" : "no",
            row.item().from(),
            row.item().to(),
            row.item().what(),
            row.item().due(),
            row.fact("name"),
            row.fact("record-number"),
            row.fact("born-at"),
            row.examination(),
            row.signed() ? "yes" : "no",
            row.item().reason(),
            row.item().source(),
            row.item().id(),
            row.item().isDone() ? "yes" : "no",
            handled(row, Handled::how),
            handled(row, Handled::at),
            handled(row, Handled::by))
        .toList();
  }

  private static String handled(Row row, Function<Handled, String> what) {
    return row.item().handled() == null ? "" : what.apply(row.item().handled());
  }

  /** A calendar of what has a date. */
  String calendar() {
    Calendar calendar = new Calendar(now.toInstant());
    for (Row row : rows) {
      if (row.day() != null) {
        calendar.event(
            Calendar.uid(row.examination(), row.item().id()),
            row.item().from() == null ? row.item().to() : row.item().from(),
            row.day(),
            row.item().what() + ": " + row.whose(),
            "%s. %s. Record %s%s."
                .formatted(
                    row.item().due(),
                    row.item().reason(),
                    row.examination(),
                    row.signed() ? "" : ", not signed"));
      }
    }
    return calendar.text();
  }
}
