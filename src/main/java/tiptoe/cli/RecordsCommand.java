package tiptoe.cli;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import picocli.CommandLine.Command;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.TypeConversionException;
import tiptoe.clinical.Level;
import tiptoe.exam.Event;
import tiptoe.exam.ExamRecord;
import tiptoe.exam.Signature;
import tiptoe.exam.journal.ExamFolder;
import tiptoe.exam.journal.RecordStore;
import tiptoe.exam.journal.StoredExam;
import tiptoe.wording.PlainText;
import tiptoe.wording.ProblemWording;
import tiptoe.wording.RecordWording;
import tiptoe.wording.StoredExamWording;

/** Lists records, or removes some. */
@Command(
    name = "records",
    mixinStandardHelpOptions = true,
    description = {
      "Lists the examinations that are kept, the newest first.",
      "URGENT counts what is to be acted on today or sooner; DUE is the first day of the plan.",
      "What is encrypted or cannot be read is always listed."
    },
    footer = {
      "",
      "Example: tiptoe records",
      "         tiptoe records --unsigned --urgent",
      "         tiptoe records --by Reed --since 2026-03-01",
      "         tiptoe records --remove 2026-03-01-0900-k3f9"
    })
final class RecordsCommand implements Callable<Integer> {
  private static final String ROW = "%-22s %-16s %-16s %-14s %6s %-10s %7s %12s  %s%n";

  @Option(
      names = "--remove",
      paramLabel = "RECORD",
      arity = "1..*",
      description = "Remove these, journal and sound, after asking for each.")
  private List<String> removed = new ArrayList<>();

  @Option(names = "--unsigned", description = "Only what nobody has signed.")
  private boolean unsigned;

  @Option(names = "--urgent", description = "Only where something is to be acted on at once.")
  private boolean urgent;

  @Option(
      names = "--due",
      arity = "0..1",
      paramLabel = "DATE",
      fallbackValue = "",
      converter = Day.class,
      description = "Only with something in the plan by this day; else by today.")
  private LocalDate due;

  @Option(
      names = "--since",
      paramLabel = "DATE",
      converter = Day.class,
      description = "Only what was opened on this day or later.")
  private LocalDate since;

  @Option(
      names = "--by",
      paramLabel = "NAME",
      description = "Only of this person, or a part of it.")
  private String by;

  @Mixin private RecordOptions options;

  @Override
  public Integer call() throws IOException {
    RecordStore store = options.store();
    return removed.isEmpty() ? list(store) : remove(store);
  }

  private int list(RecordStore store) throws IOException {
    List<ExamFolder> exams = store.list();
    if (exams.isEmpty()) {
      Console.err().println("no examination is kept here");
      return 0;
    }
    Console.out()
        .printf(
            ROW, "RECORD", "OPENED", "LABEL", "BY", "URGENT", "DUE", "AGE", "PROGRESS", "STATE");
    int unreadable = 0;
    for (ExamFolder exam : exams) {
      try {
        print(store, exam);
      } catch (IOException e) {
        Console.out().printf(ROW, exam.name(), "-", "-", "-", "-", "-", "-", "-", "cannot be read");
        Console.err().println(exam.name() + ": " + ProblemWording.of(e));
        unreadable++;
      }
    }
    return unreadable == 0 ? 0 : Tiptoe.COULD_NOT;
  }

  private boolean isWanted(RecordWording wording, String who, Optional<LocalDate> day) {
    ExamRecord record = wording.record();
    Optional<LocalDate> opened =
        record.entries().stream()
            .findFirst()
            .map(entry -> LocalDate.ofInstant(entry.at(), ZoneId.systemDefault()));
    return (!unsigned || !record.signed())
        && (!urgent || pressing(wording) > 0)
        && (due == null || day.filter(first -> !first.isAfter(due)).isPresent())
        && (since == null || opened.filter(on -> !on.isBefore(since)).isPresent())
        && (by == null
            || who.toLowerCase(Locale.ROOT).contains(by.toLowerCase(Locale.ROOT).strip()));
  }

  private static long pressing(RecordWording wording) {
    return wording.assessment().flags().stream()
        .filter(flag -> flag.level().compareTo(Level.URGENT) <= 0)
        .count();
  }

  /** The first day on which something of the plan begins, or has to be done. */
  private static Optional<LocalDate> due(RecordWording wording) {
    return wording.assessment().plan().stream()
        .map(item -> item.from() == null ? item.to() : item.from())
        .filter(Objects::nonNull)
        .map(moment -> LocalDate.parse(moment.substring(0, 10)))
        .min(Comparator.naturalOrder());
  }

  /** Who examined, and who signed. */
  private static String who(ExamRecord record) {
    return Stream.concat(
            Stream.ofNullable(record.opened()).map(Event.ExaminationOpened::author),
            record.signatures().stream().map(Signature::name))
        .filter(Objects::nonNull)
        .map(PlainText::line)
        .distinct()
        .collect(Collectors.joining(", "));
  }

  private static String cut(String text, int most) {
    return text.length() <= most ? text : text.substring(0, most - 1) + "…";
  }

  /** Reads a day, such as 2026-03-01; nothing is today. */
  static final class Day implements ITypeConverter<LocalDate> {
    @Override
    public LocalDate convert(String text) {
      try {
        return text.isEmpty() ? LocalDate.now() : LocalDate.parse(text);
      } catch (DateTimeParseException e) {
        throw new TypeConversionException("expected a day such as 2026-03-01, found " + text);
      }
    }
  }

  private void print(RecordStore store, ExamFolder exam) throws IOException {
    if (store.isEncrypted(exam)) {
      Console.out().printf(ROW, exam.name(), "-", "-", "-", "-", "-", "-", "-", "encrypted");
      return;
    }
    StoredExam stored = store.read(exam, null);
    ExamRecord record = stored.record();
    RecordWording wording = options.wording(record);
    String who = who(record);
    Optional<LocalDate> day = due(wording);
    if (!isWanted(wording, who, day)) {
      return;
    }
    long pressing = pressing(wording);
    String state = StoredExamWording.state(stored);
    Console.out()
        .printf(
            ROW,
            exam.name(),
            StoredExamWording.opened(record),
            cut(record.label().map(PlainText::line).orElse("-"), 16),
            who.isEmpty() ? "-" : cut(who, 14),
            pressing == 0 ? "-" : Long.toString(pressing),
            day.map(LocalDate::toString).orElse("-"),
            record.baby().fact("age").map(age -> age + " h").orElse("-"),
            StoredExamWording.progress(record),
            state);
  }

  private int remove(RecordStore store) throws IOException {
    List<ExamFolder> exams = new ArrayList<>();
    for (String name : removed) {
      exams.add(store.find(name));
    }
    BufferedReader in =
        new BufferedReader(new InputStreamReader(System.in, StandardCharsets.UTF_8));
    int kept = 0;
    for (ExamFolder exam : exams) {
      Console.err().print("remove " + exam.name() + ", its journal and its sound? (yes/no) ");
      Console.err().flush();
      String answer = in.readLine();
      if (answer != null && answer.strip().toLowerCase(Locale.ROOT).equals("yes")) {
        store.remove(exam);
        Console.out().println("removed " + exam.name());
      } else {
        Console.out().println("kept " + exam.name());
        kept++;
      }
    }
    return kept == 0 ? 0 : Tiptoe.COULD_NOT;
  }
}
