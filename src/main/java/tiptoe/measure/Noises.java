package tiptoe.measure;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import tiptoe.audio.AudioFile;
import tiptoe.audio.NoiseMixer;
import tiptoe.audio.Pcm;

/**
 * The noise recordings, put in an order by the seed. The first recording of speech gets the first
 * of them and so on, round and round, so that all are used; which one, and which stretch of it,
 * depends on nothing but the seed, the order of the speech by name and the name itself.
 */
public record Noises(List<Path> files, long seed) {
  /**
   * The noise in a folder.
   *
   * @param split noise is split like speech, so that a noise fitted on is not reported on
   */
  public static Noises in(Path folder, Split split, long seed) throws IOException {
    List<Path> files = new ArrayList<>(Recordings.in(folder, split));
    Collections.shuffle(files, new Random(seed));
    return new Noises(List.copyOf(files), seed);
  }

  Path file(int place) {
    return files.get(place % files.size());
  }

  /** Speech with its noise behind it. */
  Pcm mix(Pcm speech, String name, int place, double snrDb) throws IOException {
    try {
      long own = 31 * seed + name.hashCode();
      return NoiseMixer.mix(speech, AudioFile.read(file(place)), snrDb, own);
    } catch (IllegalArgumentException e) {
      throw new IOException(
          "%s with %s: %s".formatted(name, file(place).getFileName(), e.getMessage()), e);
    }
  }
}
