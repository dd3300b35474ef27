package tiptoe.clinical;

import java.util.List;
import java.util.Optional;
import tiptoe.exam.Handled;
import tiptoe.exam.Handover;
import tiptoe.protocol.Fact;
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
    Optional<Handled> ticked = Optional.ofNullable(handover.ticked().get(item));
    if (ticked.filter(Handled::done).isPresent()) {
      return ticked;
    }
    Optional<Handled> said =
        ticked.isEmpty() ? said(done, true, handover, protocol) : Optional.empty();
    return said.or(() -> said(setGoing, false, handover, protocol));
  }

  private static Optional<Handled> said(
      List<String> terms, boolean done, Handover handover, Protocol protocol) {
    return terms.stream()
        .flatMap(
            term ->
                handover.stated().values().stream()
                    .filter(one -> term.equals(one.fact() + "=" + one.value())))
        .findFirst()
        .map(
            one -> {
              Fact fact = protocol.fact(one.fact()).orElseThrow();
              String how = fact.label() + ": " + fact.label(one.value());
              String at = one.at() == null ? null : one.at().toString();
              return new Handled(done, how, at, one.by());
            });
  }
}
