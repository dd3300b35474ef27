package tiptoe.exam;

import java.util.List;
import java.util.stream.Collectors;
import tiptoe.finding.Command;
import tiptoe.finding.Outcome;

/** Carries out those commands that change the record; the others are for the screen. */
record CommandHandler(EventBatch draft, Integer utterance, Heard heard) {

  void carryOut(Command command) {
    switch (command) {
      case PAUSE -> pause();
      case RESUME -> resume();
      case STRIKE -> Retraction.last(draft.record(), utterance).ifPresent(draft::add);
      case YES -> yes();
      case NO -> no();
      case END_EXAM -> end();
      case START_REMARK -> startRemark();
      case END_REMARK -> endRemark();
      default -> {}
    }
  }

  private void pause() {
    endRemark();
    if (draft.record().phase().takesFindings()) {
      draft.add(new Event.Paused(utterance));
    }
  }

  private void resume() {
    if (draft.record().phase() == Phase.PAUSED) {
      draft.add(new Event.Resumed(utterance));
    } else if (draft.record().phase() == Phase.ENDING) {
      draft.add(new Event.EndRefused(utterance));
    }
  }

  private void end() {
    endRemark();
    Phase phase = draft.record().phase();
    List<Slot> missing = draft.record().missingKeySteps();
    boolean clear = missing.isEmpty() && draft.record().pressing().isEmpty();
    if (phase == Phase.ENDING || phase.takesFindings() && clear) {
      draft.add(new Event.Ended(missing, utterance));
    } else if (phase.takesFindings() || phase == Phase.PAUSED) {
      draft.add(new Event.EndAsked(missing, utterance));
    }
  }

  private void yes() {
    if (draft.record().phase() == Phase.ENDING) {
      end();
    } else {
      draft
          .record()
          .openQuestion()
          .ifPresent(asked -> new ContradictionSettlement(draft, utterance, null).newer(asked));
    }
  }

  private void no() {
    if (draft.record().phase() == Phase.ENDING) {
      draft.add(new Event.EndRefused(utterance));
    } else {
      draft
          .record()
          .openQuestion()
          .ifPresent(asked -> new ContradictionSettlement(draft, utterance, null).older(asked));
    }
  }

  private void startRemark() {
    if (draft.record().phase().takesFindings()) {
      draft.add(new Event.RemarkStarted(heard.end(), utterance));
    }
  }

  private void endRemark() {
    if (draft.record().phase() != Phase.REMARK) {
      return;
    }
    double start = remarkStart();
    String text =
        draft.record().utterances().stream()
            .map(Utterance::heard)
            .filter(one -> one.outcome() == Outcome.REMARK && one.start() >= start)
            .map(Heard::text)
            .collect(Collectors.joining(" "));
    double end = Math.max(start, heard.start());
    draft.add(new Event.RemarkMade(draft.nextRemark(), text, start, end, null));
  }

  private double remarkStart() {
    return draft.record().entries().stream()
        .map(Entry::event)
        .filter(Event.RemarkStarted.class::isInstance)
        .mapToDouble(event -> ((Event.RemarkStarted) event).start())
        .reduce((first, last) -> last)
        .orElse(0);
  }
}
