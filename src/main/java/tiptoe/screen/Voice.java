package tiptoe.screen;

import com.googlecode.lanterna.input.KeyStroke;
import com.googlecode.lanterna.input.KeyType;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import tiptoe.exam.ExamRecord;
import tiptoe.finding.Command;

/**
 * The keys that do what can be said, those first that are wanted most; no examination needs them.
 */
enum Voice {
  MISSING("m", "what is missing", Command.SAY_MISSING),
  STRIKE("x", "cross that out", Command.STRIKE),
  PAUSE("p", "pause the recording", Command.PAUSE),
  RESUME("c", "carry on recording", Command.RESUME),
  END("e", "end of examination", Command.END_EXAM),
  YES("y", "yes", Command.YES),
  NO("n", "no", Command.NO),
  READ_BACK("r", "read that back", Command.READ_BACK),
  NEXT(">", "next region", Command.NEXT_REGION),
  PREVIOUS("<", "previous region", Command.PREVIOUS_REGION),
  START_REMARK("s", "start remark", Command.START_REMARK),
  END_REMARK("d", "end remark", Command.END_REMARK),
  HELP("?", "show the help", Command.SHOW_HELP);

  private final String key;
  private final String words;
  private final Command command;

  Voice(String key, String words, Command command) {
    this.key = key;
    this.words = words;
    this.command = command;
  }

  String words() {
    return words;
  }

  Command command() {
    return command;
  }

  /** The words as they are to be said, in quotes. */
  String quoted() {
    return "\"" + words + "\"";
  }

  String offer() {
    return key + " " + quoted();
  }

  /** What does something as the examination stands, those first that are wanted most. */
  static List<Voice> useful(ExamRecord record) {
    return switch (record.phase()) {
      case PAUSED -> List.of(RESUME, END);
      case REMARK -> List.of(END_REMARK, PAUSE, END);
      case ENDING -> List.of(YES, NO, RESUME);
      default -> {
        List<Voice> others =
            List.of(MISSING, STRIKE, PAUSE, END, READ_BACK, NEXT, PREVIOUS, START_REMARK);
        boolean asks = record.openQuestion().isPresent() || record.toConfirm().isPresent();
        List<Voice> answers = asks ? List.of(YES, NO) : List.of();
        yield Stream.concat(answers.stream(), others.stream()).toList();
      }
    };
  }

  /** The command of a key; empty where it has none. */
  static Optional<Command> of(KeyStroke stroke) {
    if (stroke.isCtrlDown() || stroke.isAltDown()) {
      return Optional.empty();
    }
    Command arrow =
        switch (stroke.getKeyType()) {
          case ArrowRight -> Command.NEXT_REGION;
          case ArrowLeft -> Command.PREVIOUS_REGION;
          case F1 -> Command.SHOW_HELP;
          default -> null;
        };
    if (arrow != null || stroke.getKeyType() != KeyType.Character) {
      return Optional.ofNullable(arrow);
    }
    String pressed = stroke.getCharacter().toString();
    return Arrays.stream(values())
        .filter(voice -> voice.key.equalsIgnoreCase(pressed))
        .map(Voice::command)
        .findFirst();
  }
}
