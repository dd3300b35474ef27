package tiptoe.cli;

import tiptoe.audio.AudioProblem;
import tiptoe.audio.CaptureEvent;
import tiptoe.exam.Changes;
import tiptoe.exam.Event;
import tiptoe.language.Command;
import tiptoe.language.Phrasing;
import tiptoe.speech.Utterance;

/** Shows an examination line by line, as it goes on. */
final class PlainView {
  private String last = "";

  /** The words being said; printed only where a terminal can take them back. */
  void partial(String words) {
    String plain = words.replace(Utterance.FILLER, "…").strip();
    if (System.console() != null && !plain.equals(last)) {
      Console.out().print("\r\033[K" + plain);
      Console.out().flush();
    }
    last = plain;
  }

  void show(Changes changes) {
    clear();
    changes
        .of(Event.UtteranceHeard.class)
        .flatMap(heard -> changes.record().utterance(heard.number()).stream())
        .forEach(heard -> Console.out().print(UtteranceText.of(changes.record(), heard)));
    changes
        .of(Event.AudioGap.class)
        .forEach(gap -> Console.out().println("  sound was lost, noted in the record"));
    changes.commands().forEach(command -> answer(command, changes));
    changes
        .record()
        .openQuestion()
        .ifPresent(asked -> Console.out().println("  >> " + asked.question().text()));
  }

  private static void answer(Command command, Changes changes) {
    Phrasing phrasing = new Phrasing(changes.record().protocol());
    if (command == Command.SAY_MISSING) {
      changes
          .record()
          .missing()
          .forEach(
              slot ->
                  Console.out().println("  missing: " + phrasing.name(slot.step(), slot.side())));
    } else if (command == Command.READ_BACK) {
      String region = changes.record().region();
      changes.record().statements().stream()
          .filter(said -> said.stands())
          .filter(
              said ->
                  changes.record().protocol().step(said.statement().step()).region().equals(region))
          .forEach(said -> Console.out().println("  " + phrasing.of(said.statement())));
    }
  }

  void microphone(CaptureEvent event) {
    Console.err().println("microphone: " + event);
  }

  void problem(AudioProblem problem) {
    Console.err().println(problem.getMessage());
  }

  private void clear() {
    if (System.console() != null && !last.isEmpty()) {
      Console.out().print("\r\033[K");
    }
    last = "";
  }
}
