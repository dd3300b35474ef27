package tiptoe.screen;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.googlecode.lanterna.TerminalSize;
import com.googlecode.lanterna.input.KeyStroke;
import com.googlecode.lanterna.input.KeyType;
import com.googlecode.lanterna.terminal.virtual.DefaultVirtualTerminal;
import java.io.IOException;
import java.util.List;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.function.BooleanSupplier;
import org.junit.jupiter.api.Test;
import tiptoe.finding.Command;

/** The screen with its own thread, on a terminal in memory. */
class ExamScreenTest {
  private static final long PATIENCE_MILLIS = 20_000;

  private final DefaultVirtualTerminal terminal =
      new DefaultVirtualTerminal(new TerminalSize(80, 24));
  private final List<String> pressed = new CopyOnWriteArrayList<>();

  private ExamScreen open(Scene scene) throws IOException {
    return ExamScreen.open(
        terminal,
        new Look(true, false),
        scene.state(),
        new ExamScreen.Keys() {
          @Override
          public void command(Command command) {
            pressed.add(command.id());
          }

          @Override
          public void answer(String word) {
            pressed.add(word);
          }

          @Override
          public void typing(String line) {
            pressed.add("typing " + line);
          }

          @Override
          public void identify(String line) {
            pressed.add("identify " + line);
          }

          @Override
          public void leave() {
            pressed.add("leave");
          }
        });
  }

  private void await(BooleanSupplier condition) throws InterruptedException {
    long end = System.currentTimeMillis() + PATIENCE_MILLIS;
    while (!condition.getAsBoolean() && System.currentTimeMillis() < end) {
      Thread.sleep(10);
    }
    assertTrue(condition.getAsBoolean(), () -> pressed + "\n" + Scene.text(terminal));
  }

  private void press(char key, boolean control) {
    terminal.addInput(new KeyStroke(key, control, false));
  }

  @Test
  void keysDoWhatTheHelpLineSays() throws Exception {
    try (ExamScreen screen = open(new Scene())) {
      "pcmrxynesd".chars().forEach(key -> press((char) key, false));
      terminal.addInput(new KeyStroke(KeyType.ArrowRight));
      terminal.addInput(new KeyStroke(KeyType.ArrowLeft));
      await(() -> pressed.size() == 12);
      screen.show(new Scene().state());
    }
    assertEquals(
        List.of(
            "pause",
            "resume",
            "say-missing",
            "read-back",
            "strike",
            "yes",
            "no",
            "end-exam",
            "start-remark",
            "end-remark",
            "next-region",
            "previous-region"),
        pressed);
  }

  /** A reader of codes types and ends with Enter; what it types is no command. */
  @Test
  void whoTheBabyIsCanBeTypedOrScanned() throws Exception {
    try (ExamScreen screen = open(new Scene())) {
      "iK1x".chars().forEach(key -> press((char) key, false));
      terminal.addInput(new KeyStroke(KeyType.Backspace));
      terminal.addInput(new KeyStroke(KeyType.Enter));
      "ip".chars().forEach(key -> press((char) key, false));
      terminal.addInput(new KeyStroke(KeyType.Escape));
      press('p', false);
      await(() -> pressed.contains("pause"));
      screen.show(new Scene().state());
    }
    assertEquals(
        List.of(
            "typing ",
            "typing K",
            "typing K1",
            "typing K1x",
            "typing K1",
            "typing null",
            "identify K1",
            "typing ",
            "typing p",
            "typing null",
            "pause"),
        pressed);
  }

  @Test
  void controlCLeavesAndOtherKeysDoNothing() throws Exception {
    try (ExamScreen screen = open(new Scene())) {
      press('z', false);
      press('p', true);
      press('c', true);
      await(() -> !pressed.isEmpty());
      screen.show(new Scene().state());
    }
    assertEquals(List.of("leave"), pressed);
  }

  @Test
  void followsTheVoiceThroughResizes() throws Exception {
    Scene scene = new Scene();
    try (ExamScreen screen = open(scene)) {
      for (int[] size : new int[][] {{160, 50}, {40, 12}, {100, 30}, {80, 24}}) {
        screen.show(scene.say("left clavicle crepitus.").state().withPartial("right clav"));
        terminal.setTerminalSize(new TerminalSize(size[0], size[1]));
        screen.show(scene.say("now the hips.").state().withPartial("left barlow " + size[0]));
        await(() -> Scene.text(terminal).contains("left barlow " + size[0]));
      }
    }
  }

