package tiptoe.audio;

import javax.sound.sampled.AudioFormat;

/** Turns bytes of any known format into 16 kHz mono 16-bit samples, piece by piece. */
final class PcmConverter {
  private final SampleDecoder decoder;
  private final Resampler resampler;

  PcmConverter(AudioFormat format) {
    decoder = new SampleDecoder(format);
    int rate = Math.round(format.getSampleRate());
    resampler = rate == Pcm.RATE ? null : new Resampler(rate, Pcm.RATE);
  }

  /** The samples that the first {@code length} bytes complete; they must be whole frames. */
  short[] push(byte[] bytes, int length) {
    float[] mono = decoder.decode(bytes, length);
    return toSamples(resampler == null ? mono : resampler.push(mono));
  }

  /** The samples still inside the filter, once all bytes are in. */
  short[] finish() {
    return toSamples(resampler == null ? new float[0] : resampler.finish());
  }

  static short[] toSamples(float[] amplitudes) {
    short[] samples = new short[amplitudes.length];
    for (int i = 0; i < samples.length; i++) {
      samples[i] = Pcm.toSample(amplitudes[i]);
    }
    return samples;
  }
}
