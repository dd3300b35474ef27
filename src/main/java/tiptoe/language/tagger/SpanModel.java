package tiptoe.language.tagger;

import java.io.DataInputStream;
import java.io.DataOutputStream;
import java.io.IOException;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;
import java.util.Map;
import opennlp.tools.ml.BeamSearch;
import opennlp.tools.ml.maxent.GISTrainer;
import opennlp.tools.ml.maxent.io.BinaryGISModelReader;
import opennlp.tools.ml.maxent.io.BinaryGISModelWriter;
import opennlp.tools.ml.model.AbstractModel;
import opennlp.tools.ml.model.DataIndexer;
import opennlp.tools.ml.model.Event;
import opennlp.tools.ml.model.MaxentModel;
import opennlp.tools.ml.model.OnePassDataIndexer;
import opennlp.tools.util.ObjectStream;
import opennlp.tools.util.Sequence;
import opennlp.tools.util.TrainingParameters;

/**
 * Labels words by a maximum-entropy model (Apache OpenNLP) searched with a beam. Trained on one
 * thread, so that the same sentences give the same model.
 */
final class SpanModel {
  private static final int BEAM = 3;
  private static final int ITERATIONS = 40;
  private static final int CUTOFF = 2;
  private static final String NONE = "none";

  private final AbstractModel model;
  private final LayLexicon lexicon;

  private SpanModel(AbstractModel model, LayLexicon lexicon) {
    this.model = model;
    this.lexicon = lexicon;
  }

  static SpanModel train(List<Tagged> sentences, LayLexicon lexicon) throws IOException {
    TrainingParameters parameters = new TrainingParameters();
    parameters.put(TrainingParameters.CUTOFF_PARAM, CUTOFF);
    parameters.put(TrainingParameters.ITERATIONS_PARAM, ITERATIONS);
    DataIndexer indexer = new OnePassDataIndexer();
    indexer.init(parameters, Map.of());
    indexer.index(new Events(sentences, lexicon));
    GISTrainer trainer = new GISTrainer();
    trainer.init(parameters, Map.of());
    return new SpanModel(trainer.trainModel(ITERATIONS, indexer, 1), lexicon);
  }

  static SpanModel read(DataInputStream in, LayLexicon lexicon) throws IOException {
    return new SpanModel(new BinaryGISModelReader(in).getModel(), lexicon);
  }

  void write(DataOutputStream out) throws IOException {
    BinaryGISModelWriter writer = new BinaryGISModelWriter(model, out);
    writer.persist();
  }

  /** The labels of the words; null where a word is none. */
  List<Label> labels(List<String> words) {
    if (words.isEmpty()) {
      return List.of();
    }
    MaxentModel evaluated = model;
    Sequence best =
        new BeamSearch(BEAM, evaluated)
            .bestSequence(
                words.toArray(new String[0]),
                null,
                new TokenFeatures(lexicon),
                (at, all, before, outcome) -> true);
    List<Label> labels = new ArrayList<>();
    best.getOutcomes()
        .forEach(outcome -> labels.add(outcome.equals(NONE) ? null : Label.valueOf(outcome)));
    return labels;
  }

  private static String outcome(Label label) {
    return label == null ? NONE : label.name();
  }

  /** Every word of every sentence as an event to learn from. */
  private static final class Events implements ObjectStream<Event> {
    private final List<Tagged> sentences;
    private final LayLexicon lexicon;
    private Iterator<Event> left;

    Events(List<Tagged> sentences, LayLexicon lexicon) {
      this.sentences = sentences;
      this.lexicon = lexicon;
      reset();
    }

    @Override
    public Event read() {
      return left.hasNext() ? left.next() : null;
    }

    @Override
    public void reset() {
      left = sentences.stream().flatMap(sentence -> events(sentence).stream()).iterator();
    }

    private List<Event> events(Tagged sentence) {
      TokenFeatures features = new TokenFeatures(lexicon);
      String[] words = sentence.words().toArray(new String[0]);
      String[] outcomes = sentence.labels().stream().map(SpanModel::outcome).toArray(String[]::new);
      List<Event> events = new ArrayList<>();
      for (int at = 0; at < words.length; at++) {
        events.add(new Event(outcomes[at], features.getContext(at, words, outcomes, null)));
      }
      return events;
    }
  }
}
