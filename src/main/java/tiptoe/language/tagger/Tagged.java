package tiptoe.language.tagger;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;

/**
 * A sentence with the label of each word.
 *
 * @param labels one a word; null for a word that is none
 * @param template what it was made from
 */
record Tagged(List<String> words, List<Label> labels, String template) {
  Tagged {
    words = List.copyOf(words);
    labels = Collections.unmodifiableList(new ArrayList<>(labels));
    if (words.size() != labels.size()) {
      throw new IllegalArgumentException("expected a label a word, found " + labels);
    }
  }
}
