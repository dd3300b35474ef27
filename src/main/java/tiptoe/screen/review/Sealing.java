package tiptoe.screen.review;

import java.io.IOException;
import java.util.List;

/** Seals the record that is reviewed. */
public interface Sealing {
  /** What is wrong with the sound that is kept; empty when nothing is. */
  List<String> problems() throws IOException;

  /** Signs the record with all that belongs to it. */
  void sign(String name, String role) throws IOException;
}
