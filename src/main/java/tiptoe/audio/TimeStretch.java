package tiptoe.audio;

/**
 * Plays speech slower or faster at the same pitch: pieces of the sound are laid over each other,
 * each taken from where it fits best to the one before (WSOLA; Verhelst and Roelands, ICASSP 1993).
 */
final class TimeStretch {
  private static final int FRAME = Pcm.RATE / 25;
  private static final int HOP = FRAME / 2;
  private static final int SEARCH = Pcm.RATE / 80;
  private static final double SLOWEST = 0.5;
  private static final double FASTEST = 2;

  private TimeStretch() {}

  /** The clip at so many times its speed, 0.5 to 2. */
  static Pcm stretch(Pcm pcm, double speed) {
    if (!(speed >= SLOWEST && speed <= FASTEST)) {
      throw new IllegalArgumentException("expected a speed of 0.5 to 2, found " + speed);
    }
    short[] in = pcm.samples();
    if (in.length < 2 * FRAME + 2 * SEARCH) {
      return pcm;
    }
    int length = (int) Math.round(in.length / speed);
    double[] out = new double[length + FRAME];
    int start = 0;
    for (int at = 0; at < length; at += HOP) {
      if (at > 0) {
        int wanted = (int) Math.round(at * speed);
        start = bestStart(in, wanted, start + HOP);
      }
      overlap(in, start, out, at);
    }
    return new Pcm(rounded(out, length), pcm.sampleRate());
  }

  /** Where near the wanted place the sound is most like that which would follow by itself. */
  private static int bestStart(short[] in, int wanted, int natural) {
    int last = in.length - FRAME;
    int follow = Math.min(natural, last);
    int best = Math.min(wanted, last);
    double highest = Double.NEGATIVE_INFINITY;
    int to = Math.min(last, wanted + SEARCH);
    for (int start = Math.max(0, Math.min(last, wanted - SEARCH)); start <= to; start++) {
      double likeness = likeness(in, start, follow);
      if (likeness > highest) {
        highest = likeness;
        best = start;
      }
    }
    return best;
  }

  private static double likeness(short[] in, int a, int b) {
    double product = 0;
    double energy = 1;
    for (int i = 0; i < FRAME; i++) {
      product += (double) in[a + i] * in[b + i];
      energy += (double) in[a + i] * in[a + i];
    }
    return product / Math.sqrt(energy);
  }

  /** Adds a frame under a Hann window; two windows half a frame apart add up to one. */
  private static void overlap(short[] in, int start, double[] out, int at) {
    for (int i = 0; i < FRAME && at + i < out.length; i++) {
      boolean opening = at == 0 && i < HOP;
      double window = opening ? 1 : 0.5 - 0.5 * Math.cos(2 * Math.PI * i / FRAME);
      out[at + i] += window * in[start + i];
    }
  }

  private static short[] rounded(double[] out, int length) {
    short[] samples = new short[length];
    for (int i = 0; i < length; i++) {
      samples[i] = Pcm.toSample(out[i] / Pcm.FULL_SCALE);
    }
    return samples;
  }
}
