package tiptoe.language.tagger;

import java.util.List;
import java.util.Set;
import java.util.TreeSet;

/** Finds what takes nothing from what is found: talk, what is denied beside, what is said again. */
final class WeightlessWords {
  private static final int MOST_UNKNOWN = 2;

  private final SentenceItems sentence;
  private final LayLexicon lexicon;
  private final List<String> words;
  private final List<WordItem> items;

  WeightlessWords(SentenceItems sentence) {
    this.sentence = sentence;
    this.lexicon = sentence.lexicon();
    this.words = sentence.words();
    this.items = sentence.items();
  }

  /**
   * Chunks between breaks that hold nothing of the examination and no word that could turn
   * something round, only words of every day: "he's had quite a morning".
   */
  Set<Integer> asides() {
    Set<Integer> asides = new TreeSet<>();
    for (List<WordItem> chunk : WordItem.chunks(items)) {
      int from = isCounting(chunk) ? 0 : beginningOfTalk(chunk);
      chunk.subList(from, chunk.size()).forEach(item -> asides.addAll(item.places()));
    }
    return asides;
  }

  // The whole of it, or what goes on behind "when", "because": "red when he's had a shout".
  private int beginningOfTalk(List<WordItem> chunk) {
    int from = chunk.size();
    while (from > 0 && isEveryday(chunk.get(from - 1))) {
      from--;
    }
    while (from > 0 && from < chunk.size() && !isSubordinate(chunk.get(from))) {
      from++;
    }
    return from;
  }

  private boolean isSubordinate(WordItem item) {
    return lexicon.isListed("subordinate", words.get(item.from()));
  }

  private boolean isEveryday(WordItem item) {
    return switch (item.kind()) {
      case FILLER, AND, TURN -> true;
      case UNKNOWN -> lexicon.isListed("aside", List.of(words.get(item.from())));
      default -> false;
    };
  }

  // "One, two, three, four, five."
  private boolean isCounting(List<WordItem> chunk) {
    return chunk.stream()
        .allMatch(
            item ->
                item.isEmpty()
                    || item.kind() == WordItem.Kind.AND
                    || item.kind() == WordItem.Kind.NUMBER
                        && sentence.isCount(sentence.said(item)));
  }

  /**
   * "No bogginess", "no murmurs, rubs or gallops": what is denied beside, and is nothing that the
   * protocol asks for.
   */
  Set<Integer> deniedOthers(Set<Integer> stated) {
    Set<Integer> others = new TreeSet<>();
    for (int i = 0; i < items.size(); i++) {
      WordItem item = items.get(i);
      boolean no =
          item.kind() == WordItem.Kind.NOT
              && lexicon.isListed("no-thing", words.get(item.from()))
              && item.to() == item.from() + 1;
      if (!no) {
        continue;
      }
      Set<Integer> denied = new TreeSet<>(item.places());
      int unknown = 0;
      int at = i + 1;
      boolean ends = false;
      while (at < items.size() && !ends) {
        WordItem next = items.get(at);
        switch (next.kind()) {
          case UNKNOWN -> {
            // "No mass flobbery": who knows of what.
            boolean tells = items.get(at - 1).kind() == WordItem.Kind.FINDING;
            unknown += tells ? MOST_UNKNOWN + 1 : 1;
            denied.addAll(next.places());
            at++;
          }
          case FILLER -> {
            boolean thing = lexicon.isListed("thing", sentence.said(next));
            unknown += thing ? 1 : 0;
            at++;
          }
          case OR -> at++;
          case FINDING -> {
            ends = !next.places().stream().allMatch(stated::contains);
            boolean described = at > 0 && items.get(at - 1).kind() == WordItem.Kind.UNKNOWN;
            if (ends || described) {
              unknown = MOST_UNKNOWN + 1;
            }
            at++;
          }
          case COMMA -> {
            boolean goesOn =
                at + 2 < items.size()
                    && items.get(at + 1).kind() == WordItem.Kind.UNKNOWN
                    && items.get(at + 2).kind() == WordItem.Kind.OR;
            ends = !goesOn;
            at++;
          }
          case TURN, AND -> ends = true;
          default -> {
            ends = true;
            unknown = MOST_UNKNOWN + 1;
          }
        }
      }
      if (unknown > 0 && unknown <= MOST_UNKNOWN) {
        others.addAll(denied);
      }
    }
    return others;
  }

  /** "No jaundice, none at all." */
  Set<Integer> saidAgain(Set<Integer> stated) {
    Set<Integer> again = new TreeSet<>();
    boolean denied = false;
    for (List<WordItem> chunk : WordItem.chunks(items)) {
      boolean onlyNone =
          chunk.stream()
              .allMatch(
                  item ->
                      item.isEmpty()
                          || item.kind() == WordItem.Kind.NOT
                              && lexicon.isListed("none-again", words.get(item.from())));
      if (onlyNone && denied) {
        chunk.forEach(item -> again.addAll(item.places()));
      } else {
        denied =
            chunk.stream()
                .filter(item -> stated.contains(item.from()))
                .anyMatch(
                    item ->
                        item.kind() == WordItem.Kind.NOT || lexicon.denies(item.match(), words));
      }
    }
    return again;
  }
}
