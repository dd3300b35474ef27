package tiptoe.screen;

import static org.junit.jupiter.api.Assertions.assertTrue;

import com.googlecode.lanterna.TerminalSize;
import com.googlecode.lanterna.terminal.virtual.DefaultVirtualTerminal;
import java.io.IOException;
import java.nio.file.Path;
import java.util.function.Predicate;
import org.junit.jupiter.api.Test;
import tiptoe.session.ExamSession;
import tiptoe.session.Hearing;
import tiptoe.session.Sessions;

/** What the screen tells of trouble with the sound, on a terminal in memory. */
class ScreenViewTest {
  private static final long PATIENCE_MILLIS = 20_000;

  private final DefaultVirtualTerminal terminal =
      new DefaultVirtualTerminal(new TerminalSize(80, 24));
  private final ExamSession session = Sessions.inMemory(Hearing.understood());

  ScreenViewTest() throws IOException {}

  private String text() {
    StringBuilder text = new StringBuilder();
    for (int row = 0; row < 24; row++) {
      for (int column = 0; column < 80; column++) {
        text.append(terminal.getCharacter(column, row).getCharacterString());
      }
      text.append('\n');
    }
    return text.toString();
  }

  private void shows(Predicate<String> expected) throws InterruptedException {
    long end = System.currentTimeMillis() + PATIENCE_MILLIS;
    while (!expected.test(text()) && System.currentTimeMillis() < end) {
      Thread.sleep(10);
    }
    assertTrue(expected.test(text()), this::text);
  }

  @Test
  void aVanishedMicrophoneIsToldUntilItIsBackAndWhatWasLostIsToldAfterwards() throws Exception {
    try (ScreenView view =
        ScreenView.open(session, new Look(true, false), Path.of("e1"), System.err, terminal)) {
      view.microphone("the microphone is gone", "no sound, the microphone is gone");
      shows(text -> text.contains("NO SOUND: the microphone is gone"));
      view.microphone("", "sound is back, 5.0 s were not heard");
      view.show(session.gap(0, 5));
      shows(text -> !text.contains("NO SOUND") && text.contains("SOUND WAS LOST, 5.0 s of it"));
    }
  }

  @Test
  void soundThatCouldNotBeKeptStaysToldThoughTheMicrophoneIsWell() throws Exception {
    try (ScreenView view =
        ScreenView.open(session, new Look(true, false), Path.of("e1"), System.err, terminal)) {
      view.problem("no space left");
      shows(text -> text.contains("SOUND NOT KEPT: no space left"));
      view.microphone("", "sound is back, 0.0 s were not heard");
      view.show(session.gap(1, 2));
      shows(text -> text.contains("SOUND WAS LOST, 2.0 s of it"));
      shows(text -> text.contains("SOUND NOT KEPT: no space left"));
    }
  }
}
