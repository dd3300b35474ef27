package tiptoe.cli;

import java.io.IOException;
import java.util.Optional;
import java.util.function.Consumer;
import tiptoe.audio.Chunk;
import tiptoe.audio.SampleSource;
import tiptoe.exam.Changes;
import tiptoe.speech.Recogniser;
import tiptoe.speech.Utterance;

/** Feeds sound to the recogniser and what it hears to the session. */
final class Dictation {
  private final Engine engine;
  private final Session session;

  Dictation(Engine engine, Session session) {
    this.engine = engine;
    this.session = session;
  }

  /**
   * Listens until the sound ends.
   *
   * @param offset second of the examination at which the sound begins
   * @param heard told what each utterance changed
   * @return length of the sound, in s
   */
  double listen(SampleSource sound, double offset, Consumer<Changes> heard) throws IOException {
    double seconds = 0;
    try (Recogniser recogniser = engine.recogniser()) {
      for (Optional<Chunk> next = sound.next(); next.isPresent(); next = sound.next()) {
        Chunk chunk = next.get();
        seconds += chunk.seconds();
        for (Utterance utterance : recogniser.accept(chunk.samples())) {
          heard.accept(session.hear(utterance, offset));
        }
      }
      recogniser.finish().ifPresent(utterance -> heard.accept(session.hear(utterance, offset)));
    }
    return seconds;
  }
}
