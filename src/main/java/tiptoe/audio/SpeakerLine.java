package tiptoe.audio;

import java.util.Optional;
import javax.sound.sampled.AudioFormat;
import javax.sound.sampled.LineUnavailableException;
import javax.sound.sampled.SourceDataLine;

/** An open line that sound goes out by. */
interface SpeakerLine extends AutoCloseable {
  /** The driver's buffer is no longer than this, in seconds. */
  double BUFFER_SECONDS = 0.2;

  /** Plays 16 kHz samples, and waits until the driver has room for them. */
  void write(short[] samples) throws AudioProblem;

  /** Drops what the driver has not played yet. */
  void flush();

  @Override
  void close();

  /** Opens the line of a chosen device. */
  interface Opener {
    SpeakerLine open() throws AudioProblem;
  }

  /** A loudspeaker's line by Java Sound. */
  static SpeakerLine open(Optional<String> wanted) throws AudioProblem {
    String kind = "loudspeaker";
    Devices.Offer offer = Devices.choose(Devices.speakers(), wanted, kind);
    AudioFormat format = offer.format();
    try {
      SourceDataLine line = (SourceDataLine) offer.mixer().getLine(offer.info());
      int frames = (int) (format.getSampleRate() * BUFFER_SECONDS);
      line.open(format, frames * format.getFrameSize());
      line.start();
      return new JavaSoundSpeakerLine(line, offer.name());
    } catch (LineUnavailableException | RuntimeException e) {
      throw Devices.unavailable(kind, offer.name(), e);
    }
  }
}
