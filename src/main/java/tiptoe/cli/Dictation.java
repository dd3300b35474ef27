package tiptoe.cli;

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
import tiptoe.speech.Joiner;
import tiptoe.speech.Recogniser;
import tiptoe.speech.Utterance;

/** Feeds sound to the recogniser and what it hears to the session. */
final class Dictation {
  private final Engine engine;
  private final Session session;
  private final Consumer<String> partial;
  private final Joiner.Phrases going;

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
    this.going = new GoingOn(session.phrases());
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
        List<Utterance> ready = new ArrayList<>();
        recogniser
            .accept(chunk.samples())
            .forEach(utterance -> ready.addAll(joiner.hear(utterance)));
        String words = recogniser.partial();
        ready.addAll(joiner.wait(seconds - lost, !words.isBlank()));
        hear(ready, offset + lost, heard);
        remarks.look().ifPresent(heard);
        partial.accept(words);
      }
      hear(ending(recogniser, joiner), offset + lost, heard);
      remarks.look().ifPresent(heard);
    }
    return seconds;
  }

  private static List<Utterance> ending(Recogniser recogniser, Joiner joiner) {
    List<Utterance> last = new ArrayList<>();
    recogniser.finish().ifPresent(utterance -> last.addAll(joiner.hear(utterance)));
    last.addAll(joiner.end());
    return last;
  }

  // The recogniser counts the sound that it was given, without what was lost.
  private void hear(List<Utterance> utterances, double offset, Consumer<Changes> heard) {
    utterances.forEach(utterance -> heard.accept(session.hear(utterance, offset)));
  }
}
