package tiptoe.clinical;

import java.util.List;
import java.util.Objects;
import java.util.Optional;
import tiptoe.exam.Handover;
import tiptoe.exam.Stated;
import tiptoe.exam.TickedItem;
import tiptoe.protocol.Protocol;

/**
 * What must be stated for an item of the plan to be done, or to be set going; any one suffices.
 *
 * @param done such as {@code referral-cardiology=made}
 * @param setGoing such as {@code hip-scan=requested}
 */
record HandledBy(List<String> done, List<String> setGoing) {
  static final HandledBy NOTHING = new HandledBy(List.of(), List.of());

  HandledBy {
    done = List.copyOf(done);
    setGoing = List.copyOf(setGoing);
  }

  /** What was stated of an item; what was ticked off counts before what was said. */
  Optional<Handled> of(String item, Handover handover, Protocol protocol) {
    TickedItem ticked = handover.ticked().get(item);
    if (ticked != null && ticked.done()) {
      String how = ticked.note() == null || ticked.note().isBlank() ? "done" : ticked.note();
      return Optional.of(new Handled(true, how, ticked.at().toString(), ticked.by()));
    }
    Optional<Handled> said =
        ticked == null ? said(done, true, handover, protocol) : Optional.empty();
    return said.or(() -> said(setGoing, false, handover, protocol));
  }

  private static Optional<Handled> said(
      List<String> terms, boolean done, Handover handover, Protocol protocol) {
    return terms.stream()
        .map(term -> term.split("=", 2))
        .map(term -> stated(handover, term[0], term[1]))
        .filter(Objects::nonNull)
        .findFirst()
        .map(one -> handled(one, done, protocol));
  }

  private static Stated stated(Handover handover, String fact, String value) {
    Stated stated = handover.stated().get(fact);
    return stated != null && stated.value().equals(value) ? stated : null;
  }

  private static Handled handled(Stated stated, boolean done, Protocol protocol) {
    var fact = protocol.fact(stated.fact()).orElseThrow();
    return new Handled(
        done,
        fact.label() + ": " + fact.label(stated.value()),
        stated.at() == null ? null : stated.at().toString(),
        stated.by());
  }
}
