package tiptoe.language.tagger;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import tiptoe.language.SecondReading.Claim;
import tiptoe.protocol.Protocol;

/** Merges claims of one sentence that say the same, and drops those that exclude each other. */
final class FindingMerger {
  private final Protocol protocol;

  FindingMerger(Protocol protocol) {
    this.protocol = protocol;
  }

  List<Claim> settled(List<Claim> claims) {
    List<Claim> merged = placed(merged(claims));
    return merged.stream()
        .filter(claim -> stands(claim, merged) && !isTold(claim, merged))
        .toList();
  }

  // "A cut from the electrode, so a scalp laceration": the scalp's, and not one of the skin beside.
  private boolean isTold(Claim claim, List<Claim> all) {
    return claim.step().equals("skin")
        && all.stream()
            .anyMatch(
                other ->
                    !other.step().equals("skin")
                        && other.value() != null
                        && other.value().equals(claim.value()));
  }

  private static List<Claim> merged(List<Claim> claims) {
    List<Claim> merged = new ArrayList<>();
    for (Claim claim : claims) {
      int same = -1;
      for (int i = 0; i < merged.size(); i++) {
        if (merged.get(i).isOfSame(claim)
            && java.util.Objects.equals(merged.get(i).value(), claim.value())
            && claim.numbers().equals(merged.get(i).numbers())) {
          same = i;
        }
      }
      if (same < 0) {
        merged.add(claim);
      } else {
        merged.set(same, join(merged.get(same), claim));
      }
    }
    return merged;
  }

  // "Head's held to one side, a right torticollis", "a clunk, Ortolani positive on the left": what
  // is said without a side is said again with one.
  private List<Claim> placed(List<Claim> claims) {
    List<Claim> placed = new ArrayList<>(claims);
    for (Claim claim : claims) {
      List<Claim> withSide =
          placed.stream()
              .filter(other -> claim.side() == null && other.side() != null)
              .filter(other -> other.step().equals(claim.step()))
              .filter(other -> claim.value() != null && claim.value().equals(other.value()))
              .filter(other -> !isNormal(claim) && claim.denied().isEmpty())
              .toList();
      if (withSide.size() == 1) {
        placed.remove(claim);
        placed.set(placed.indexOf(withSide.get(0)), join(withSide.get(0), claim));
      }
    }
    return placed;
  }

  private static Claim join(Claim one, Claim other) {
    Set<String> denied = new LinkedHashSet<>(one.denied());
    denied.addAll(other.denied());
    Set<Integer> evidence = new TreeSet<>(one.evidence());
    evidence.addAll(other.evidence());
    return new Claim(
        one.step(), one.side(), one.value(), List.copyOf(denied), one.numbers(), evidence);
  }

  private boolean stands(Claim claim, List<Claim> all) {
    return all.stream()
        .filter(other -> other != claim && other.step().equals(claim.step()))
        .filter(
            other ->
                !protocol.step(claim.step()).sided()
                    || other.side() == claim.side()
                    || isSomewhere(other) && isNormal(claim))
        .allMatch(other -> goesTogether(claim, other));
  }

  // "Crackles, audible on both sides of the chest": neither side is clear then.
  private boolean isSomewhere(Claim claim) {
    return claim.side() == null
        && claim.value() != null
        && claim.denied().isEmpty()
        && !isNormal(claim);
  }

  private boolean goesTogether(Claim claim, Claim other) {
    if (claim.value() == null || other.value() == null) {
      return false;
    }
    if (denies(claim, other)) {
      return false;
    }
    boolean normal = isNormal(claim);
    boolean otherNormal = isNormal(other);
    if (!normal && otherNormal) {
      // "Drying nicely, but smelly": what is abnormal is told, though not surely.
      return true;
    }
    // "That's no bruise, it's milia": the skin is not clear for that.
    return (!normal || !otherNormal && claim.denied().isEmpty())
        && protocol.step(claim.step()).allows(claim.value(), other.value());
  }

  /** Whether one of them denies what the other says. */
  static boolean denies(Claim one, Claim other) {
    return one.value() != null
        && other.value() != null
        && (one.denied().contains(other.value()) || other.denied().contains(one.value()));
  }

  private boolean isNormal(Claim claim) {
    return protocol.step(claim.step()).isNormal(claim.value());
  }
}
