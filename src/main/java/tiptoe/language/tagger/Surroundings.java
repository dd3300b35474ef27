package tiptoe.language.tagger;

import java.util.Collections;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;
import tiptoe.language.SecondReading.Claim;
import tiptoe.language.TypedText;
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
  private final List<WordItem> items;
  private final Set<Integer> suspected;
  private final Set<Integer> open;
  private final List<Claim> kept;
  private final List<Claim> read;

  /**
   * @param suspected words that a model takes for findings or structures, listed or not
   * @param open words that no claim accounts for
   * @param kept the claims of the sentence
   * @param read the same with those that others have put right or taken in
   */
  Surroundings(
      SentenceItems sentence,
      Set<Integer> suspected,
      Set<Integer> open,
      List<Claim> kept,
      List<Claim> read) {
    this.sentence = sentence;
    this.protocol = sentence.protocol();
    this.words = sentence.words();
    this.items = sentence.items();
    this.suspected = suspected;
    this.open = open;
    this.kept = kept;
    this.read = read;
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
    int from = first(claim);
    int to = last(claim);
    features.add("words " + Math.min(MANY + 1, claim.evidence().size()));
    features.add("parted " + Math.min(MANY, breaks(from, to)));
    if (to + 1 - from - claim.evidence().size() > FAR) {
      features.add("far apart");
    }
    features.add("before: " + word(from - 1));
    features.add("behind: " + word(to + 1));
    features.add("opens: " + word(sentence.breaks().from(from)));
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
      boolean here = breaks(item.from(), finding) == 0;
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
          (reaches ? "open " : "aside ") + place(item.from(), first(claim), last(claim)) + " ";
      String kind = item.kind().id();
      features.add(where + kind);
      features.add(norm(claim) + " " + where + kind);
      features.add("open: " + said);
      features.add(where + "opened by: " + word(sentence.breaks().from(item.from())));
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

  /**
   * Whether a claim may be recorded although words beside it are open: where nothing that may
   * change it denies, doubts, puts right or names another side, nobody else is spoken of before it,
   * and no word that nobody knows stands with what is normal between the same breaks. What is
   * normal must be named, or told in more than a word: "straight", "open" and "clear" are said of
   * anything.
   *
   * @param near the words that may change it
   */
  boolean standsAlone(Claim claim, Set<Integer> near) {
    boolean rivalled =
        read.stream()
            .filter(other -> other.step().equals(claim.step()))
            .filter(other -> !Objects.equals(other.value(), claim.value()))
            .anyMatch(other -> isHere(claim, other) && !goTogether(claim, other));
    boolean supposed =
        Stream.of("supposes", "hypothetical")
            .anyMatch(list -> sentence.lexicon().says(list, words));
    return !rivalled
        && !supposed
        && !words.contains(TypedText.ASKS)
        && (!sentence.isNormal(claim) || isNamed(claim))
        && items.stream().noneMatch(item -> unsettles(item, claim, near));
  }

  // "Weak on the right, oh bother, weak on the left": a word that nobody knows may put it right.
  private boolean isOfBothSides(Claim claim) {
    return claim.side() != null
        && kept.stream()
            .filter(other -> other.step().equals(claim.step()))
            .anyMatch(other -> other.side() == claim.side().other());
  }

  private boolean isNamed(Claim claim) {
    return items.stream()
        .filter(item -> claim.evidence().contains(item.from()))
        .anyMatch(
            item ->
                item.kind() == WordItem.Kind.PART
                        && item.match().steps(Sense.Kind.PART).contains(claim.step())
                    || item.kind() == WordItem.Kind.FINDING
                        && item.match().words() > 1
                        && item.match().senses().stream()
                            .anyMatch(
                                sense -> claim.step().equals(sense.step()) && !sense.bound()));
  }

  /**
   * Whether the sentence asks, or a doubt, a plan or another person stands among the words of a
   * claim or between its breaks.
   */
  boolean isDoubted(Claim claim) {
    return words.contains(TypedText.ASKS)
        || items.stream()
            .filter(
                item ->
                    item.kind() == WordItem.Kind.DOUBT
                        || item.kind() == WordItem.Kind.PLAN
                        || item.kind() == WordItem.Kind.FOREIGN)
            .anyMatch(item -> isWith(item, claim));
  }

  // "Right hip doesn't go out on Barlow": of which of the two it is said nobody knows.
  private boolean isNear(WordItem part, Claim claim) {
    String region = protocol.step(claim.step()).region();
    return part.match().steps(Sense.Kind.PART).stream()
        .anyMatch(step -> protocol.step(step).region().equals(region));
  }

  // "Tone normal, a bit off", "palate intact, with persuasion only"
  private boolean limits(WordItem item) {
    Breaks breaks = sentence.breaks();
    List<String> stretch = words.subList(breaks.from(item.from()), breaks.to(item.from()));
    return Stream.of("severity", "how-much", "limits")
        .anyMatch(list -> sentence.lexicon().says(list, stretch));
  }

  private boolean isWith(WordItem item, Claim claim) {
    boolean among = first(claim) <= item.from() && item.from() <= last(claim);
    return among || claim.evidence().stream().anyMatch(word -> breaks(item.from(), word) == 0);
  }

  private boolean unsettles(WordItem item, Claim claim, Set<Integer> near) {
    if (item.kind() == WordItem.Kind.CORRECTION) {
      return true;
    }
    boolean own = claim.evidence().contains(item.from());
    boolean here = isWith(item, claim);
    if (item.kind() == WordItem.Kind.SIDE && here && !own && claim.side() != null) {
      return !item.sides().contains(claim.side());
    }
    if (item.places().stream().noneMatch(open::contains)) {
      return false;
    }
    boolean reaches = item.places().stream().anyMatch(near::contains);
    return switch (item.kind()) {
      case PART -> own || here && isNear(item, claim);
      case FINDING, NUMBER, DESCRIPTION -> own;
      case FOREIGN, PLAN -> reaches || here || item.from() < first(claim);
      case CONCERN -> sentence.isNormal(claim);
      case UNKNOWN ->
          sentence.isNormal(claim) && (here || reaches && limits(item))
              || reaches && isOfBothSides(claim);
      default -> reaches;
    };
  }

  private int finding(Claim claim) {
    return sentence.findings(claim).mapToInt(WordItem::from).max().orElse(last(claim));
  }

  private static int first(Claim claim) {
    return Collections.min(claim.evidence());
  }

  private static int last(Claim claim) {
    return Collections.max(claim.evidence());
  }

  private String word(int at) {
    return at < 0 || at >= words.size() ? "nothing" : words.get(at);
  }

  /** Where a word stands to a stretch of words, and by how many breaks it is parted from it. */
  private String place(int word, int from, int to) {
    if (word < from) {
      return "before " + Math.min(2, breaks(word, from));
    }
    return word > to ? "behind " + Math.min(2, breaks(to, word)) : "among";
  }

  private int breaks(int one, int other) {
    return Collections.frequency(
        words.subList(Math.min(one, other), Math.max(one, other)), TypedText.BREAK);
  }
}
