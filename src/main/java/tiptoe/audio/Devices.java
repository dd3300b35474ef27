package tiptoe.audio;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import javax.sound.sampled.AudioFormat;
import javax.sound.sampled.AudioSystem;
import javax.sound.sampled.DataLine;
import javax.sound.sampled.LineUnavailableException;
import javax.sound.sampled.Mixer;
import javax.sound.sampled.SourceDataLine;
import javax.sound.sampled.TargetDataLine;

/** The sound devices that Java Sound sees now, and the formats that they take. */
final class Devices {
  /** What is asked for, the simplest first: the rest is converted. */
  private static final List<AudioFormat> FORMATS =
      List.of(
          format(Pcm.RATE, 1),
          format(48_000, 1),
          format(44_100, 1),
          format(48_000, 2),
          format(44_100, 2));

  private Devices() {}

  /** A line that a device offers. */
  record Offer(Mixer mixer, DataLine.Info info, AudioFormat format) {
    String name() {
      return mixer.getMixerInfo().getName();
    }
  }

  static List<Offer> microphones() {
    return offers(TargetDataLine.class);
  }

  static List<Offer> speakers() {
    return offers(SourceDataLine.class);
  }

  /**
   * The device whose name is, or else contains, what was asked for, in any case of letters; the
   * first one where nothing was.
   *
   * @param kind what it is to be called in messages
   */
  static Offer choose(List<Offer> offers, Optional<String> wanted, String kind)
      throws AudioProblem {
    List<String> names = offers.stream().map(Offer::name).toList();
    return offers.get(choice(names, wanted, kind));
  }

  static int choice(List<String> names, Optional<String> wanted, String kind) throws AudioProblem {
    if (names.isEmpty()) {
      throw new AudioProblem("expected a " + kind + ", found none");
    }
    if (wanted.isEmpty()) {
      return 0;
    }
    String name = wanted.get().toLowerCase(Locale.ROOT);
    List<Integer> like = new ArrayList<>();
    for (int i = 0; i < names.size(); i++) {
      String candidate = names.get(i).toLowerCase(Locale.ROOT);
      if (candidate.equals(name)) {
        return i;
      }
      if (candidate.contains(name)) {
        like.add(i);
      }
    }
    if (like.size() == 1) {
      return like.get(0);
    }
    List<String> found = like.isEmpty() ? names : like.stream().map(names::get).toList();
    throw new AudioProblem(
        "expected one "
            + kind
            + " named like '"
            + wanted.get()
            + "', found "
            + String.join(", ", found));
  }

  private static List<Offer> offers(Class<? extends DataLine> kind) {
    List<Offer> offers = new ArrayList<>();
    for (Mixer.Info info : AudioSystem.getMixerInfo()) {
      Mixer mixer = AudioSystem.getMixer(info);
      FORMATS.stream()
          .map(format -> new Offer(mixer, new DataLine.Info(kind, format), format))
          .filter(offer -> mixer.isLineSupported(offer.info()))
          .findFirst()
          .ifPresent(offers::add);
    }
    return offers;
  }

  /** A problem with the name of the device and the driver's words. */
  static AudioProblem unavailable(String kind, String name, Exception e) {
    String reason =
        e instanceof LineUnavailableException
            ? "it cannot be opened (" + AudioProblem.reason(e) + ")"
            : AudioProblem.reason(e);
    return new AudioProblem("expected the " + kind + " " + name + ", found that " + reason, e);
  }

  private static AudioFormat format(int rate, int channels) {
    return new AudioFormat(rate, Short.SIZE, channels, true, false);
  }
}
