package tiptoe.grammar;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.LinkedList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.SortedSet;
import java.util.TreeSet;
import tiptoe.grammar.Closures.Closure;
import tiptoe.grammar.Closures.Exit;
import tiptoe.grammar.Closures.Trail;
import tiptoe.grammar.Parse.Item;
import tiptoe.grammar.Parse.Phrase;
import tiptoe.grammar.Parse.Span;
import tiptoe.grammar.Parse.TagItem;
import tiptoe.grammar.Parse.WordItem;

/** Viterbi search for the best phrases over one sequence of words. */
final class PhraseParser {

  /**
   * The best way to a place in the words.
   *
   * @param uncovered words skipped so far
   * @param phrases phrases begun so far
   * @param before the way it goes on from; null at the start
   * @param step what was done last
   * @param tags tags passed in that step
   */
  private record Hypothesis(
      int uncovered, int phrases, double cost, Hypothesis before, Step step, Trail tags) {
    static final Hypothesis START = new Hypothesis(0, 0, 0, null, null, null);

    boolean beats(Hypothesis other) {
      if (other == null || uncovered != other.uncovered) {
        return other == null || uncovered < other.uncovered;
      }
      return phrases != other.phrases ? phrases < other.phrases : cost < other.cost;
    }

    Hypothesis then(Step step, double cost, Trail tags) {
      int skipped = uncovered + (step == Step.SKIP ? 1 : 0);
      int begun = phrases + (step == Step.BEGIN ? 1 : 0);
      return new Hypothesis(skipped, begun, this.cost + cost, this, step, tags);
    }
  }

  private enum Step {
    /** First word of a phrase. */
    BEGIN,
    /** A further word of it. */
    WORD,
    /** The end of it, no word. */
    END,
    /** A word outside any phrase. */
    SKIP
  }

  private final Closures closures;
  private final List<String> words;

  /** Best way to each state inside a phrase, and best way to stand between phrases. */
  private Map<Integer, Hypothesis> inside = new LinkedHashMap<>();

  private Hypothesis between = Hypothesis.START;

  PhraseParser(PhraseNetwork network, List<String> words) {
    this.closures = network.closures();
    this.words = words;
    words.forEach(word -> advance(word.toLowerCase(Locale.ROOT)));
  }

  private void advance(String word) {
    Map<Integer, Hypothesis> next = new LinkedHashMap<>();
    inside.forEach((state, way) -> extend(way, closures.of(state), word, Step.WORD, next));
    extend(between, closures.of(PhraseNetwork.START), word, Step.BEGIN, next);
    Hypothesis best = between.then(Step.SKIP, 0, null);
    for (Map.Entry<Integer, Hypothesis> entry : next.entrySet()) {
      Exit ending = closures.of(entry.getKey()).ending();
      if (ending != null) {
        Hypothesis ended = entry.getValue().then(Step.END, ending.cost(), ending.tags());
        best = ended.beats(best) ? ended : best;
      }
    }
    inside = next;
    between = best;
  }

  private static void extend(
      Hypothesis way, Closure closure, String word, Step step, Map<Integer, Hypothesis> next) {
    for (Exit exit : closure.exits().getOrDefault(word, List.of())) {
      Hypothesis further = way.then(step, exit.cost(), exit.tags());
      next.merge(exit.next(), further, (old, now) -> now.beats(old) ? now : old);
    }
  }

  /** What can follow the words, given the readings that leave the fewest uncovered. */
  PhraseNetwork.Following following() {
    int fewest = between.uncovered();
    for (Hypothesis way : inside.values()) {
      fewest = Math.min(fewest, way.uncovered());
    }
    SortedSet<String> following = new TreeSet<>();
    for (Map.Entry<Integer, Hypothesis> entry : inside.entrySet()) {
      if (entry.getValue().uncovered() == fewest) {
        following.addAll(closures.of(entry.getKey()).exits().keySet());
      }
    }
    boolean mayEnd = between.uncovered() == fewest;
    return new PhraseNetwork.Following(Collections.unmodifiableSortedSet(following), mayEnd);
  }

  Parse parse() {
    LinkedList<Phrase> phrases = new LinkedList<>();
    LinkedList<Span> uncovered = new LinkedList<>();
    LinkedList<Item> items = new LinkedList<>();
    int at = words.size();
    int to = at;
    double endCost = 0;
    for (Hypothesis way = between; way.step() != null; way = way.before()) {
      switch (way.step()) {
        case SKIP -> {
          at--;
          skip(uncovered, at);
        }
        case END -> {
          to = at;
          endCost = way.cost();
          addTags(items, way.tags(), at);
        }
        default -> {
          at--;
          items.addFirst(new WordItem(at));
          addTags(items, way.tags(), at);
          if (way.step() == Step.BEGIN) {
            phrases.addFirst(new Phrase(at, to, items, endCost - way.before().cost()));
            items.clear();
          }
        }
      }
    }
    return new Parse(phrases, uncovered);
  }

  private static void skip(LinkedList<Span> uncovered, int word) {
    boolean joins = !uncovered.isEmpty() && uncovered.getFirst().from() == word + 1;
    int to = joins ? uncovered.removeFirst().to() : word + 1;
    uncovered.addFirst(new Span(word, to));
  }

  private static void addTags(LinkedList<Item> items, Trail tags, int position) {
    for (Trail trail = tags; trail != null; trail = trail.before()) {
      items.addFirst(new TagItem(trail.tag(), position));
    }
  }
}
