package tiptoe.session;

import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.params.provider.Arguments.arguments;

import java.io.IOException;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import tiptoe.TestExtent;
import tiptoe.audio.AudioFile;
import tiptoe.audio.NoiseMixer;
import tiptoe.audio.Pcm;
import tiptoe.audio.WardSounds;
import tiptoe.language.Meaning;
import tiptoe.speech.Clips;

/**
 * Committed clips through a badly set microphone and beside the sounds of a ward. The floors lie
 * below what was measured on all clips; the sounds are made up, no source. Run it with {@code
 * -Dtiptoe.every=1} to measure all clips.
 */
@Tag("hearing")
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class HardSoundTest {
  private static final int EVERY = Integer.getInteger("tiptoe.every", TestExtent.of(32, 16));

  /** How far the speech is above the sounds of the ward, in dB. */
  private static final double SNR_DB = 10;

  private final Hearing hearing = Hearing.loaded();

  /** Does something to the sound of the clip with a number. */
  private interface Harm {
    Pcm to(Pcm clip, int number) throws IOException;
  }

  /** Name, harm, and the least share that is accepted as meant. */
  private static List<Arguments> sounds() {
    return TestExtent.some(
        List.of(
            arguments("as it is", harm((clip, number) -> clip), 0.85),
            arguments("clipped by 18 dB", harm((clip, n) -> WardSounds.clipped(clip, 18)), 0.80),
            arguments("quieter by 20 dB", harm((clip, n) -> WardSounds.quieter(clip, 20)), 0.80),
            arguments("quieter by 40 dB", harm((clip, n) -> WardSounds.quieter(clip, 40)), 0.75),
            arguments(
                "a quarter off centre", harm((clip, n) -> WardSounds.withOffset(clip, 0.25)), 0.80),
            arguments("hum of 50 Hz", beside("hum"), 0.80),
            arguments("beeps", beside("monitor-beeps"), 0.75),
            arguments("air flow", beside("air-flow"), 0.75),
            arguments("doors", beside("doors"), 0.80),
            arguments("second talker", harm(HardSoundTest::besideSpeech), 0.6)),
        3);
  }

  private static Harm harm(Harm harm) {
    return harm;
  }

  private static Harm beside(String sound) {
    return (clip, number) ->
        NoiseMixer.mix(clip, WardSounds.all(clip.seconds() + 1, number).get(sound), SNR_DB, number);
  }

  /** Somebody else says another of the phrases at the same time. */
  private static Pcm besideSpeech(Pcm clip, int number) throws IOException {
    List<Clips.Clip> clips = Clips.all();
    Pcm other = AudioFile.read(clips.get((number + clips.size() / 2) % clips.size()).file());
    return NoiseMixer.mix(clip, other, SNR_DB, number);
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("sounds")
  void understandsWhatItAcceptsAndMostOfWhatIsSaid(String name, Harm harm, double least)
      throws IOException {
    List<Clips.Clip> clips = Clips.all();
    int[] numbers = IntStream.range(0, clips.size()).filter(i -> i % EVERY == 0).toArray();
    int understood = 0;
    int wrong = 0;
    for (int number : numbers) {
      Clips.Clip clip = clips.get(number);
      List<Meaning> meant = hearing.means(clip.text());
      List<Meaning> accepted = hearing.accepted(harm.to(AudioFile.read(clip.file()), number));
      understood += accepted.equals(meant) ? 1 : 0;
      wrong += meant.containsAll(accepted) ? 0 : 1;
    }
    String told =
        "%s: %d of %d accepted as meant, %d accepted and wrong"
            .formatted(name, understood, numbers.length, wrong);
    System.out.println("hard sound, " + told);
    // One clip more or less is no news in a sample of a few.
    int slack = numbers.length < 32 ? 1 : 0;
    assertTrue(understood >= least * numbers.length - slack, told);
    assertTrue(wrong <= 1 + 0.07 * numbers.length, told);
  }
}
