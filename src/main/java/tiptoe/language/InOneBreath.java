package tiptoe.language;

import java.util.List;
import java.util.Objects;
import tiptoe.finding.Finding;
import tiptoe.language.Interpretation.Certainty;
import tiptoe.protocol.Protocol;

/**
 * A sentence said in one breath, read as it is and parted. Where both ways state something else of
 * the same, or the same of another side, nobody knows which is meant, and it is only offered.
 */
record InOneBreath(
    Protocol protocol, Interpretation unparted, Interpretation parted, boolean unfamiliar) {

  Interpretation reading() {
    boolean onlyAsks = parted.meanings().stream().allMatch(Meaning.Asks.class::isInstance);
    boolean more = sure(parted) >= sure(unparted) && !onlyAsks;
    Interpretation chosen = more ? parted : unparted;
    Interpretation other = more ? unparted : parted;
    List<Certainty> told = chosen.howSure();
    List<Certainty> weighed =
        told.stream()
            .map(one -> one.sure() && isContested(one.meaning(), chosen, other) ? doubt(one) : one)
            .toList();
    if (weighed.equals(told)) {
      return chosen;
    }
    List<String> open = chosen.uncovered().isEmpty() ? List.of("two partings") : chosen.uncovered();
    return new Interpretation(
        chosen.meanings(), open, chosen.spans(), chosen.withheld(), chosen.dialogue(), weighed);
  }

  private static long sure(Interpretation read) {
    return read.howSure().stream()
        .filter(Certainty::sure)
        .map(one -> subject(one.meaning()))
        .distinct()
        .count();
  }

  private static Object subject(Meaning meaning) {
    if (meaning instanceof Meaning.Fact fact) {
      return fact.id();
    }
    return meaning instanceof Meaning.States states
        ? List.of(states.statement().step(), String.valueOf(states.statement().side()))
        : meaning;
  }

  private static Certainty doubt(Certainty one) {
    return new Certainty(one.meaning(), false, "two partings say something else");
  }

  private boolean isContested(Meaning said, Interpretation chosen, Interpretation other) {
    // What the better one states is only sure where parting the sentence does not lose it.
    boolean lost =
        chosen == unparted
            && said instanceof Meaning.States states
            && parted.statements().stream()
                .noneMatch(finding -> finding.step().equals(states.statement().step()));
    // A word that nobody knows may take from what is normal, wherever the breaks are.
    boolean weakened =
        unfamiliar
            && said instanceof Meaning.States states
            && states.statement().value() != null
            && protocol.step(states.statement().step()).isNormal(states.statement().value())
            && unparted.howSure().stream()
                .noneMatch(one -> one.sure() && one.meaning().equals(said));
    return lost
        || weakened
        || other.meanings().stream().anyMatch(meaning -> excludes(said, meaning, chosen))
        || chosen.howSure().stream()
            .filter(one -> !one.sure())
            .anyMatch(one -> excludes(said, one.meaning(), chosen));
  }

  private boolean excludes(Meaning one, Meaning other, Interpretation chosen) {
    if (one instanceof Meaning.Fact fact && other instanceof Meaning.Fact rival) {
      return fact.id().equals(rival.id()) && !fact.value().equals(rival.value());
    }
    if (!(one instanceof Meaning.States said) || !(other instanceof Meaning.States rival)) {
      return false;
    }
    Finding finding = said.statement();
    Finding against = rival.statement();
    if (!finding.step().equals(against.step())) {
      return false;
    }
    boolean same =
        Objects.equals(finding.value(), against.value())
            && Objects.equals(finding.quantity(), against.quantity());
    boolean here =
        finding.side() == null || against.side() == null || finding.side() == against.side();
    if (here) {
      return !same && !protocol.step(finding.step()).allows(finding.value(), against.value());
    }
    return same
        && chosen.statements().stream()
            .noneMatch(told -> told.step().equals(against.step()) && told.side() == against.side());
  }
}
