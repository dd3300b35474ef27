package tiptoe.screen.review;

import java.util.List;
import java.util.Optional;
import tiptoe.exam.ExamRecord;
import tiptoe.finding.Finding;
import tiptoe.finding.Question;
import tiptoe.language.Interpretation;
import tiptoe.language.Meaning;
import tiptoe.protocol.Step;
import tiptoe.protocol.Value;
import tiptoe.wording.QuestionWording;

/** A line that was typed: what it means, held against the record it is for. */
record TypedLine(Interpretation meaning, ExamRecord record) {
  /** Why nothing is recorded, with the questions to ask first; empty where it can be recorded. */
  Optional<Reply> refusal() {
    if (!meaning.uncovered().isEmpty()) {
      return Optional.of(
          Reply.refused(
              "nothing recorded; not understood: " + String.join(" ", meaning.uncovered())));
    }
    if (meaning.of(Meaning.Instruction.class).findAny().isPresent()) {
      return refused("that is a command of the examination");
    }
    for (Finding statement : meaning.statements()) {
      Step step = record.protocol().step(statement.step());
      if (!fits(statement, step)) {
        String sex = record.baby().sex().orElse(null);
        return refused(
            step.label() + " does not go with a " + sex + "; correct the sex first if it is wrong");
      }
    }
    if (says()) {
      return Optional.empty();
    }
    List<Question> questions = questions();
    return questions.isEmpty()
        ? refused("that states no finding")
        : Optional.of(new Reply("nothing recorded yet", true, questions));
  }

  /** What the line leaves open, in words. */
  List<Question> questions() {
    QuestionWording wording = new QuestionWording(record.protocol());
    return meaning.questions().stream()
        .map(question -> question.withText(wording.of(question)))
        .toList();
  }

  private boolean fits(Finding statement, Step step) {
    return step.appliesTo(record.baby().sex().orElse(null))
        || statement.group()
        || Value.NOT_EXAMINED.equals(statement.value());
  }

  private boolean says() {
    return !meaning.statements().isEmpty()
        || meaning.of(Meaning.Fact.class).findAny().isPresent()
        || meaning.of(Meaning.Answers.class).findAny().isPresent();
  }

  private static Optional<Reply> refused(String why) {
    return Optional.of(Reply.refused("nothing recorded: " + why));
  }
}
