package tiptoe.audio;

import java.io.IOException;
import java.util.Optional;
import javax.sound.sampled.AudioInputStream;

/** The chunks of one audio stream, 0.1 s each, converted as they are asked for. */
final class StreamSource implements SampleSource {
  private static final double CHUNK_SECONDS = 0.1;

  private final AudioInputStream stream;
  private final String name;
  private final PcmConverter converter;
  private final byte[] buffer;
  private final int frameSize;
  private long position;
  private volatile boolean ended;

  StreamSource(AudioInputStream stream, String name) {
    this.stream = stream;
    this.name = name;
    converter = new PcmConverter(stream.getFormat());
    frameSize = stream.getFormat().getFrameSize();
    int frames = (int) Math.ceil(stream.getFormat().getSampleRate() * CHUNK_SECONDS);
    buffer = new byte[frames * frameSize];
  }

  @Override
  public Optional<Chunk> next() throws IOException {
    while (!ended) {
      int length = fill();
      short[] samples = converter.push(buffer, length - length % frameSize);
      if (length < buffer.length) {
        ended = true;
        samples = joined(samples, converter.finish());
      }
      if (samples.length > 0) {
        Chunk chunk = new Chunk(position, 0, samples);
        position = chunk.end();
        return Optional.of(chunk);
      }
    }
    return Optional.empty();
  }

  /** Fills the buffer as far as the stream goes. */
  private int fill() throws IOException {
    int length = 0;
    try {
      while (length < buffer.length) {
        int count = stream.read(buffer, length, buffer.length - length);
        if (count < 0) {
          break;
        }
        length += count;
      }
    } catch (IOException | RuntimeException e) {
      throw new AudioProblem(
          "expected more sound, found " + AudioProblem.reason(e) + " in " + name, e);
    }
    return length;
  }

  private static short[] joined(short[] first, short[] second) {
    return Pcm.join(Pcm.of(first), Pcm.of(second)).samples();
  }

  @Override
  public void end() {
    ended = true;
  }

  @Override
  public void close() throws IOException {
    end();
    stream.close();
  }
}
