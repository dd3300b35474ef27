package tiptoe.audio;

import java.io.IOException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Path;
import tiptoe.files.OwnerOnly;

/** A stretch of sound as a file of its own, for players that know nothing of records. */
public final class WavFile {
  private WavFile() {}

  /**
   * Writes a WAV that only its owner may read.
   *
   * @param file must not exist
   */
  public static void write(Pcm pcm, Path file) throws IOException {
    try (WavWriter writer = WavWriter.to(OwnerOnly.createFile(file), pcm.sampleRate())) {
      writer.append(pcm.samples());
      writer.force();
    } catch (FileAlreadyExistsException e) {
      throw new AudioProblem("expected a new file, found that " + file + " is there already", e);
    }
  }
}
