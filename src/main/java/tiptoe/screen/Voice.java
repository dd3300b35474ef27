package tiptoe.screen;

import com.googlecode.lanterna.input.KeyStroke;
import com.googlecode.lanterna.input.KeyType;
import java.util.Optional;
import tiptoe.language.Command;

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
  END_REMARK("d", "end remark", Command.END_REMARK);

  private final String key;
  private final String words;
  private final Command command;

  Voice(String key, String words, Command command) {
    this.key = key;
    this.words = words;
    this.command = command;
  }

  String key() {
    return key;
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

  /** The command of a key; empty where it has none. */
  static Optional<Command> of(KeyStroke stroke) {
    if (stroke.isCtrlDown() || stroke.isAltDown()) {
      return Optional.empty();
    }
    if (stroke.getKeyType() == KeyType.ArrowRight) {
      return Optional.of(Command.NEXT_REGION);
    }
    if (stroke.getKeyType() == KeyType.ArrowLeft) {
      return Optional.of(Command.PREVIOUS_REGION);
    }
    if (stroke.getKeyType() != KeyType.Character) {
      return Optional.empty();
    }
    String pressed = stroke.getCharacter().toString();
    for (Voice voice : values()) {
      if (voice.key.equalsIgnoreCase(pressed)) {
        return Optional.of(voice.command);
      }
    }
    return Optional.empty();
  }
}
