package tiptoe.audio;

/** Changes sound as it passes by, sample for sample, without delay; it may remember what passed. */
@FunctionalInterface
public interface SampleFilter {
  /** The filtered samples, as many as came in, in a new array. */
  short[] apply(short[] samples);

  /** This filter with another behind it. */
  default SampleFilter then(SampleFilter next) {
    return samples -> next.apply(apply(samples));
  }
}
