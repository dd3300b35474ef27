package tiptoe.exam;

import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import tiptoe.finding.Command;
import tiptoe.finding.Outcome;
import tiptoe.finding.Question;

/** Carries out those commands that change the record; the others are for the screen. */
record CommandHandler(EventBatch batch, Integer utterance, Heard heard) {

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
      case STRIKE -> Retraction.last(batch.record(), utterance).ifPresent(batch::add);
      case YES -> yes();
      case NO -> no();
      case END_EXAM -> end();
      case SAY_UNSURE -> offerNext();
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
    if (!isToAsk(command, batch.record())) {
      return;
    }
    if (batch.record().phase() == Phase.ENDING && command != Command.STRIKE) {
      batch.add(new Event.EndRefused(utterance));
    } else if (command == Command.END_EXAM) {
      batch.add(new Event.EndAsked(batch.record().missingKeySteps(), utterance));
    } else {
      batch.ask(Question.command(command), false, utterance);
    }
  }

  /** Reads out what is unsure, as much of it as is kept in mind; whether there was any. */
  boolean offerNext() {
    OpenOffers offers = new OpenOffers(batch.record());
    List<Utterance> next = offers.next(offers.utterances());
    boolean reads = batch.record().phase().takesFindings() && !next.isEmpty();
    if (reads) {
      batch.add(Event.OfferAsked.of(next, utterance));
    }
    return reads;
  }

  /** Asks once more whether to end, where that was asked. */
  void askEndAgain() {
    if (batch.record().phase() == Phase.ENDING) {
      batch.add(new Event.EndAsked(batch.record().missingKeySteps(), utterance));
    }
  }

  private Optional<Command> askedAbout() {
    return batch
        .record()
        .openQuestion()
        .map(Asked::question)
        .filter(question -> question.kind() == Question.Kind.COMMAND)
        .map(question -> Command.of(question.detail()));
  }

  private void pause() {
    endRemark();
    if (batch.record().phase().takesFindings()) {
      batch.add(new Event.Paused(utterance));
    }
  }

  private void resume() {
    if (batch.record().phase() == Phase.PAUSED) {
      batch.add(new Event.Resumed(utterance));
    } else if (batch.record().phase() == Phase.ENDING) {
      batch.add(new Event.EndRefused(utterance));
    }
  }

  private void end() {
    endRemark();
    Phase phase = batch.record().phase();
    List<Slot> missing = batch.record().missingKeySteps();
    boolean clear =
        missing.isEmpty()
            && batch.record().pressing().isEmpty()
            && batch.record().offers().isEmpty();
    if (phase == Phase.ENDING || phase.takesFindings() && clear) {
      batch.add(new Event.Ended(missing, utterance));
    } else if (phase.takesFindings() || phase == Phase.PAUSED) {
      batch.add(new Event.EndAsked(missing, utterance));
    }
  }

  private void yes() {
    if (batch.record().phase() == Phase.ENDING) {
      end();
    } else {
      Optional<Command> command = askedAbout();
      batch.record().openQuestion().ifPresent(asked -> settle(asked, true));
      command.ifPresent(this::carryOut);
    }
  }

  private void no() {
    if (batch.record().phase() == Phase.ENDING) {
      batch.add(new Event.EndRefused(utterance));
    } else {
      batch.record().openQuestion().ifPresent(asked -> settle(asked, false));
    }
  }

  private void settle(Asked asked, boolean yes) {
    ContradictionSettlement settlement = new ContradictionSettlement(batch, utterance, null);
    if (asked.question().kind() == Question.Kind.COMMAND) {
      batch.add(new Event.QuestionAnswered(asked.number(), yes ? "yes" : "no", utterance, null));
    } else if (yes) {
      settlement.newer(asked);
    } else {
      settlement.older(asked);
    }
  }

  private void startRemark() {
    if (batch.record().phase().takesFindings()) {
      batch.add(new Event.RemarkStarted(heard.end(), utterance));
    }
  }

  private void endRemark() {
    if (batch.record().phase() != Phase.REMARK) {
      return;
    }
    double start = remarkStart();
    String text =
        batch.record().utterances().stream()
            .map(Utterance::heard)
            .filter(one -> one.outcome() == Outcome.REMARK && one.start() >= start)
            .map(Heard::text)
            .collect(Collectors.joining(" "));
    double end = Math.max(start, heard.start());
    batch.add(new Event.RemarkMade(batch.nextRemark(), text, start, end, null));
  }

  private double remarkStart() {
    return batch
        .record()
        .events(Event.RemarkStarted.class)
        .mapToDouble(Event.RemarkStarted::start)
        .reduce((first, last) -> last)
        .orElse(0);
  }
}
