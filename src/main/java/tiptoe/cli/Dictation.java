package tiptoe.cli;

import java.io.IOException;
import java.util.Optional;
import java.util.function.Consumer;
import tiptoe.audio.Chunk;
import tiptoe.audio.Pcm;
import tiptoe.audio.SampleSource;
import tiptoe.exam.Changes;
import tiptoe.exam.Phase;
import tiptoe.speech.Recogniser;
import tiptoe.speech.Utterance;

/** Feeds sound to the recogniser and what it hears to the session. */
final class Dictation {
  private final Engine engine;
  private final Session session;
  private final Consumer<String> partial;

  Dictation(Engine engine, Session session) {
    this(engine, session, words -> {});
  }

  /**
   * @param partial told the words of the utterance being said, whenever there is more sound
   */
  Dictation(Engine engine, Session session, Consumer<String> partial) {
    this.engine = engine;
    this.session = session;
    this.partial = partial;
  }

  /**
   * Listens until the sound or the examination ends.
   *
   * @param offset second of the examination at which the sound begins
   * @param heard told what each utterance changed
   * @return length of the sound, in s
   */
  double listen(SampleSource sound, double offset, Consumer<Changes> heard) throws IOException {
    double seconds = 0;
    try (Recogniser recogniser = engine.recogniser()) {
      for (Optional<Chunk> next = sound.next();
          next.isPresent() && session.record().phase() != Phase.ENDED;
          next = sound.next()) {
        Chunk chunk = next.get();
        if (chunk.lost() > 0) {
          double lost = (double) chunk.lost() / Pcm.RATE;
          heard.accept(session.gap(offset + seconds, lost));
        }
        seconds = (double) chunk.end() / Pcm.RATE;
        for (Utterance utterance : recogniser.accept(chunk.samples())) {
          heard.accept(session.hear(utterance, offset));
        }
        partial.accept(recogniser.partial());
      }
      recogniser.finish().ifPresent(utterance -> heard.accept(session.hear(utterance, offset)));
    }
    return seconds;
  }
}
