package tiptoe.language.tagger;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.IntStream;
import tiptoe.language.SecondReading.Parted;
import tiptoe.language.TypedText;

/**
 * Parts a sentence that was said in one breath as commas would: before a clause that begins anew
 * ("… strong she's alert"), a denial or a structure behind what has its finding, and around talk
 * and calls. The words are in {@code cues.txt}.
 */
final class Partings {
  private final LayLexicon lexicon;
  private final List<String> words;
  private final List<WordItem> items;

  /**
   * @param words without breaks
   * @param items what they are
   */
  Partings(LayLexicon lexicon, List<String> words, List<WordItem> items) {
    this.lexicon = lexicon;
    this.words = words;
    this.items = items;
  }

  /** The sentence parted. */
  Parted parted() {
    boolean unsure =
        items.stream()
            .anyMatch(
                item -> item.kind() == WordItem.Kind.DOUBT || item.kind() == WordItem.Kind.PLAN);
    boolean unfamiliar =
        items.stream()
            .filter(item -> item.kind() == WordItem.Kind.UNKNOWN)
            .anyMatch(item -> !isTalk(item));
    return new Parted(unsure ? words : withBreaks(), isTalk(), unfamiliar);
  }

  // Talk of others or of any such thing takes the whole sentence with it, and so does a question.
  private boolean isTalk() {
    boolean asks =
        words.size() > 1
            && lexicon.isListed("asking", words.get(0))
            && (lexicon.isListed("asked-of", words.get(1))
                || lexicon.isListed("determiner", words.get(1)));
    return asks
        || IntStream.range(0, items.size())
            .anyMatch(i -> items.get(i).kind() == WordItem.Kind.FOREIGN && !isCall(i));
  }

  private List<String> withBreaks() {
    Set<Integer> places = places();
    List<String> parted = new ArrayList<>();
    for (int at = 0; at < words.size(); at++) {
      if (places.contains(at)) {
        parted.add(TypedText.BREAK);
      }
      parted.add(words.get(at));
    }
    return parted;
  }

  // Words before which a break is put.
  private Set<Integer> places() {
    Set<Integer> places = new TreeSet<>();
    int from = talkTo();
    if (from > 0) {
      places.add(items.get(from).from());
    }
    int end = talkFrom();
    for (int i = from + 1; i < items.size(); i++) {
      if (i == end) {
        places.add(items.get(i).from());
        break;
      }
      int lead = lead(i, from);
      boolean called = isCall(i);
      if (called && i + 1 < items.size()) {
        places.add(items.get(i + 1).from());
      }
      boolean clause = lead > from && isClause(i, from, lead);
      boolean denial = lead > from && isDenial(i, from, lead);
      boolean begins =
          called
              || clause
              || lead > from
                  && (denial
                      || isPart(i, from, lead)
                      || isAnother(i, from, lead)
                      || isSide(i, from)
                      || isNumber(i, from));
      int otherSide = otherSide(i, from);
      if (!begins && otherSide > from) {
        begins = true;
        lead = otherSide;
      }
      if (begins) {
        int at = called ? i : clause || denial ? behindSide(lead, from) : lead;
        places.add(items.get(at).from());
        from = called ? i + 1 : at;
      }
    }
    places.remove(0);
    return places;
  }

  // The first of the little words that lead to an item: "and so the left".
  private int lead(int item, int from) {
    int lead = item;
    while (lead > from && isLead(items.get(lead - 1), item)) {
      lead--;
    }
    return lead;
  }

  private boolean isLead(WordItem before, int item) {
    boolean side =
        before.kind() == WordItem.Kind.SIDE && items.get(item).kind() == WordItem.Kind.PART;
    return side
        || before.kind() == WordItem.Kind.AND
        || before.kind() == WordItem.Kind.TURN
        || before.isEmpty()
            && before.to() == before.from() + 1
            && lexicon.isListed("leads-in", words.get(before.from()));
  }

  // "… she's alert", "… and i can hear", but not "how she likes it", "that i can see".
  private boolean isClause(int i, int from, int lead) {
    int at = items.get(i).from();
    boolean points =
        lexicon.isListed("points-out", words.get(at))
            && at + 1 < words.size()
            && lexicon.isListed("copula", words.get(at + 1));
    // "Happily, so both are open"
    boolean follows =
        words.get(at).equals("so")
            && i + 1 < items.size()
            && (items.get(i + 1).kind() == WordItem.Kind.SIDE
                || items.get(i + 1).kind() == WordItem.Kind.PART);
    boolean refers =
        words.get(at).equals("so")
            && lexicon.isListed("begins-clause", words.get(items.get(i).to() - 1));
    return (points || follows || refers || lexicon.isListed("begins-clause", words.get(at)))
        && !isBound(lead)
        && items.subList(from, lead).stream().anyMatch(item -> !item.isEmpty());
  }

