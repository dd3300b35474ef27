package tiptoe.clinical;

import java.time.ZonedDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;
import tiptoe.exam.Answer;
import tiptoe.exam.Baby;
import tiptoe.finding.FindingNotation;
import tiptoe.protocol.Protocol;
import tiptoe.settings.Settings;

/** Assesses what tables state, in the notation of findings. */
final class Bedside {
  static final ZonedDateTime NOW = ZonedDateTime.parse("2026-11-25T10:30:00+00:00[Europe/London]");

  private Bedside() {}

  /**
   * Findings separated by semicolons, numbered from 1: {@code testis.left undescended; tone low}.
   */
  static List<Answer> answers(String text) {
    List<Answer> answers = new ArrayList<>();
    for (String finding : text == null ? new String[0] : text.split(";")) {
      if (!finding.isBlank()) {
        answers.add(new Answer(FindingNotation.parse(finding.strip()), answers.size() + 1));
      }
    }
    return answers;
  }

  /** Facts separated by spaces: {@code sex=girl age=18}. */
  static Baby baby(String text) {
    return new Baby(pairs(text == null ? "" : text.trim()));
  }

  static Assessment assess(String baby, String findings) {
    return assess(baby, findings, Settings.DEFAULT);
  }

  static Assessment assess(String baby, String findings, Settings settings) {
    return Assessor.of(Protocol.standard()).assess(baby(baby), answers(findings), settings, NOW);
  }

  static SizeMeasure measure(String step) {
    return Stream.of(SizeMeasure.values())
        .filter(measure -> measure.step().equals(step))
        .findFirst()
        .orElseThrow();
  }

  /** The flags short: {@code urgent red-reflex-abnormal, note murmur}. */
  static String flags(Assessment assessment) {
    return String.join(
        ", ",
        assessment.flags().stream().map(flag -> flag.level().id() + " " + flag.rule()).toList());
  }

  private static Map<String, String> pairs(String text) {
    Map<String, String> pairs = new TreeMap<>();
    for (String pair : text.split(" ")) {
      if (!pair.isBlank()) {
        pairs.put(pair.substring(0, pair.indexOf('=')), pair.substring(pair.indexOf('=') + 1));
      }
    }
    return pairs;
  }
}
