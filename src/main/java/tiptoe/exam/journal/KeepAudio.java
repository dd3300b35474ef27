package tiptoe.exam.journal;

import java.io.IOException;
import java.util.Locale;

/** How long the sound of an examination is kept. */
public enum KeepAudio {
  /** It is not written at all. */
  NEVER,
  /** It is removed once the record is signed; its hashes stay in the signature. */
  UNTIL_SIGNED,
  ALWAYS;

  public String id() {
    return name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  /** The choice with this id. */
  public static KeepAudio of(String id) {
    for (KeepAudio choice : values()) {
      if (choice.id().equals(id)) {
        return choice;
      }
    }
    throw new IllegalArgumentException("expected never, until-signed or always, found " + id);
  }

  /** Whether sound is to be written during the examination. */
  public boolean writes() {
    return this != NEVER;
  }

  /** Does what is due when the record has been signed. */
  public void afterSigning(OpenExam exam) throws IOException {
    if (this != ALWAYS) {
      exam.removeAudio("kept " + id().replace('-', ' '));
    }
  }
}
