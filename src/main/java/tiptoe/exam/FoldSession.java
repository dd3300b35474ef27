package tiptoe.exam;

import java.time.Instant;
import java.util.function.Function;

/** What the events around the examination do to the record. */
final class FoldSession {
  private FoldSession() {}

  static void register() {
    Fold.on(Event.ExaminationOpened.class, (fold, entry, event) -> fold.opened = event);
    Fold.on(Event.ExaminationContinued.class, FoldSession::continued);
    Fold.on(Event.Paused.class, (fold, entry, event) -> fold.phase = Phase.PAUSED);
    Fold.on(Event.Resumed.class, (fold, entry, event) -> fold.phase = Phase.LISTENING);
    Fold.on(
        Event.AudioGap.class,
        (fold, entry, event) ->
            fold.gaps.add(new Gap(event.from(), event.seconds(), event.reason())));
    Fold.on(
        Event.FlagRaised.class,
        (fold, entry, event) -> fold.flags.add(new FlagHistory(event.flag(), entry.at(), null)));
    Fold.on(Event.FlagCleared.class, (fold, entry, event) -> clear(fold, event.flag(), entry.at()));
    Fold.on(Event.EndAsked.class, (fold, entry, event) -> fold.phase = Phase.ENDING);
    Fold.on(Event.EndRefused.class, (fold, entry, event) -> fold.phase = Phase.LISTENING);
    Fold.on(
        Event.Ended.class,
        (fold, entry, event) -> {
          fold.phase = Phase.ENDED;
          fold.ended = entry.at();
        });
    registerNotes();
  }

  private static void registerNotes() {
    noted(
        Event.TailSetAside.class,
        event ->
            "an unfinished line of "
                + event.bytes()
                + " bytes at the end of the journal was moved to "
                + event.file());
    noted(
        Event.ClockWentBack.class,
        event -> "the clock went back: the event before was at " + event.last());
    noted(
        Event.AudioRemoved.class,
        event -> event.files().size() + " audio segments were removed: " + event.reason());
  }

  private static <E extends Event> void noted(Class<E> kind, Function<E, String> text) {
    Fold.on(kind, (fold, entry, event) -> note(fold, entry, text.apply(event)));
  }

  private static void continued(Fold fold, Entry entry, Event.ExaminationContinued event) {
    fold.phase = Phase.LISTENING;
    fold.ended = null;
    note(fold, entry, "the examination was continued");
  }

  private static void note(Fold fold, Entry entry, String text) {
    fold.notes.add(new Note(entry.at(), text));
  }

  private static void clear(Fold fold, Flag flag, Instant at) {
    fold.flags.replaceAll(
        raised ->
            raised.open() && raised.flag().equals(flag)
                ? new FlagHistory(flag, raised.raised(), at)
                : raised);
  }
}