  @Test
  void idleScreensWriteNothing() throws Exception {
    Scene scene = new Scene();
    try (ExamScreen screen = open(scene)) {
      await(() -> Scene.text(terminal).contains("say/press"));
      terminal.getAndResetDirtyCells();
      terminal.isWholeBufferDirtyThenReset();
      screen.show(scene.state());
      screen.show(scene.state().withPartial("hips"));
      await(() -> Scene.text(terminal).contains("hearing: hips"));
      long rows =
          terminal.getAndResetDirtyCells().stream().map(cell -> cell.getRow()).distinct().count();
      assertEquals(1, rows, "rows that were written");
    }
  }

  @Test
  void sideKeysAnswerOnlyWhileTheSideIsAsked() throws Exception {
    Scene scene = new Scene();
    try (ExamScreen screen = open(scene)) {
      await(() -> Scene.text(terminal).contains("say/press"));
      press('b', false);
      press('m', false);
      await(() -> pressed.size() == 1);
      screen.show(scene.say("clavicle crepitus.").state());
      await(() -> Scene.text(terminal).contains("l \"left\"  r \"right\"  b \"both\""));
      "lrb".chars().forEach(key -> press((char) key, false));
      await(() -> pressed.size() == 4);
    }
    assertEquals(List.of("say-missing", "left", "right", "both"), pressed);
  }

  @Test
  void numbersAnswerWhichOfTwoIsRightOnlyWhileThatIsAsked() throws Exception {
    Scene scene = new Scene().say("now the hips.");
    try (ExamScreen screen = open(scene)) {
      await(() -> Scene.text(terminal).contains("say/press"));
      press('1', false);
      press('m', false);
      await(() -> pressed.size() == 1);
      screen.show(scene.say("left barlow negative. left barlow positive.").state());
      await(() -> Scene.text(terminal).contains("1 \"the first one\"  2 \"the second one\""));
      "12".chars().forEach(key -> press((char) key, false));
      await(() -> pressed.size() == 3);
    }
    assertEquals(List.of("say-missing", "the first one", "the second one"), pressed);
  }

  @Test
  void aStepOfTheMeterWritesOneCellAndAFindingNoMoreThanAFifthOfTheScreen() throws Exception {
    Scene scene = new Scene().say("now the hips. barlow negative both hips.");
    try (ExamScreen screen = open(scene)) {
      await(() -> Scene.text(terminal).contains("say/press"));
      assertEquals(1, cellsWritten(screen, scene.state().withSound(7, 83), "███████░░░"));
      ScreenState found = scene.say("left ortolani negative.").state().withSound(7, 83);
      int cells = cellsWritten(screen, found, "left Ortolani: negative");
      assertTrue(cells < 80 * 24 / 5, () -> cells + " cells written for a finding");
    }
  }

  private int cellsWritten(ExamScreen screen, ScreenState state, String awaited)
      throws InterruptedException {
    terminal.getAndResetDirtyCells();
    terminal.isWholeBufferDirtyThenReset();
    screen.show(state);
    await(() -> Scene.text(terminal).contains(awaited));
    // The last of the cells may still be on their way: what the screen does next comes after them.
    screen.show(state.withPartial("x"));
    await(() -> Scene.text(terminal).contains("hearing: x"));
    return terminal.getAndResetDirtyCells().size() - "hearing: x".length();
  }

  @Test
  void aScreenThatCannotDrawLeavesAndSaysWhy() throws Exception {
    try (ExamScreen screen = open(new Scene())) {
      screen.show(new Scene().state().withNotice(null));
      await(() -> pressed.contains("leave"));
      assertTrue(screen.failure().isPresent());
    }
  }

  @Test
  void closingTwiceDoesNoHarm() throws IOException {
    ExamScreen screen = open(new Scene());
    screen.close();
    screen.close();
    assertTrue(pressed.isEmpty());
  }
}
