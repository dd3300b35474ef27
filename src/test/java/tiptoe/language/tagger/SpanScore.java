package tiptoe.language.tagger;

import java.io.IOException;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import tiptoe.grammar.PhraseNetwork;
import tiptoe.language.SecondReading.Span;
import tiptoe.protocol.Protocol;

/** How well spans are found in sentences of templates that were kept from training. */
record SpanScore(int right, int wrong, int missed) {

  double f1() {
    return 2.0 * right / (2.0 * right + wrong + missed);
  }

  /** Trains on four fifths of the templates and looks at the last fifth. */
  static SpanScore onHeldOutTemplates(LayLexicon lay, PhraseNetwork network) throws IOException {
    List<Tagged> all = new TrainingSentences(lay, Protocol.standard(), Tagger.SEED).all(network);
    Set<String> templates = new TreeSet<>();
    all.forEach(sentence -> templates.add(sentence.template()));
    templates.remove("grammar");
    List<String> listed = new ArrayList<>(templates);
    Set<String> held = new HashSet<>();
    for (int i = 0; i < listed.size(); i += 5) {
      held.add(listed.get(i));
    }
    SpanModel model =
        SpanModel.train(
            all.stream().filter(sentence -> !held.contains(sentence.template())).toList(), lay);
    int right = 0;
    int wrong = 0;
    int missed = 0;
    for (Tagged sentence : all) {
      if (held.contains(sentence.template())) {
        List<Span> wanted = Tagger.spans(sentence.labels());
        List<Span> found = Tagger.spans(model.labels(sentence.words()));
        int same = (int) found.stream().filter(wanted::contains).count();
        right += same;
        wrong += found.size() - same;
        missed += wanted.size() - same;
      }
    }
    return new SpanScore(right, wrong, missed);
  }

  @Override
  public String toString() {
    return "span F1 %.3f (%d right, %d wrong, %d missed)".formatted(f1(), right, wrong, missed);
  }
}
