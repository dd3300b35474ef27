package tiptoe.screen;

import com.googlecode.lanterna.input.KeyStroke;
import com.googlecode.lanterna.input.KeyType;
import java.util.Optional;
import tiptoe.language.Command;

/** The keys that do what can be said; no examination needs them. */
enum Voice {
  PAUSE("p", "stop listening", Command.PAUSE),
  RESUME("l", "listen again", Command.RESUME),
  MISSING("m", "what is missing", Command.SAY_MISSING),
  READ_BACK("r", "read that back", Command.READ_BACK),
  NEXT(">", "next region", Command.NEXT_REGION),
  PREVIOUS("<", "previous region", Command.PREVIOUS_REGION),
  STRIKE("x", "cross that out", Command.STRIKE),
  YES("y", "yes", Command.YES),
  NO("n", "no", Command.NO),
  END("e", "end of examination", Command.END_EXAM);

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
