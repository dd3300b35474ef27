package tiptoe.language;

import java.util.List;
import java.util.stream.Collectors;
import tiptoe.finding.Finding;
import tiptoe.finding.Question;
import tiptoe.protocol.Labels;
import tiptoe.protocol.Protocol;
import tiptoe.protocol.Step;
import tiptoe.wording.FindingWording;

/** Words the questions, short enough to be read at a glance from the cot. */
final class Questions {
  /** The detail that asks for the side of a value whose step has none. */
  static final String SIDE_DETAIL = "side";

  private final Protocol protocol;
  private final FindingWording phrasing;

  Questions(Protocol protocol) {
    this.protocol = protocol;
    this.phrasing = new FindingWording(protocol);
  }

  Question side(Finding about) {
    return ask(Question.Kind.SIDE, null, about, phrasing.of(about) + " — left, right or both?");
  }

  Question detail(Finding about, String detail) {
    String step = protocol.step(about.step()).label();
    String text =
        switch (detail) {
          case SIDE_DETAIL -> phrasing.of(about) + " — which side?";
          case "palpated" -> step + " — felt with a finger?";
          case "base-visible" -> "dimple — base visible?";
          case "radiation" -> step + " — does it radiate, and where to?";
          case "place" -> step + " — where is it loudest?";
          default -> phrasing.of(about) + " — " + Labels.of(detail) + "?";
        };
    return ask(Question.Kind.DETAIL, detail, about, text);
  }

  Question number(Finding about) {
    String text = "heard " + phrasing.of(about) + " — say the number again";
    return ask(Question.Kind.NUMBER, null, about, text);
  }

  Question step(List<Step> candidates) {
    String names = candidates.stream().map(Step::label).collect(Collectors.joining(" or "));
    String text =
        switch (candidates.size()) {
          case 0 -> "which part is that about?";
          case 1 -> names + " — say it in full";
          default -> "which is meant: " + names + "?";
        };
    return ask(Question.Kind.STEP, null, null, text);
  }

  private static Question ask(Question.Kind kind, String detail, Finding about, String text) {
    return new Question(kind, detail, about, null, text);
  }
}
