package tiptoe.cli;

import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.stream.Stream;
import javax.sound.sampled.AudioFileFormat;
import javax.sound.sampled.AudioFormat;
import javax.sound.sampled.AudioInputStream;
import javax.sound.sampled.AudioSystem;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import tiptoe.FullOnly;

/** An examination in a real terminal, which hears a recording. */
@Tag("hearing")
@Tag("process")
class TmuxTest extends RealTerminal {
  private static final String CHEST = "demo-audio/03-chest.wav";

  /** "correction left barlow positive", in a synthetic voice. */
  private static final String CLIP = "src/test/resources/tiptoe/speech/clips/127.wav";

  private String journal() throws IOException {
    try (Stream<Path> files = Files.walk(folder.resolve("data"))) {
      Path journal = files.filter(file -> file.endsWith("journal.jsonl")).findFirst().orElseThrow();
      return Files.readString(journal);
    }
  }

  @Test
  void showsWhatIsHeardFollowsAResizeAndEndsWithASummary() throws Exception {
    start("LC_ALL=C.UTF-8", "exam", "--from", CHEST);
    await(frame -> frame.contains("It does not"));
    String heard = await(frame -> frame.contains("! crepitus"));
    assertTrue(heard.contains("CLAVICLES"), heard);
    tmux("resize-window", "-t", "exam", "-x", "120", "-y", "40");
    await(
        frame -> frame.lines().anyMatch(line -> line.length() > 100 && line.contains("say/press")));
    tmux("send-keys", "-t", "exam", "e");
    await(frame -> frame.contains("key steps are missing"));
    tmux("send-keys", "-t", "exam", "y");
    String summary = await(frame -> frame.contains("EXAMINATION ENDED"));
    assertTrue(summary.contains("KEY STEPS MISSING"), summary);
    assertTrue(summary.contains("RECORD"), summary);
    tmux("send-keys", "-t", "exam", "Enter");
    await(frame -> frame.contains("exit 0"));
    assertTerminalIsAsBefore();
    assertTrue(journal().contains("\"type\":\"ended\""));
  }

  @Test
  @FullOnly("ReviewTmuxTest terminates a review")
  void aTerminatedProcessGivesTheTerminalBack() throws Exception {
    start("LC_ALL=C.UTF-8", "exam", "--from", CHEST);
    await(frame -> frame.contains("hearing: "));
    long process = Long.parseLong(Files.readString(folder.resolve("pid")).strip());
    ProcessHandle.of(process).orElseThrow().destroy();
    await(frame -> frame.contains("exit 143"));
    assertTerminalIsAsBefore();
    assertTrue(journal().contains("examination-opened"));
  }

  @Test
  @FullOnly("the longest of these tests is run, and another way out in ReviewTmuxTest")
  void controlCLeavesAndSaysHowToGoOn() throws Exception {
    start("LC_ALL=C NO_COLOR=1", "exam", "--from", CHEST);
    String frame = await(text -> text.contains("hearing: "));
    assertTrue(frame.chars().allMatch(sign -> sign <= '~'), frame);
    tmux("send-keys", "-t", "exam", "C-c");
    await(text -> text.contains("exit 0"));
    assertTrue(all().contains("to go on: tiptoe exam --continue"), all());
    assertTerminalIsAsBefore();
  }

  @Test
  @FullOnly("BrokenAudioTest reads such recordings, and another way out is in ReviewTmuxTest")
  void aRecordingThatCannotBeReadGivesTheTerminalBackAndSaysWhy() throws Exception {
    Path recordings = Files.createDirectory(folder.resolve("recordings"));
    silence(recordings.resolve("1.wav"), 2);
    Files.writeString(recordings.resolve("2.wav"), "no sound at all");
    start("LC_ALL=C.UTF-8", "exam", "--from", recordings.toString());
    await(frame -> frame.contains("exit 1"));
    assertTrue(all().contains("2.wav"), all());
    assertFalse(all().contains("Exception"), all());
    assertTerminalIsAsBefore();
  }

  @Test
  @FullOnly("the longest of these tests is run, and another way out in ReviewTmuxTest")
  void soundThatIsOverShowsTheSummaryThoughTheExaminationHasNotEnded() throws Exception {
    Path recording = folder.resolve("silence.wav");
    silence(recording, 1);
    start("LC_ALL=C.UTF-8", "exam", "--from", recording.toString());
    // What is drawn may come in two parts.
    await(
        text ->
            text.contains("EXAMINATION NOT ENDED")
                && text.contains("KEY STEPS MISSING")
                && text.contains("RECORD"));
    tmux("send-keys", "-t", "exam", "Enter");
    await(text -> text.contains("exit 0"));
    assertTerminalIsAsBefore();
  }

  @Test
  @FullOnly("FramesTest draws them, and another test here resizes")
  void aSmallTerminalSaysWhatItLacksAPauseIsReadFromAfarAndChatterOfALibraryIsToldAfterwardsOnly()
      throws Exception {
    Path descriptor = Path.of("/proc/self/fd/2");
    Assumptions.assumeTrue(Files.exists(descriptor), "needs /proc");
    Path recording = folder.resolve("silence.wav");
    silence(recording, 240);
    start("LC_ALL=C.UTF-8 TERM=screen-256color", "exam", "--from", recording.toString());
    await(frame -> frame.startsWith(" LISTENING"));
    tmux("resize-window", "-t", "exam", "-x", "60", "-y", "18");
    await(frame -> frame.contains("shows all on 80 x 24 or more, has 60 x 18"));
    tmux("send-keys", "-t", "exam", "p");
    await(frame -> frame.contains("PAUSED: NOTHING IS HEARD"));
    tmux("send-keys", "-t", "exam", "c");
    await(frame -> frame.startsWith(" LISTENING"));
    tmux("resize-window", "-t", "exam", "-x", "80", "-y", "24");
    await(frame -> !frame.contains("shows all on 80 x 24 or more"));
    String process = Files.readString(folder.resolve("pid")).strip();
    Files.writeString(Path.of("/proc/" + process + "/fd/2"), "chatter of a library\n");
    tmux("send-keys", "-t", "exam", "?");
    String frame = await(text -> text.contains("SAY OR PRESS"));
    assertFalse(frame.contains("chatter"), frame);
    tmux("send-keys", "-t", "exam", "C-c");
    await(text -> text.contains("exit 0"));
    assertTrue(all().contains("chatter of a library"), all());
    assertTerminalIsAsBefore();
  }

  private static void silence(Path file, int seconds) throws IOException {
    AudioFormat format = new AudioFormat(16_000, 16, 1, true, false);
    byte[] samples = new byte[32_000 * seconds];
    AudioInputStream sound =
        new AudioInputStream(new ByteArrayInputStream(samples), format, 16_000L * seconds);
    AudioSystem.write(sound, AudioFileFormat.Type.WAVE, file.toFile());
  }

  @Test
  @FullOnly("CommandsTest hears the same without a terminal")
  void plainPrintsLines() throws Exception {
    start("LC_ALL=C.UTF-8", "exam", "--plain", "--fast", "--from", CLIP);
    await(frame -> frame.contains("exit 0"));
    assertTrue(all().contains("left Barlow: positive"), all());
    assertTerminalIsAsBefore();
  }
}
