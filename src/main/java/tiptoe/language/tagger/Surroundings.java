package tiptoe.language.tagger;

import java.util.List;
import java.util.Objects;
import java.util.Set;
import java.util.TreeSet;
import tiptoe.language.SecondReading.Claim;
import tiptoe.protocol.Protocol;

/**
 * What stands around a claim, as features by which {@link Likelihood} tells whether it was meant:
 * what its own words are and how they lie, what else is claimed, and which words are left open
 * where. Counts end at a few: how many more there are tells nothing more.
 */
final class Surroundings {
  private static final int MANY = 3;
  private static final int WORDS_A_STEP = 6;
  private static final int FAR = 4;

  private final SentenceItems sentence;
  private final Protocol protocol;
  private final List<String> words;
  private final Breaks breaks;
  private final List<WordItem> items;
  private final Set<Integer> suspected;
  private final Set<Integer> open;
  private final List<Claim> kept;
  private final List<Claim> read;

  Surroundings(Claimed claimed) {
    this.sentence = claimed.sentence();
    this.protocol = sentence.protocol();
    this.words = sentence.words();
    this.breaks = sentence.breaks();
    this.items = sentence.items();
    this.suspected = claimed.suspected();
    this.open = claimed.open();
    this.kept = claimed.kept();
    this.read = claimed.read();
  }

  /**
   * The features of a claim.
   *
   * @param near the words that may change it
   */
  Set<String> of(Claim claim, Set<Integer> near) {
    Set<String> features = new TreeSet<>();
    features.add(norm(claim));
    features.add("value " + claim.step() + "=" + claim.value());
    features.add("step " + claim.step());
    if (!claim.denied().isEmpty()) {
      features.add("denied");
    }
    features.add("length " + Math.min(MANY + 2, words.size() / WORDS_A_STEP));
    features.add("claims " + Math.min(MANY + 2, kept.size()));
    ownWords(claim, features);
    ownSide(claim, features);
    rivals(claim, features);
    openWords(claim, near, features);
    if (items.stream().anyMatch(item -> item.kind() == WordItem.Kind.CORRECTION)) {
      features.add("corrects");
    }
    return features;
  }

  private String norm(Claim claim) {
    return claim.value() == null ? "number" : sentence.isNormal(claim) ? "normal" : "found";
  }

  private void ownWords(Claim claim, Set<String> features) {
    int from = claim.first();
    int to = claim.last();
    features.add("words " + Math.min(MANY + 1, claim.evidence().size()));
    features.add("parted " + Math.min(MANY, breaks.count(from, to)));
    if (to + 1 - from - claim.evidence().size() > FAR) {
      features.add("far apart");
    }
    features.add("before: " + word(from - 1));
    features.add("behind: " + word(to + 1));
    features.add("opens: " + word(breaks.from(from)));
    int finding = finding(claim);
    boolean named = false;
    boolean bound = false;
    for (WordItem item : items) {
      boolean own = claim.evidence().contains(item.from());
      String said = String.join(" ", sentence.said(item));
      if (own && item.kind() == WordItem.Kind.PART) {
        named |= item.match().steps(Sense.Kind.PART).contains(claim.step());
        features.add("structure: " + said);
        features.add("structure " + place(item.from(), finding, finding));
      } else if (own && item.kind() == WordItem.Kind.FINDING) {
        bound |= item.match().senses().stream().anyMatch(sense -> isBound(sense, claim));
        features.add("finding: " + said);
      } else if (from < item.from() && item.from() < to) {
        features.add("among " + item.kind().id());
      }
    }
    features.add((named ? "named" : "unnamed") + (bound ? ", bound" : ", free"));
  }

  private static boolean isBound(Sense sense, Claim claim) {
    return claim.step().equals(sense.step()) && sense.bound();
  }

  private void ownSide(Claim claim, Set<String> features) {
    if (claim.side() == null) {
      features.add(protocol.step(claim.step()).sided() ? "no side" : "unsided");
      return;
    }
    int finding = finding(claim);
    boolean said = false;
    for (WordItem item : items) {
      if (item.kind() != WordItem.Kind.SIDE) {
        continue;
      }
      boolean here = breaks.count(item.from(), finding) == 0;
      if (claim.evidence().contains(item.from())) {
        said = true;
        features.add(
            "side "
                + place(item.from(), finding, finding)
                + (item.sides().size() > 1 ? " both" : " one"));
      } else if (here && !item.sides().contains(claim.side())) {
        features.add("other side here");
      }
    }
    if (!said) {
      features.add("side carried");
    }
  }

  private void rivals(Claim claim, Set<String> features) {
    for (Claim other : read) {
      boolean same = Objects.equals(other.value(), claim.value());
      if (other.step().equals(claim.step()) && !same) {
        features.add(
            "rival "
                + (isHere(claim, other) ? "here" : "there")
                + (goTogether(claim, other) ? ", together " : " ")
                + norm(other));
      }
    }
  }

  private static boolean isHere(Claim claim, Claim other) {
    return other.side() == null || claim.side() == null || other.side() == claim.side();
  }

  private boolean goTogether(Claim claim, Claim other) {
    return claim.value() != null
        && other.value() != null
        && protocol.step(claim.step()).allows(claim.value(), other.value());
  }

  private void openWords(Claim claim, Set<Integer> near, Set<String> features) {
    int inReach = 0;
    int elsewhere = 0;
    for (WordItem item : items) {
      if (item.places().stream().noneMatch(open::contains)) {
        continue;
      }
      boolean reaches = item.places().stream().anyMatch(near::contains);
      inReach += reaches ? 1 : 0;
      elsewhere += reaches ? 0 : 1;
      String said = String.join(" ", sentence.said(item));
      String where =
          (reaches ? "open " : "aside ") + place(item.from(), claim.first(), claim.last()) + " ";
      String kind = item.kind().id();
      features.add(where + kind);
      features.add(norm(claim) + " " + where + kind);
      features.add("open: " + said);
      features.add(where + "opened by: " + word(breaks.from(item.from())));
      features.add(where + "behind: " + word(item.from() - 1));
      if (item.kind() != WordItem.Kind.UNKNOWN) {
        features.add(where + said);
      } else if (suspected.contains(item.from())) {
        features.add(where + "suspected");
      }
    }
    features.add("open " + Math.min(MANY + 2, inReach));
    features.add("aside " + Math.min(MANY + 2, elsewhere));
    if (inReach == 0) {
      features.add("accounted " + norm(claim));
    }
  }

  private int finding(Claim claim) {
    return sentence.findings(claim).mapToInt(WordItem::from).max().orElse(claim.last());
  }

  private String word(int at) {
    return at < 0 || at >= words.size() ? "nothing" : words.get(at);
  }

  /** Where a word stands to a stretch of words, and by how many breaks it is parted from it. */
  private String place(int word, int from, int to) {
    if (word < from) {
      return "before " + Math.min(2, breaks.count(word, from));
    }
    return word > to ? "behind " + Math.min(2, breaks.count(to, word)) : "among";
  }
}
