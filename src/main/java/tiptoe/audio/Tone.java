package tiptoe.audio;

import java.util.List;

/**
 * Short soft sounds that tell the clinician what became of a phrase without a look at the screen.
 * All are bare sine notes, one or two: the alarms of monitors are bursts of three or more pulses
 * with four harmonics or more (IEC 60601-1-8), so that neither is taken for the other.
 */
public enum Tone {
  /** A statement was taken down: one high note. */
  ACCEPTED(new Note(880, 0.09)),
  /** An instruction was carried out: one short note in the middle. */
  DONE(new Note(659.25, 0.07)),
  /** Heard, but not recorded unless it is confirmed: two low rising notes. */
  UNSURE(new Note(440, 0.1), new Note(587.33, 0.1)),
  /** Phrases that were not understood, and are not recorded: one low note. */
  NOT_UNDERSTOOD(new Note(293.66, 0.18)),
  /** An answer is wanted: two rising notes. */
  QUESTION(new Note(587.33, 0.1), new Note(880, 0.12)),
  /** A finding needs attention: two falling notes. */
  FLAG(new Note(1046.5, 0.12), new Note(698.46, 0.2)),
  /** Listening has stopped: one long low note. */
  PAUSED(new Note(392, 0.3)),
  /** Nothing more is recorded, and nobody asked for that: two low falling notes. */
  STOPPED(new Note(392, 0.15), new Note(261.63, 0.15));

  /** The amplitude at full volume: these sound beside a sleeping baby. */
  private static final double LOUDEST = 0.25;

  /** Time in which a note swells and dies, so that it does not click, in seconds. */
  private static final double FADE_SECONDS = 0.015;

  private static final double REST_SECONDS = 0.02;

  private final List<Note> notes;

  Tone(Note... notes) {
    this.notes = List.of(notes);
  }

  /**
   * One note.
   *
   * @param hertz its frequency
   * @param seconds its length
   */
  record Note(double hertz, double seconds) {
    Pcm render(double amplitude) {
      short[] samples = new short[Pcm.samples(seconds)];
      double fade = FADE_SECONDS * Pcm.RATE;
      for (int i = 0; i < samples.length; i++) {
        double edge = Math.min(1, Math.min(i, samples.length - 1 - i) / fade);
        double envelope = 0.5 - 0.5 * Math.cos(Math.PI * edge);
        double wave = Math.sin(2 * Math.PI * hertz * i / Pcm.RATE);
        samples[i] = Pcm.toSample(amplitude * envelope * wave);
      }
      return Pcm.of(samples);
    }
  }

  List<Note> notes() {
    return notes;
  }

  /**
   * The sound itself.
   *
   * @param volume 0 (silent) to 1; perceived loudness follows its square
   */
  public Pcm render(double volume) {
    if (!(volume >= 0 && volume <= 1)) {
      throw new IllegalArgumentException("expected a volume of 0 to 1, found " + volume);
    }
    double amplitude = LOUDEST * volume * volume;
    Pcm tone = notes.get(0).render(amplitude);
    for (Note note : notes.subList(1, notes.size())) {
      tone = Pcm.join(tone, Pcm.silence(REST_SECONDS), note.render(amplitude));
    }
    return tone;
  }
}
