package tiptoe.audio;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import javax.sound.sampled.AudioFormat;
import javax.sound.sampled.SourceDataLine;

/** A loudspeaker's line by Java Sound, at whatever rate and number of channels it takes. */
final class JavaSoundSpeakerLine implements SpeakerLine {
  private final SourceDataLine line;
  private final String name;
  private final int channels;
  private final Resampler resampler;

  JavaSoundSpeakerLine(SourceDataLine line, String name) {
    this.line = line;
    this.name = name;
    AudioFormat format = line.getFormat();
    channels = format.getChannels();
    int rate = Math.round(format.getSampleRate());
    resampler = rate == Pcm.RATE ? null : new Resampler(Pcm.RATE, rate);
  }

  @Override
  public void write(short[] samples) throws AudioProblem {
    byte[] bytes = encode(resampler == null ? samples : resampled(samples));
    if (line.write(bytes, 0, bytes.length) < bytes.length) {
      throw new AudioProblem(
          "expected to play on the loudspeaker " + name + ", found that it takes no more sound");
    }
  }

  private short[] resampled(short[] samples) {
    float[] amplitudes = new float[samples.length];
    for (int i = 0; i < samples.length; i++) {
      amplitudes[i] = samples[i] / (float) Pcm.FULL_SCALE;
    }
    return PcmConverter.toSamples(resampler.push(amplitudes));
  }

  private byte[] encode(short[] mono) {
    ByteBuffer bytes =
        ByteBuffer.allocate(mono.length * channels * Short.BYTES).order(ByteOrder.LITTLE_ENDIAN);
    for (short sample : mono) {
      for (int channel = 0; channel < channels; channel++) {
        bytes.putShort(sample);
      }
    }
    return bytes.array();
  }

  @Override
  public void flush() {
    line.flush();
  }

  @Override
  public void close() {
    line.close();
  }
}
