package tiptoe.session;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import tiptoe.audio.Chunk;
import tiptoe.audio.Pcm;
import tiptoe.audio.SampleSource;
import tiptoe.exam.Changes;
import tiptoe.exam.Phase;
import tiptoe.speech.Hypothesis;
import tiptoe.speech.Joiner;
import tiptoe.speech.Recogniser;

/** Feeds sound to the recogniser and what it hears to the session. */
public final class Dictation {
  private final Engine engine;
  private final ExamSession session;
  private final Consumer<String> partial;
  private final Joiner.Phrases going;

  public Dictation(Engine engine, ExamSession session) {
    this(engine, session, words -> {});
  }

  /**
   * @param partial told the words of the utterance being said, whenever there is more sound
   */
  public Dictation(Engine engine, ExamSession session, Consumer<String> partial) {
    this.engine = engine;
    this.session = session;
    this.partial = partial;
    this.going = new ContinuablePhrases(session.phrases());
  }

  /**
   * Listens until the sound or the examination ends.
   *
   * @param offset second of the examination at which the sound begins
   * @param heard told what each utterance changed
   * @return length of the sound, in s
   */
  public double listen(SampleSource sound, double offset, Consumer<Changes> heard)
      throws IOException {
    double seconds = 0;
    double lost = 0;
    Joiner joiner = new Joiner(going);
    try (Recogniser recogniser = engine.recogniser();
        RemarkHearing remarks = new RemarkHearing(engine.free(), session, offset)) {
      for (Optional<Chunk> next = sound.next();
          next.isPresent() && session.record().phase() != Phase.ENDED;
          next = sound.next()) {
        Chunk chunk = next.get();
        if (chunk.lost() > 0) {
          // Nobody knows what was said in the gap: what came before it ends there.
          hear(ending(recogniser, joiner), offset + lost, heard);
          double missing = (double) chunk.lost() / Pcm.RATE;
          heard.accept(session.gap(offset + seconds, missing));
          lost += missing;
        }
        seconds = (double) chunk.end() / Pcm.RATE;
        remarks.accept(chunk);
        List<Hypothesis> ready = new ArrayList<>();
        recogniser
            .accept(chunk.samples())
            .forEach(utterance -> ready.addAll(joiner.hear(utterance)));
        String words = recogniser.partial();
        ready.addAll(joiner.wait(seconds - lost, !words.isBlank(), recogniser.isQuiet()));
        hear(ready, offset + lost, heard);
        remarks.look().ifPresent(heard);
        partial.accept(words);
      }
      hear(ending(recogniser, joiner), offset + lost, heard);
      remarks.look().ifPresent(heard);
    }
    return seconds;
  }

  private static List<Hypothesis> ending(Recogniser recogniser, Joiner joiner) {
    List<Hypothesis> last = new ArrayList<>();
    recogniser.finish().ifPresent(utterance -> last.addAll(joiner.hear(utterance)));
    last.addAll(joiner.end());
    return last;
  }

  // The recogniser counts the sound that it was given, without what was lost.
  private void hear(List<Hypothesis> utterances, double offset, Consumer<Changes> heard) {
    utterances.forEach(utterance -> heard.accept(session.hear(utterance, offset)));
  }
}