  // "Down, left one I can't find": the side is the clause's, unless it is said where something is.
  private int behindSide(int lead, int from) {
    int at = lead;
    if (at > from && words.get(items.get(at - 1).from()).equals("one")) {
      at--;
    }
    if (at > from + 1 && items.get(at - 1).kind() == WordItem.Kind.SIDE) {
      int first = lead(at - 1, from);
      return first > from && isSaid(from, first) && !isBound(first) ? first : lead;
    }
    return lead;
  }

  // What a word before it needs: "when she", "in the left".
  private boolean isBound(int lead) {
    String before = words.get(items.get(lead).from() - 1);
    return lexicon.isListed("needs-more", before) || lexicon.isListed("preposition", before);
  }

  // "Open not bulging", "easy breathing no recession"
  private boolean isDenial(int i, int from, int lead) {
    WordItem item = items.get(i);
    boolean denies =
        item.kind() == WordItem.Kind.NOT && !words.get(item.from()).equals("neither")
            || item.kind() == WordItem.Kind.FINDING && lexicon.denies(item.match(), words);
    boolean ofMore =
        item.kind() == WordItem.Kind.FINDING
            || items.subList(i + 1, items.size()).stream()
                .anyMatch(
                    next ->
                        next.kind() == WordItem.Kind.FINDING
                            || next.kind() == WordItem.Kind.PART
                            || next.kind() == WordItem.Kind.UNKNOWN);
    boolean said =
        isSaid(from, lead)
            || items.subList(from, lead).stream().anyMatch(one -> one.kind() == WordItem.Kind.NOT)
                && items.get(lead - 1).kind() != WordItem.Kind.NOT;
    return denies && ofMore && !isBound(lead) && said && !isOr(lead);
  }

  // "Heart sounds normal the left hip is stable": a structure with a finding of its own.
  private boolean isPart(int i, int from, int lead) {
    WordItem part = items.get(i);
    boolean behindTalk =
        from > 0 && lexicon.isListed("pronoun", words.get(items.get(lead).from() - 1));
    if (part.kind() != WordItem.Kind.PART
        || isBound(lead)
        || !isSaid(from, lead) && !behindTalk
        || isOr(lead)) {
      return false;
    }
    boolean own = false;
    for (int at = i + 1; at < items.size() && !own; at++) {
      WordItem.Kind kind = items.get(at).kind();
      if (kind == WordItem.Kind.FINDING
          || kind == WordItem.Kind.NUMBER
          || kind == WordItem.Kind.NOT && at == items.size() - 1) {
        own = true;
      } else if (kind == WordItem.Kind.TURN || kind == WordItem.Kind.COMMA) {
        break;
      }
    }
    Set<String> steps = part.match().steps(Sense.Kind.PART);
    List<WordItem> before = items.subList(from, lead);
    boolean named =
        before.stream()
            .anyMatch(
                item ->
                    item.kind() == WordItem.Kind.PART
                        && !item.match().steps(Sense.Kind.PART).isEmpty());
    boolean fits =
        before.stream()
            .filter(item -> item.kind() == WordItem.Kind.FINDING)
            .anyMatch(
                item -> item.match().steps(Sense.Kind.VALUE).stream().anyMatch(steps::contains));
    return own && (named || !fits);
  }

  // "Jittery a tremor of the hands", "stays still a left facial palsy"
  private boolean isAnother(int i, int from, int lead) {
    return items.get(i).kind() == WordItem.Kind.FINDING
        && lexicon.isListed("any", words.get(items.get(lead).from()))
        && !isBound(lead)
        && isSaid(from, lead)
        && !isOr(lead);
  }

  // "Right strong left strong": each side before its finding.
  private boolean isSide(int i, int from) {
    return items.get(i).kind() == WordItem.Kind.SIDE
        && i + 1 < items.size()
        && items.get(i + 1).kind() == WordItem.Kind.FINDING
        && i - 2 >= from
        && items.get(i - 1).kind() == WordItem.Kind.FINDING
        && items.get(i - 2).kind() == WordItem.Kind.SIDE;
  }

