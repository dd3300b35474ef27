package tiptoe.screen.review;

import java.util.List;
import java.util.Optional;
import tiptoe.exam.Asked;
import tiptoe.finding.Question;
import tiptoe.protocol.Step;
import tiptoe.protocol.Value;

/** What each act does with an item, by what kind of item it is. */
final class ItemActs {
  private final ReviewDialogue sitting;
  private final ReviewService desk;

  ItemActs(ReviewDialogue sitting) {
    this.sitting = sitting;
    desk = sitting.desk();
  }

  void act(Act act, ReviewItem item) {
    boolean said = item.is(ReviewItem.Kind.STATEMENT);
    boolean heard = item.is(ReviewItem.Kind.UTTERANCE);
    boolean asked = item.is(ReviewItem.Kind.QUESTION);
    int number = item.number();
    if (act == Act.ACCEPT && heard) {
      sitting.edit(() -> desk.accept(number));
    } else if (act == Act.ACCEPT && said) {
      sitting.edit(() -> desk.restate(number));
    } else if (act == Act.DISMISS && heard) {
      sitting.edit(() -> desk.dismiss(number));
    } else if (act == Act.DISMISS && asked) {
      sitting.ask("why without an answer?", "", line -> desk.drop(number, line));
    } else if (act == Act.SIDE && said) {
      sitting.edit(() -> desk.otherSide(number));
    } else if (act == Act.REJECT && said) {
      sitting.ask("why is it taken out?", "mis-heard", line -> desk.reject(number, line));
    } else if (act == Act.LEAVE_OUT && item.slot() != null) {
      sitting.ask("why not examined?", "", line -> desk.notExamined(item.slot(), line));
    } else if (act == Act.VALUE && item.slot() != null) {
      chooseValue(item);
    } else if ((act == Act.FIRST || act == Act.SECOND) && isContradiction(item)) {
      sitting.edit(() -> desk.settle(number, act == Act.SECOND));
    } else {
      sitting.notice("that cannot be done with this item");
    }
  }

  private Optional<Question> question(ReviewItem item) {
    return desk.record().openQuestions().stream()
        .filter(asked -> item.is(ReviewItem.Kind.QUESTION) && asked.number() == item.number())
        .map(Asked::question)
        .findFirst();
  }

  private boolean isContradiction(ReviewItem item) {
    return question(item).filter(one -> one.kind() == Question.Kind.CONTRADICTION).isPresent();
  }

  /** Lets be typed what is to stand in the place of an item. */
  void correct(ReviewItem item) {
    switch (item.kind()) {
      case FLAG, GAP -> sitting.notice("that cannot be corrected; t types a finding");
      case REMARK -> sitting.ask("remark:", item.text(), line -> desk.reword(item.number(), line));
      case UTTERANCE ->
          sitting.type(
              "what was said:",
              item.trace().words(),
              (line, asking) -> desk.typeFor(item.number(), line, item.region(), asking),
              null);
      case STATEMENT ->
          sitting.type(
              "in its place:",
              item.trace().words(),
              (line, asking) -> desk.typeInstead(item.number(), line, item.region(), asking),
              null);
      default -> answer(item);
    }
  }

  private void answer(ReviewItem item) {
    if (isContradiction(item)) {
      sitting.notice("press 1 if the first is right, 2 if the second is");
      return;
    }
    Question question = question(item).orElse(null);
    String name =
        item.is(ReviewItem.Kind.STEP) ? item.text().replaceFirst(" is missing.*", " ") : "";
    sitting.type(
        question == null ? "a finding:" : question.text(),
        name,
        (line, asking) -> desk.type(line, item.region(), asking),
        question);
  }

  private void chooseValue(ReviewItem item) {
    Step step = desk.record().protocol().step(item.slot().step());
    if (step.isMeasured()) {
      correct(item);
    } else if (sitting.mayEdit()) {
      List<Value> values = step.values();
      sitting
          .foreground()
          .choose(
              step.label(),
              values.stream().map(Value::label).toList(),
              at -> sitting.tell(give(item, values.get(at).id())));
    }
  }

  private Reply give(ReviewItem item, String value) {
    return item.is(ReviewItem.Kind.STATEMENT)
        ? desk.value(item.number(), value)
        : desk.fill(item.slot(), value);
  }
}
