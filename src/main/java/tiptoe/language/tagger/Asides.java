package tiptoe.language.tagger;

import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.IntStream;
import tiptoe.language.TypedText;

/**
 * Finds what is said between breaks to somebody in the room: a request ("could you knock that light
 * off"), what somebody is told to do or to leave ("leave them be mum", "don't squeeze"), thanks. It
 * holds nothing of the examination and no word that could turn round what was found, so that the
 * sentence says the same without it. The words are in {@code cues.txt}.
 */
final class Asides {
  private static final Set<WordItem.Kind> WEIGHTLESS =
      EnumSet.of(
          WordItem.Kind.FILLER,
          WordItem.Kind.DESCRIPTION,
          WordItem.Kind.AND,
          WordItem.Kind.UNKNOWN,
          WordItem.Kind.PLAN);
  private static final Set<WordItem.Kind> EXAMINED =
      EnumSet.of(
          WordItem.Kind.PART,
          WordItem.Kind.FINDING,
          WordItem.Kind.SIDE,
          WordItem.Kind.NUMBER,
          WordItem.Kind.NOT,
          WordItem.Kind.SAME,
          WordItem.Kind.OTHER);
  private static final Set<WordItem.Kind> UNSURE =
      EnumSet.of(WordItem.Kind.DOUBT, WordItem.Kind.FOREIGN);

  private final SentenceItems sentence;
  private final LayLexicon lexicon;
  private final List<String> words;
  private final List<List<WordItem>> chunks;

  Asides(SentenceItems sentence) {
    this.sentence = sentence;
    this.lexicon = sentence.lexicon();
    this.words = sentence.words();
    this.chunks = WordItem.chunks(sentence.items());
  }

  /** The indexes of the words of all asides; none where there is nothing else. */
  Set<Integer> words() {
    Set<Integer> asides = new TreeSet<>();
    boolean more = false;
    for (int i = 0; i < chunks.size(); i++) {
      if (!chunks.get(i).isEmpty() && isAside(i)) {
        asides.addAll(WordItem.places(chunks.get(i)));
      } else {
        more |= !chunks.get(i).isEmpty();
      }
    }
    return more ? asides : Set.of();
  }

  private boolean isAside(int i) {
    List<WordItem> chunk = chunks.get(i);
    if (parts(i)) {
      return false;
    }
    List<String> all = WordItem.said(chunk, words);
    boolean asks = all.get(all.size() - 1).equals(TypedText.ASKS);
    List<String> said = asks ? all.subList(0, all.size() - 1) : all;
    if (said.isEmpty() || said.contains(TypedText.ASKS)) {
      return false;
    }
    if (!asks && isSorry(i)) {
      return true;
    }
    int from = 0;
    while (from < said.size() && leads(said, from) > 0) {
      from += leads(said, from);
    }
    List<String> rest = said.subList(from, said.size());
    if (rest.isEmpty()) {
      return !asks && said.size() == lexicon.longest("bystander", said);
    }
    if (goesOnAboutBaby(rest)) {
      return false;
    }
    int request =
        Math.max(lexicon.longest("requests", rest), lexicon.longest("asks-somebody", rest));
    if (request > 0) {
      return isWeightless(chunk, true, false) && isSafe(rest.subList(request, rest.size()));
    }
    int refusal = lexicon.longest("forbidding", rest);
    if (refusal > 0 && refusal < rest.size()) {
      List<String> forbidden = rest.subList(refusal, rest.size());
      boolean plain =
          lexicon.isListed("forbidden", forbidden.get(0))
              || isAddressed(said) && !lexicon.isListed("finds-out", forbidden.get(0));
      return plain && !asks && isWeightless(chunk, false, true) && isSafe(forbidden);
    }
    int told = Math.max(lexicon.longest("thanks", rest), lexicon.longest("told-aside", rest));
    return (told > 0 || isBid(rest, said))
        && !asks
        && (isWeightless(chunk, false, false) || handles(rest, chunk))
        && isSafe(rest.subList(told, rest.size()));
  }

  // "On the right, no, forgive me, on the left", "not yellow, hold her to the window, milk spots on
  // the chin": without it what stands behind would be put right or denied.
  private boolean parts(int i) {
    List<WordItem> before = i == 0 ? List.of() : chunks.get(i - 1);
    boolean reaches =
        before.stream()
            .anyMatch(
                item ->
                    item.kind() == WordItem.Kind.CORRECTION
                        || item.kind() == WordItem.Kind.NOT
                        || item.kind() == WordItem.Kind.FINDING
                            && lexicon.denies(item.match(), words));
    return reaches
        && chunks.subList(i + 1, chunks.size()).stream().anyMatch(Asides::isOfExamination);
  }

