package tiptoe.exam.journal;

import java.io.IOException;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import tiptoe.exam.Event;
import tiptoe.exam.ExamRecord;
import tiptoe.protocol.Identified;
import tiptoe.protocol.Labels;

/** How long the sound of an examination is kept. */
public enum KeepAudio implements Identified {
  /** It is not written at all. */
  NEVER,
  /** It is removed once the record is signed; its hashes stay in the signature. */
  UNTIL_SIGNED,
  ALWAYS;

  public static KeepAudio of(String id) {
    return Labels.byId(KeepAudio.class, id, "never, until-signed or always");
  }

  /** The choice that was made for a record, the last one; empty where the settings decide. */
  public static Optional<KeepAudio> chosen(ExamRecord record) {
    return record
        .events(Event.KeepAudioChosen.class)
        .map(Event.KeepAudioChosen::choice)
        .reduce((first, last) -> last)
        .flatMap(
            id -> Arrays.stream(values()).filter(choice -> choice.id().equals(id)).findFirst());
  }

  /** What will become of the sound, for whoever is about to sign; empty where there is none. */
  public List<String> afterSigning(int segments) {
    if (segments == 0) {
      return List.of();
    }
    String keeping = "kept " + id().replace('-', ' ');
    boolean one = segments == 1;
    String sound = one ? "its one segment of sound " : "its " + segments + " segments of sound ";
    String becomes =
        this == ALWAYS
            ? (one ? "stays: " : "stay: ")
            : (one ? "is" : "are") + " removed by signing: ";
    return List.of(sound + becomes + keeping);
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
