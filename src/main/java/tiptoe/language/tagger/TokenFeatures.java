package tiptoe.language.tagger;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import opennlp.tools.util.BeamSearchContextGenerator;

/**
 * What the model looks at to label a word: the words about it and what the lexicon says of them.
 */
final class TokenFeatures implements BeamSearchContextGenerator<String> {
  private static final List<String> CUES = List.of("doubt", "others", "later");

  private final LayLexicon lexicon;
  private List<String> known = List.of();
  private List<String> kinds = List.of();
  private String cues = "";

  TokenFeatures(LayLexicon lexicon) {
    this.lexicon = lexicon;
  }

  /** Looks the sentence up once, before its words are labelled one by one. */
  void prepare(List<String> words) {
    List<String> found = new ArrayList<>(java.util.Collections.nCopies(words.size(), "-"));
    List<TermMatch> matches = lexicon.matches(words);
    Set<String> parts = new TreeSet<>();
    matches.forEach(match -> parts.addAll(match.steps(Sense.Kind.PART)));
    for (TermMatch match : matches) {
      String kind = kind(match, parts);
      for (int at = match.from(); at < match.to(); at++) {
        found.set(at, kind);
      }
    }
    for (Numbers.At number : Numbers.in(words, matches)) {
      for (int at = number.from(); at < number.numberTo(); at++) {
        found.set(at, "number");
      }
    }
    known = List.copyOf(words);
    kinds = found;
    cues = String.join("", CUES.stream().filter(cue -> lexicon.says(cue, words)).toList());
  }

  private static String kind(TermMatch match, Set<String> parts) {
    Set<String> kinds = new TreeSet<>();
    for (Sense sense : match.senses()) {
      switch (sense.kind()) {
        case CUE -> kinds.add(sense.value());
        case VALUE -> {
          boolean fits = parts.contains(sense.step());
          kinds.add(fits ? "value+" : sense.bound() ? "value" : "free");
        }
        default -> kinds.add(sense.kind().name().toLowerCase(java.util.Locale.ROOT));
      }
    }
    if (kinds.contains("value+")) {
      kinds.remove("value");
    }
    return String.join("|", kinds);
  }

  @Override
  public String[] getContext(int at, String[] words, String[] before, Object[] more) {
    if (!known.equals(List.of(words))) {
      prepare(List.of(words));
    }
    String label = at == 0 ? "<" : before[at - 1];
    List<String> features =
        new ArrayList<>(
            List.of(
                "w=" + word(at),
                "w-1=" + word(at - 1),
                "w+1=" + word(at + 1),
                "k=" + kind(at),
                "k-1=" + kind(at - 1),
                "k+1=" + kind(at + 1),
                "k-2=" + kind(at - 2),
                "k+2=" + kind(at + 2),
                "l=" + label,
                "lk=" + label + "," + kind(at),
                "kk=" + kind(at - 1) + "," + kind(at),
                "kk+=" + kind(at) + "," + kind(at + 1),
                "kw-1=" + kind(at) + "," + word(at - 1),
                "unit=" + Numbers.isUnit(word(at))));
    if (!cues.isEmpty()) {
      features.add("c=" + cues);
      features.add("ck=" + cues + "," + kind(at));
    }
    return features.toArray(new String[0]);
  }

  private String word(int at) {
    return at < 0 ? "<" : at >= known.size() ? ">" : known.get(at);
  }

  private String kind(int at) {
    return at < 0 ? "<" : at >= kinds.size() ? ">" : kinds.get(at);
  }
}
