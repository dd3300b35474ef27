package tiptoe.language.tagger;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/**
 * Tells talk about findings from what is found: a definition, whose subject is any such thing and
 * no thing of this baby ("a murmur's just a noise"), whom somebody met or who lies elsewhere, what
 * is read out, a question, and a finding that is only the topic ("the class about jaundice"). The
 * words are in {@code cues.txt}. What has no such form {@link TalkModel} may tell.
 */
final class Talk {
  private static final int LONGEST_SUBJECT = 9;
  private static final int LONGEST_MET = 8;
  private static final String IS = "'s";
  private static final Set<String> INVERTED = Set.of("is", "are");
  private static final List<String> DESCRIBING =
      List.of("severity", "neutral", "describes", "little", "no", "both", "good", "seen", "turn");

  private final LayLexicon lexicon;
  private final List<String> words;
  private final Breaks breaks;

  Talk(LayLexicon lexicon, List<String> words) {
    this.lexicon = lexicon;
    this.words = words;
    this.breaks = new Breaks(words);
  }

  /** Whether the sentence is such talk as a whole. */
  boolean isAll() {
    return asksOrRemembers()
        || lexicon.says("naming", words)
        || IntStream.range(0, words.size())
            .anyMatch(at -> isTopic(at) || begins(at) && defines(at));
  }

  /** The same for what is told of the baby, which may be in words of other people and things. */
  boolean asksOrRemembers() {
    return isToParent() || asksOrRecalls();
  }

  /** Whether a parent is told how she is: "you're looking pink and rosy, mum". */
  boolean isToParent() {
    return IntStream.range(0, words.size()).anyMatch(this::isToParent);
  }

  /** Whether it asks, recalls, reads out or explains, whoever is told so. */
  boolean asksOrRecalls() {
    return IntStream.range(0, words.size()).anyMatch(this::isMet)
        || IntStream.range(0, words.size()).anyMatch(at -> begins(at) && explains(at))
        || lexicon.says("unreal", words)
        || lexicon.says("another", words)
        || lexicon.says("read-out", words)
        || !words.isEmpty() && asks(afterOpeners(0));
  }

  // Where a stretch begins, behind "so", "well".
  private boolean begins(int at) {
    return at == 0 && !opens(0) || at > 0 && (breaks.at(at - 1) || opensOnly(at)) && !opens(at);
  }

  private boolean opensOnly(int at) {
    return IntStream.range(breaks.from(at), at).allMatch(this::opens);
  }

  private boolean opens(int at) {
    return lexicon.isListed("opener", words.get(at));
  }

  private int afterOpeners(int from) {
    int at = from;
    while (at + 1 < words.size() && (opens(at) || breaks.at(at))) {
      at++;
    }
    return at;
  }

  /**
   * What a stretch is about: the words before its verb.
   *
   * @param verb index of the verb, or of the word whose end it is: "a murmur's"
   */
  private record Subject(List<String> words, List<TermMatch> matches, int verb, boolean owns) {}

  private Subject subject(int from, int verb) {
    List<String> subject = new ArrayList<>(words.subList(from, verb));
    boolean owns = words.get(verb).endsWith(IS);
    if (owns) {
      subject.add(words.get(verb).substring(0, words.get(verb).length() - IS.length()));
    }
    return new Subject(subject, lexicon.matches(subject), verb, owns);
  }

  // "A sacral dimple worth scanning is deep", "milia are the …", "a murmur's just a noise"; but "a
  // soft murmur is heard", "a dimple on the midline is shallow".
  private boolean defines(int from) {
    boolean any = lexicon.isListed("any", words.get(from));
    int to = Math.min(breaks.to(from), from + LONGEST_SUBJECT);
    for (int at = from + 1; at < to && !lexicon.isListed("new-subject", words.get(at)); at++) {
      boolean verb =
          lexicon.isListed(any ? "verb-of-one" : "verb-of-many", words.get(at))
              || any && isDoneByBaby(at);
      boolean copula = lexicon.isListed("copula", words.get(at)) || words.get(at).endsWith(IS);
      if (at + 1 < words.size() && (verb || copula)) {
        Subject subject = subject(from, at);
        if (isAnyFinding(subject, any) && (verb || isOfAny(subject, any, to))) {
          return true;
        }
      }
    }
    return false;
  }

  // "A floppy baby hangs like a rag doll"
  private boolean isDoneByBaby(int at) {
    String verb = words.get(at);
    return lexicon.isListed("newborn", words.get(at - 1))
        && verb.endsWith("s")
        && !verb.endsWith(IS)
        && !lexicon.isListed("copula", verb);
  }

  private boolean isAnyFinding(Subject subject, boolean any) {
    return subject.matches().stream().anyMatch(m -> m.is(Sense.Kind.VALUE) && lexicon.isAbnormal(m))
        && (any || isCovered(subject))
        && subject.words().stream()
            .noneMatch(
                word ->
                    Stream.of("definite", "severity", "no")
                        .anyMatch(list -> lexicon.isListed(list, word)));
  }

  // Whether what is said behind the verb is neither how nor where it was found.
  private boolean isOfAny(Subject subject, boolean any, int to) {
    int said = subject.verb() + 1;
    while (said + 1 < to && lexicon.isListed("by-the-way", words.get(said))) {
      said++;
    }
    String behind = words.get(said);
    boolean here =
        Stream.of("seen", "preposition", "found-here")
            .anyMatch(list -> lexicon.isListed(list, behind));
    // "Milia are blocked glands", "mottled is cold"
    boolean bare =
        !here
            && !subject.owns()
            && subject.matches().stream().noneMatch(match -> match.is(Sense.Kind.PART))
            && isCovered(subject)
            && DESCRIBING.stream().noneMatch(list -> lexicon.isListed(list, behind))
            && !breaks.at(said);
    return any ? !here : bare || lexicon.isListed("in-general", behind);
  }

