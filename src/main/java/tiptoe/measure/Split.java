package tiptoe.measure;

import java.nio.charset.StandardCharsets;
import java.util.Locale;
import tiptoe.files.Sha256;
import tiptoe.protocol.Identified;
import tiptoe.protocol.Labels;

/**
 * Which recordings something may be fitted on, and which it is reported on. Decided by the name of
 * the file alone: by its part before the first hyphen, which names the speaker or the voice where a
 * set has several recordings of one, so that no voice is in both halves.
 */
public enum Split implements Identified {
  /** What may be fitted on. */
  TRAIN,
  /** What is reported on. */
  HELD_OUT,
  /** Both. */
  ALL;

  /** The half a file belongs to: {@link #TRAIN} or {@link #HELD_OUT}. */
  public static Split of(String fileName) {
    byte[] hash = Sha256.of(group(fileName).getBytes(StandardCharsets.UTF_8));
    return hash[0] >= 0 ? TRAIN : HELD_OUT;
  }

  /** What is never divided: the name before its first hyphen, else without its ending. */
  static String group(String fileName) {
    String name = fileName.toLowerCase(Locale.ROOT).replaceFirst("\\.[^.]*$", "");
    return name.replaceFirst("-.*$", "");
  }

  /** Whether a file of this name is part of it. */
  public boolean takes(String fileName) {
    return this == ALL || this == of(fileName);
  }

  /** The split with this id. */
  public static Split ofId(String id) {
    return Labels.byId(Split.class, id, "train, held-out or all");
  }
}
