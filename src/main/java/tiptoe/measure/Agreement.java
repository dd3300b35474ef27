package tiptoe.measure;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import tiptoe.exam.Entry;
import tiptoe.exam.Event;
import tiptoe.exam.ExamRecord;
import tiptoe.exam.RecordedFinding;
import tiptoe.exam.Status;
import tiptoe.exam.Utterance;
import tiptoe.finding.Finding;
import tiptoe.finding.Outcome;
import tiptoe.language.Meaning;
import tiptoe.protocol.Step;

/**
 * What reviewers found of what was heard, from signed records. Nothing is judged that was typed, or
 * that the clinician took back or replaced before the review.
 */
public final class Agreement {
  /** What was made of something when it was heard. */
  public enum Sort {
    ACCEPTED,
    UNSURE,
    IGNORED
  }

  /**
   * Something that a reviewer has judged by signing.
   *
   * @param region id of the region; null where none was announced yet
   * @param step id of the step; null for an ignored utterance that was rightly ignored
   * @param right accepted: left or confirmed; unsure: its reading was accepted as it was; ignored:
   *     nothing was made of it
   */
  public record Judged(Sort sort, String region, String step, boolean right) {}

  private final ExamRecord record;
  private final Set<Integer> touched = new HashSet<>();
  private final List<Judged> judged = new ArrayList<>();

  private Agreement(ExamRecord record) {
    this.record = record;
  }

  /** What the last signature of a record says; empty where it has none. */
  public static List<Judged> of(ExamRecord record) {
    if (record.signatures().isEmpty()) {
      return List.of();
    }
    long last = record.signatures().get(record.signatures().size() - 1).seq();
    List<Entry> signed = record.entries().stream().filter(entry -> entry.seq() <= last).toList();
    return new Agreement(ExamRecord.fold(record.protocol(), signed)).judge();
  }

  private List<Judged> judge() {
    noteReviewer();
    record.statements().stream().filter(this::wasHeard).forEach(this::accepted);
    String region = null;
    for (Entry entry : record.entries()) {
      if (entry.event() instanceof Event.UtteranceHeard heard) {
        region = heard.region() == null ? region : heard.region();
        String at = region;
        record.utterance(heard.number()).ifPresent(utterance -> leftAside(utterance, at));
      }
    }
    return List.copyOf(judged);
  }

  /** Statements that the reviewer put something else in the place of, or settled against. */
  private void noteReviewer() {
    record.statements().stream()
        .filter(Agreement::byReviewer)
        .filter(said -> said.status() != Status.CONFIRMS)
        .forEach(said -> touched.addAll(said.of()));
    record
        .events(Event.StatementSettled.class)
        .filter(settled -> settled.author() != null)
        .forEach(
            settled -> {
              touched.add(settled.statement());
              touched.addAll(settled.of());
            });
  }

  private static boolean byReviewer(RecordedFinding said) {
    return said.author() != null && said.status() != Status.UNDONE;
  }

  /** A typed line takes no time. */
  private boolean wasHeard(RecordedFinding said) {
    return said.author() == null
        && said.utterance() != null
        && record
            .utterance(said.utterance())
            .filter(one -> one.heard().end() > one.heard().start())
            .isPresent();
  }

  private void accepted(RecordedFinding said) {
    switch (said.status()) {
      case STANDS, CONFIRMS, UNUSED -> judged.add(accepted(said, true));
      case REJECTED -> judged.add(accepted(said, false));
      case REPLACED, WITHDRAWN -> {
        if (touched.contains(said.number())) {
          judged.add(accepted(said, false));
        }
      }
      case WAITS, STRUCK, UNDONE -> {
        // Nobody has said which is right, or the clinician took it back.
      }
    }
  }

  private Judged accepted(RecordedFinding said, boolean right) {
    String step = said.statement().step();
    return new Judged(Sort.ACCEPTED, regionOf(step), step, right);
  }

  private void leftAside(Utterance utterance, String region) {
    List<Finding> made =
        record.statements().stream()
            .filter(Agreement::byReviewer)
            .filter(said -> Integer.valueOf(utterance.number()).equals(said.utterance()))
            .map(RecordedFinding::statement)
            .toList();
    if (utterance.heard().outcome() == Outcome.UNSURE && utterance.reviewed() != null) {
      for (Meaning.States candidate : utterance.candidates()) {
        Finding statement = candidate.statement();
        boolean right = utterance.reviewed() && made.stream().anyMatch(one -> says(one, statement));
        judged.add(new Judged(Sort.UNSURE, regionOf(statement.step()), statement.step(), right));
      }
    } else if (utterance.heard().outcome() == Outcome.IGNORED) {
      if (made.isEmpty()) {
        judged.add(new Judged(Sort.IGNORED, region, null, true));
      }
      made.forEach(
          one -> judged.add(new Judged(Sort.IGNORED, regionOf(one.step()), one.step(), false)));
    }
  }

  private static boolean says(Finding one, Finding other) {
    return ComparableMeaning.text(one).equals(ComparableMeaning.text(other));
  }

  private String regionOf(String step) {
    return record.protocol().find(step).map(Step::region).orElse(null);
  }
}
