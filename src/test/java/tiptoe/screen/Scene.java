package tiptoe.screen;

import com.googlecode.lanterna.TerminalSize;
import com.googlecode.lanterna.screen.TerminalScreen;
import com.googlecode.lanterna.terminal.virtual.DefaultVirtualTerminal;
import java.io.IOException;
import java.nio.file.Path;
import java.time.ZoneOffset;
import java.time.ZonedDateTime;
import java.util.List;
import java.util.function.UnaryOperator;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import tiptoe.clinical.Assessment;
import tiptoe.clinical.Assessor;
import tiptoe.exam.Bedside;
import tiptoe.exam.Event;
import tiptoe.exam.ExamRecord;
import tiptoe.exam.Examination;
import tiptoe.exam.Heard;
import tiptoe.exam.journal.MemorySink;
import tiptoe.finding.Command;
import tiptoe.finding.Outcome;
import tiptoe.finding.Source;
import tiptoe.language.Dialogue;
import tiptoe.language.Interpretation;
import tiptoe.language.Interpreter;
import tiptoe.language.Meaning;
import tiptoe.language.Shipped;
import tiptoe.protocol.Protocol;
import tiptoe.settings.Settings;
import tiptoe.wording.QuestionWording;
import tiptoe.wording.RecordWording;

/** An examination in the words of the grammars, and the frames that it comes to. */
final class Scene {
  private static final Interpreter INTERPRETER = interpreter();

  final Examination exam =
      Examination.open(
          Protocol.standard(),
          new Bedside.SetClock(),
          new MemorySink(),
          QuestionWording::of,
          new Event.ExaminationOpened("e1", "Bed 4", "1", "0.1.0", null, null));
  private int second;
  private final Settings settings;

  Scene() {
    this(Settings.DEFAULT);
  }

  Scene(Settings settings) {
    this.settings = settings;
  }

  private static Interpreter interpreter() {
    return new Interpreter(Shipped.network(), Protocol.standard());
  }

  /** The commands that these words are understood as. */
  static List<Command> commands(String words) {
    return INTERPRETER
        .interpret(List.of(words.split(" ")), Dialogue.START, Source.GRAMMAR)
        .of(Meaning.Instruction.class)
        .map(Meaning.Instruction::command)
        .toList();
  }

  /** Says sentences that end in a full stop; one that begins with {@code ?} is heard unsurely. */
  Scene say(String sentences) {
    for (String sentence : sentences.split("\\.\\s*")) {
      boolean unsure = sentence.startsWith("?");
      String text = unsure ? sentence.substring(1) : sentence;
      Interpretation meaning =
          INTERPRETER.interpret(List.of(text.split(" ")), exam.dialogue(), Source.GRAMMAR);
      Heard heard = Heard.typed(text, ++second);
      boolean command = meaning.meanings().stream().allMatch(Meaning.Instruction.class::isInstance);
      Outcome outcome = unsure ? Outcome.UNSURE : command ? Outcome.COMMAND : Outcome.ACCEPTED;
      exam.hear(heard.withOutcome(outcome), meaning);
    }
    return this;
  }

  ScreenState state() {
    ExamRecord record = exam.record();
    return ScreenState.opened(
            new RecordWording(record, assessment(record), settings), Path.of("examinations", "e1"))
        .withListening(true)
        .withKeepsSound(true)
        .withSound(6, 83);
  }

  private Assessment assessment(ExamRecord record) {
    return Assessor.of(Protocol.standard())
        .assess(
            record.baby(),
            record.answers(),
            settings,
            ZonedDateTime.of(2026, 3, 1, 9, 0, 0, 0, ZoneOffset.UTC));
  }

  String frame(int columns, int rows) throws IOException {
    return frame(columns, rows, new Look(true, false), state -> state);
  }

  String frame(int columns, int rows, Look look, UnaryOperator<ScreenState> change)
      throws IOException {
    DefaultVirtualTerminal terminal = new DefaultVirtualTerminal(new TerminalSize(columns, rows));
    TerminalScreen screen = new TerminalScreen(terminal);
    screen.setCursorPosition(null);
    screen.startScreen();
    new Painter(screen, look).paint(change.apply(state()), false);
    return text(terminal);
  }

  /** What a terminal shows, without the blanks at the ends of its lines. */
  static String text(DefaultVirtualTerminal terminal) {
    TerminalSize size = terminal.getTerminalSize();
    return IntStream.range(0, size.getRows())
        .mapToObj(
            row ->
                IntStream.range(0, size.getColumns())
                    .mapToObj(column -> terminal.getCharacter(column, row).getCharacterString())
                    .collect(Collectors.joining())
                    .stripTrailing())
        .collect(Collectors.joining("\n", "", "\n"));
  }
}