  // "On the left and on the right also": where "and" leads to the other side; else −1.
  private int otherSide(int i, int from) {
    WordItem side = items.get(i);
    if (side.kind() != WordItem.Kind.SIDE || i == items.size() - 1) {
      return -1;
    }
    int lead = i;
    while (lead > from
        && items.get(lead - 1).isEmpty()
        && items.get(lead - 1).to() == items.get(lead - 1).from() + 1) {
      lead--;
    }
    boolean joined = lead > from && items.get(lead - 1).kind() == WordItem.Kind.AND;
    boolean other =
        joined
            && items.subList(from, lead - 1).stream()
                .anyMatch(
                    item ->
                        item.kind() == WordItem.Kind.SIDE && !item.sides().equals(side.sides()));
    return other && isSaid(from, lead - 1) && lead < i ? lead - 1 : -1;
  }

  // "Let me count once more sixty-four", "i read that backwards three point two"
  private boolean isNumber(int i, int from) {
    List<WordItem> before = items.subList(from, i);
    List<String> said = words.subList(items.get(from).from(), items.get(i).from());
    return items.get(i).kind() == WordItem.Kind.NUMBER
        && from > 0
        && before.stream().allMatch(item -> item.isEmpty() || !isContent(item))
        && (lexicon.isListed("lets", said.get(0))
            || lexicon.says("misread", said)
            || said.stream().anyMatch(word -> lexicon.isListed("slip", word)));
  }

  private static boolean isContent(WordItem item) {
    return switch (item.kind()) {
      case PART, FINDING, SIDE, NOT, NUMBER -> true;
      default -> false;
    };
  }

  private boolean isSaid(int from, int to) {
    return items.subList(from, to).stream()
        .anyMatch(
            item -> item.kind() == WordItem.Kind.FINDING || item.kind() == WordItem.Kind.NUMBER);
  }

  private boolean isOr(int lead) {
    return items.get(lead - 1).kind() == WordItem.Kind.OR;
  }

  // "Sorry", "mum": called out between.
  private boolean isCall(int i) {
    WordItem item = items.get(i);
    if (item.kind() == WordItem.Kind.CORRECTION) {
      return true;
    }
    if (item.to() != item.from() + 1) {
      return false;
    }
    String before = i == 0 ? TypedText.BREAK : words.get(item.from() - 1);
    String behind = item.to() == words.size() ? TypedText.BREAK : words.get(item.to());
    return lexicon.isListed("calls", words.get(item.from()))
        || lexicon.isListed("address", words.get(item.from()))
            && !lexicon.isListed("spoken-of", before)
            && (behind.equals("and") || !lexicon.isListed("speaks", behind))
            && !lexicon.isListed("needs-more", before);
  }

  // Where talk ends that the sentence begins with; 0 where there is none.
  private int talkTo() {
    int to = 0;
    boolean talks = false;
    while (to < items.size() && isTalk(items.get(to))) {
      talks |= items.get(to).kind() == WordItem.Kind.UNKNOWN;
      to++;
    }
    while (to > 0 && to < items.size() && isLead(items.get(to - 1), to)) {
      to--;
    }
    // "Send the cord blood": an object, and no talk.
    boolean object =
        to > 0
            && to < items.size()
            && items.get(to - 1).kind() == WordItem.Kind.UNKNOWN
            && lexicon.isListed("determiner", words.get(items.get(to).from()));
    return talks && to > 0 && to < items.size() && !object && !isBound(to) ? to : 0;
  }

  // Where talk begins that the sentence ends with.
  private int talkFrom() {
    int from = items.size();
    boolean talks = false;
    while (from > 0 && isTalk(items.get(from - 1))) {
      talks |= items.get(from - 1).kind() == WordItem.Kind.UNKNOWN;
      from--;
    }
    boolean begins = from > 0 && from < items.size() - 1 && !isJoint(items.get(from));
    return talks && begins ? from : items.size();
  }

  // A little word that the talk behind it cannot begin with.
  private boolean isJoint(WordItem item) {
    String word = words.get(item.from());
    return lexicon.isListed("preposition", word)
        || lexicon.isListed("means", word)
        || lexicon.isListed("needs-more", word);
  }

  private boolean isTalk(WordItem item) {
    return item.isEmpty() && item.kind() != WordItem.Kind.DESCRIPTION
        || item.kind() == WordItem.Kind.UNKNOWN
            && lexicon.isListed("aside", words.subList(item.from(), item.to()));
  }
}