  // "Oh", "and", "dad", "right then"
  private int leads(List<String> said, int from) {
    List<String> rest = said.subList(from, said.size());
    return Math.max(lexicon.longest("aside-opener", rest), called(rest));
  }

  private int called(List<String> rest) {
    return Math.max(
        lexicon.isListed("address", rest.get(0)) ? 1 : 0, lexicon.longest("called", rest));
  }

  private boolean isAddressed(List<String> said) {
    return IntStream.range(0, said.size())
        .mapToObj(at -> said.subList(at, said.size()))
        .anyMatch(rest -> called(rest) > 0 || lexicon.longest("polite", rest) > 0);
  }

  // "Fetch the probe", "come here mum"; but "nipples fine, sit a bit wide".
  private boolean isBid(List<String> rest, List<String> said) {
    boolean bids = lexicon.isListed("bids", rest.get(0));
    boolean object = rest.size() > 1 && lexicon.isListed("bid-object", rest.get(1));
    return bids && object
        || (bids || lexicon.isListed("bids-somebody", rest.get(0))) && isAddressed(said);
  }

  // "Hold that arm still", "open your eyes for me": nothing is found by it.
  private boolean handles(List<String> rest, List<WordItem> chunk) {
    return lexicon.isListed("handles", rest.get(0))
        && rest.size() > 1
        && lexicon.isListed("definite", rest.get(1))
        && chunk.stream()
            .allMatch(
                item ->
                    isWeightless(item)
                        || item.kind() == WordItem.Kind.PART
                        || lexicon.isListed("held", sentence.said(item)));
  }

  private boolean isWeightless(List<WordItem> chunk, boolean asks, boolean forbids) {
    return chunk.stream()
        .allMatch(
            item ->
                isWeightless(item)
                    || asks && UNSURE.contains(item.kind()) && isRequest(item)
                    || forbids && item.kind() == WordItem.Kind.NOT && isForbidding(item)
                    || lexicon.isListed("held", sentence.said(item)));
  }

  // A person, but nobody of whom something is told.
  private boolean isWeightless(WordItem item) {
    return WEIGHTLESS.contains(item.kind())
        || item.kind() == WordItem.Kind.FOREIGN && lexicon.isListed("others", sentence.said(item));
  }

  private boolean isRequest(WordItem item) {
    List<String> begins = words.subList(item.from(), words.size());
    return lexicon.longest("requests", begins) > 0
        || lexicon.longest("asks-somebody", begins) > 0
        || lexicon.isListed("asking", begins.get(0));
  }

  private boolean isForbidding(WordItem item) {
    return lexicon.isListed("forbidding", sentence.said(item))
        || item.from() > 0
            && lexicon.isListed("forbidding", words.subList(item.from() - 1, item.to()));
  }

  // Nothing that would turn a finding round or look at it once more.
  private boolean isSafe(List<String> said) {
    return IntStream.range(0, said.size())
        .filter(at -> at + 1 == said.size() || !lexicon.isListed("to-you", said.get(at + 1)))
        .noneMatch(
            at ->
                lexicon.isListed("turns-round", said.get(at))
                    || lexicon.isListed("looks-again", said.get(at)));
  }

  // "Hold his arm and it stops"
  private boolean goesOnAboutBaby(List<String> said) {
    return IntStream.range(0, said.size() - 1)
        .filter(at -> lexicon.isListed("goes-on-to", said.get(at)))
        .anyMatch(at -> lexicon.isListed("finds-behind", said.get(at + 1)));
  }

  // "Nappy off, sorry, cold hands", "sorry mummy" at the end: nothing is put right, since nothing
  // was said before it or nothing is behind it.
  private boolean isSorry(int i) {
    List<WordItem> chunk = chunks.get(i);
    List<String> said = WordItem.said(chunk, words);
    if (!lexicon.isListed("excuses", said.get(0))) {
      return false;
    }
    int at = 0;
    while (at < said.size()) {
      int one =
          lexicon.isListed("excuses", said.get(at))
              ? 1
              : Math.max(
                  called(said.subList(at, said.size())),
                  lexicon.longest("filler", said.subList(at, said.size())));
      if (one == 0) {
        return false;
      }
      at += one;
    }
    boolean first = i > 0 && chunks.subList(0, i).stream().noneMatch(Asides::isOfExamination);
    boolean last = chunks.subList(i + 1, chunks.size()).stream().noneMatch(Asides::isOfExamination);
    return first || last && isAddressed(said);
  }

  private static boolean isOfExamination(List<WordItem> chunk) {
    return chunk.stream().anyMatch(item -> EXAMINED.contains(item.kind()));
  }
}
