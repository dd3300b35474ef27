package tiptoe.audio;

import java.time.Duration;
import java.util.Optional;
import javax.sound.sampled.AudioFormat;
import javax.sound.sampled.LineUnavailableException;
import javax.sound.sampled.TargetDataLine;

/** A microphone's line by Java Sound. */
final class JavaSoundLine implements CaptureLine {
  private static final String KIND = "microphone";

  private final TargetDataLine line;
  private final PcmConverter converter;
  private final byte[] buffer;
  private final String name;

  private JavaSoundLine(TargetDataLine line, String name) {
    this.line = line;
    this.name = name;
    AudioFormat format = line.getFormat();
    converter = new PcmConverter(format);
    int size = Math.max(line.getBufferSize(), format.getFrameSize());
    buffer = new byte[size - size % format.getFrameSize()];
  }

  static Devices.Offer choose(Optional<String> wanted) throws AudioProblem {
    return Devices.choose(Devices.microphones(), wanted, KIND);
  }

  static CaptureLine open(Optional<String> wanted) throws AudioProblem {
    Devices.Offer offer = choose(wanted);
    AudioFormat format = offer.format();
    try {
      TargetDataLine line = (TargetDataLine) offer.mixer().getLine(offer.info());
      int second = Math.round(format.getSampleRate()) * format.getFrameSize();
      line.open(format, second);
      line.start();
      return new JavaSoundLine(line, offer.name());
    } catch (LineUnavailableException | RuntimeException e) {
      throw Devices.unavailable(KIND, offer.name(), e);
    }
  }

  @Override
  public short[] read() throws AudioProblem {
    int frame = line.getFormat().getFrameSize();
    int waiting = Math.min(line.available(), buffer.length);
    if (waiting < frame) {
      if (!line.isOpen()) {
        throw broken("its line was closed");
      }
      return new short[0];
    }
    int length = line.read(buffer, 0, waiting - waiting % frame);
    // A driver that lost its device goes on promising sound and never hands any over.
    if (length <= 0) {
      throw broken("it no longer hands over its sound");
    }
    return converter.push(buffer, length);
  }

  @Override
  public Duration buffer() {
    AudioFormat format = line.getFormat();
    int second = Math.round(format.getSampleRate()) * format.getFrameSize();
    return Duration.ofMillis(line.getBufferSize() * 1000L / second);
  }

  private AudioProblem broken(String found) {
    return new AudioProblem("expected sound from the microphone " + name + ", found that " + found);
  }

  @Override
  public void close() {
    line.close();
  }
}
