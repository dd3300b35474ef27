package tiptoe.clinical;

import java.time.ZonedDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import tiptoe.exam.Answer;
import tiptoe.exam.Baby;
import tiptoe.finding.Finding;
import tiptoe.finding.Quantity;
import tiptoe.protocol.Protocol;
import tiptoe.protocol.Side;
import tiptoe.protocol.Step;
import tiptoe.settings.Settings;

/** Writes findings short, for tables: {@code left testis=undescended; murmur=present grade=3}. */
final class Bedside {
  static final ZonedDateTime NOW = ZonedDateTime.parse("2026-11-25T10:30:00+00:00[Europe/London]");

  private Bedside() {}

  /** Findings separated by semicolons, numbered from 1. */
  static List<Answer> answers(String text) {
    List<Answer> answers = new ArrayList<>();
    for (String finding : text == null ? new String[0] : text.split(";")) {
      if (!finding.isBlank()) {
        answers.add(answer(finding.trim(), answers.size() + 1));
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
    return Assessor.standard().assess(baby(baby), answers(findings), settings, NOW);
  }

  /** The flags short: {@code urgent red-reflex-abnormal, note murmur}. */
  static String flags(Assessment assessment) {
    return String.join(
        ", ",
        assessment.flags().stream().map(flag -> flag.level().id() + " " + flag.rule()).toList());
  }

  private static Answer answer(String text, int number) {
    Side side =
        text.startsWith("left ") ? Side.LEFT : text.startsWith("right ") ? Side.RIGHT : null;
    String[] words = (side == null ? text : text.substring(text.indexOf(' ') + 1)).split(" ", 2);
    String[] stepAndValue = words[0].split("=");
    Step step = Protocol.standard().step(stepAndValue[0]);
    if (step.isMeasured() && stepAndValue.length == 1) {
      String[] said = words[1].split(" ", 2);
      Quantity quantity = new Quantity(Double.parseDouble(said[0]), step.measure().unit());
      Map<String, String> details = pairs(said.length > 1 ? said[1] : "");
      return new Answer(
          Finding.of(step.id(), quantity).withSide(side).withDetails(details), number);
    }
    Map<String, String> details = pairs(words.length > 1 ? words[1] : "");
    return new Answer(Finding.of(step.id(), side, stepAndValue[1]).withDetails(details), number);
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
