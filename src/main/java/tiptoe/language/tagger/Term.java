package tiptoe.language.tagger;

import java.util.List;

/** Words of the lay lexicon with one of their senses. */
record Term(List<String> words, Sense sense) {
  Term {
    words = List.copyOf(words);
  }
}