  // "Is yellow eyes jaundice", "is palate intact": terms side by side behind the verb.
  private boolean asksOf(int verb) {
    if (verb > 0 || !INVERTED.contains(words.get(verb))) {
      return false;
    }
    List<TermMatch> matches = lexicon.matches(words.subList(verb + 1, breaks.to(verb)));
    return matches.size() > 1
        && matches.get(0).from() == 0
        && matches.get(1).from() == matches.get(0).to()
        && matches.stream().anyMatch(match -> match.is(Sense.Kind.PART));
  }

  // "Strawberry marks"
  private boolean isCovered(Subject subject) {
    return IntStream.range(0, subject.words().size())
        .allMatch(
            at ->
                at > 0 && lexicon.isListed("thing", subject.words().get(at))
                    || subject.matches().stream().anyMatch(m -> m.from() <= at && at < m.to()));
  }

  // "I had a baby down the road with a cleft", "we looked after a pair of twins": a person who is
  // new
  // to the listener is not the one who lies there.
  private boolean isMet(int at) {
    if (!isSpeaker(at)) {
      return false;
    }
    int verb = at + 1;
    while (verb < words.size() && lexicon.isListed("by-the-way", words.get(verb))) {
      verb++;
    }
    if (verb >= words.size() || !lexicon.isListed("meets", words.get(verb))) {
      return false;
    }
    int to = Math.min(breaks.to(at), verb + LONGEST_MET);
    boolean anew = false;
    for (int i = verb + 1; i < to; i++) {
      anew |= lexicon.isListed("any", words.get(i)) || lexicon.isListed("met", words.get(i));
      if (lexicon.isListed("definite", words.get(i))) {
        return false;
      }
      if (anew && lexicon.isListed("met", words.get(i))) {
        return true;
      }
    }
    return false;
  }

  // "You're looking pink and rosy, mum": it is she who is told so.
  private boolean isToParent(int at) {
    return lexicon.isListed("parent", words.get(at))
        && at > 1
        && breaks.at(at - 1)
        && (at + 1 == words.size() || breaks.at(at + 1))
        && lexicon.isListed("told-you", words.get(afterOpeners(breaks.from(at - 2))))
        && !lexicon.matches(words.subList(breaks.from(at - 2), at)).isEmpty();
  }

  // "Milk spots are little blocked glands", "jaundice is the liver getting going": what any such
  // thing comes from.
  private boolean explains(int from) {
    int to = breaks.to(from);
    for (int at = from + 1; at < Math.min(to, from + LONGEST_SUBJECT); at++) {
      String word = words.get(at);
      boolean owns = word.endsWith(IS) && !lexicon.isListed("definite", word);
      if (!INVERTED.contains(word) && !owns) {
        continue;
      }
      Subject subject = subject(from, at);
      return subject.words().stream().noneMatch(one -> lexicon.isListed("definite", one))
          && (owns ? isCovered(subject) : !subject.matches().isEmpty())
          && words.subList(at + 1, to).stream().anyMatch(one -> lexicon.isListed("origin", one));
    }
    return false;
  }

  private boolean isSpeaker(int at) {
    return lexicon.isListed("experienced", words.get(at));
  }

  // "Where'd it go", "is jaundice the yellow", "does moulding hurt", "are we still on for the
  // class, the one about jaundice"
  private boolean asks(int from) {
    String first = words.get(from);
    if (lexicon.isListed("asks-where", first)) {
      return true;
    }
    if (first.equals("any") || asksOf(from)) {
      return true;
    }
    if (!lexicon.isListed("asking", first) || from + 2 >= words.size()) {
      return false;
    }
    int subject = from + 1;
    while (subject + 1 < words.size() && lexicon.isListed("determiner", words.get(subject))) {
      subject++;
    }
    int begin = subject;
    return lexicon.matches(words.subList(begin, words.size())).stream()
        .filter(match -> match.from() == 0)
        .map(match -> begin + match.to())
        .anyMatch(
            to ->
                lexicon.isListed("inverts", first)
                    || to < words.size() && lexicon.isListed("asked-whether", words.get(to)));
  }

  // "The one about jaundice", "the leaflet on tongue ties"; "a bit blue about the mouth" is a
  // place.
  private boolean isTopic(int at) {
    boolean about =
        words.get(at).equals("about")
            && (at == 0 || !lexicon.isListed("unsure-about", words.get(at - 1)));
    boolean on =
        Set.of("on", "for").contains(words.get(at))
            && at > 0
            && lexicon.isListed("topic", words.get(at - 1));
    if (!about && !on) {
      return false;
    }
    int from = at + 1;
    while (from < words.size() && Set.of("a", "an", "the", "any").contains(words.get(from))) {
      from++;
    }
    int begin = from;
    if (!Numbers.in(words.subList(at, Math.min(words.size(), begin + 1)), List.of()).isEmpty()) {
      return false;
    }
    return lexicon.matches(words.subList(begin, words.size())).stream()
        .filter(match -> match.from() == 0)
        .anyMatch(match -> on || match.is(Sense.Kind.VALUE) && lexicon.isAbnormal(match));
  }
}
