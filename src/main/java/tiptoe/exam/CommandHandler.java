package tiptoe.exam;

import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import tiptoe.finding.Command;
import tiptoe.finding.Outcome;
import tiptoe.finding.Question;

/** Carries out those commands that change the record; the others are for the screen. */
record CommandHandler(EventBatch draft, Integer utterance, Heard heard) {

  /**
   * Carries it out.
   *
   * @return the command that a yes was said to, which is carried out too; empty where there is none
   */
  Optional<Command> carryOut(Command command) {
    Optional<Command> agreed = command == Command.YES ? askedAbout() : Optional.empty();
    switch (command) {
      case PAUSE -> pause();
      case RESUME -> resume();
      case STRIKE -> Retraction.last(draft.record(), utterance).ifPresent(draft::add);
      case YES -> yes();
      case NO -> no();
      case END_EXAM -> end();
      case SAY_UNSURE -> offerNext(0);
      case START_REMARK -> startRemark();
      case END_REMARK -> endRemark();
      default -> {}
    }
    return agreed;
  }

  /** Whether asking about it is worth anything: there is something it would change now. */
  static boolean isToAsk(Command command, ExamRecord record) {
    Phase phase = record.phase();
    return switch (command) {
      case PAUSE -> phase.takesFindings();
      case RESUME -> phase == Phase.PAUSED || phase == Phase.ENDING;
      case STRIKE -> phase.takesFindings() && Retraction.last(record, null).isPresent();
      case END_EXAM -> phase == Phase.LISTENING;
      default -> false;
    };
  }

  /** Asks about what could be talk; where an answer is awaited, what it can only answer counts. */
  void ask(Command command) {
    if (!isToAsk(command, draft.record())) {
      return;
    }
    if (draft.record().phase() == Phase.ENDING && command != Command.STRIKE) {
      draft.add(new Event.EndRefused(utterance));
    } else if (command == Command.END_EXAM) {
      draft.add(new Event.EndAsked(draft.record().missingKeySteps(), utterance));
    } else {
      draft.ask(Question.command(command), false, utterance, null, List.of(), null, null);
    }
  }

  /** Offers again what is unsure, behind the utterance of this number; behind the last, ends it. */
  void offerNext(int behind) {
    if (!draft.record().phase().takesFindings()) {
      return;
    }
    Optional<Utterance> next =
        draft.record().offers().stream().filter(one -> one.number() > behind).findFirst();
    if (next.isPresent()) {
      draft.add(new Event.OfferAsked(next.get().number(), utterance));
    } else if (behind > 0 && draft.record().phase() == Phase.ENDING) {
      draft.add(new Event.EndAsked(draft.record().missingKeySteps(), utterance));
    }
  }

  private Optional<Command> askedAbout() {
    return draft
        .record()
        .openQuestion()
        .map(Asked::question)
        .filter(question -> question.kind() == Question.Kind.COMMAND)
        .map(question -> Command.of(question.detail()));
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
    boolean clear =
        missing.isEmpty()
            && draft.record().pressing().isEmpty()
            && draft.record().offers().isEmpty();
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
      Optional<Command> command = askedAbout();
      draft.record().openQuestion().ifPresent(asked -> settle(asked, true));
      command.ifPresent(this::carryOut);
    }
  }

  private void no() {
    if (draft.record().phase() == Phase.ENDING) {
      draft.add(new Event.EndRefused(utterance));
    } else {
      draft.record().openQuestion().ifPresent(asked -> settle(asked, false));
    }
  }

  private void settle(Asked asked, boolean yes) {
    ContradictionSettlement settlement = new ContradictionSettlement(draft, utterance, null);
    if (asked.question().kind() == Question.Kind.COMMAND) {
      draft.add(new Event.QuestionAnswered(asked.number(), yes ? "yes" : "no", utterance, null));
    } else if (yes) {
      settlement.newer(asked);
    } else {
      settlement.older(asked);
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
    return draft
        .record()
        .events(Event.RemarkStarted.class)
        .mapToDouble(Event.RemarkStarted::start)
        .reduce((first, last) -> last)
        .orElse(0);
  }
}
