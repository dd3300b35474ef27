package tiptoe.session;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.util.Map;
import java.util.stream.Collectors;
import tiptoe.exam.StatedIdentity;
import tiptoe.protocol.Protocol;
import tiptoe.wording.Words;

/** Asks who the baby is, before its examination. */
public final class IdentityDialogue {
  private static final int LONGEST_LINE = 64 << 10;

  private IdentityDialogue() {}

  /** Asks until an answer can be meant and was confirmed, or nothing is answered. */
  public static Map<String, String> ask(Words words, InputStream in, PrintStream out)
      throws IOException {
    while (true) {
      out.println(
          "Who is the baby? Type or scan the record number, \"name: …; record number: …\" or"
              + " the code; an empty line leaves it open.");
      String line = line(in);
      if (line.isBlank()) {
        return Map.of();
      }
      StatedIdentity stated = StatedIdentity.parse(line, Protocol.standard());
      if (!stated.problems().isEmpty()) {
        out.println(String.join("; ", stated.problems()));
        continue;
      }
      stated.remarks().forEach(out::println);
      out.println(
          stated.facts().entrySet().stream()
              .map(fact -> words.stated(fact.getKey(), fact.getValue()))
              .collect(Collectors.joining("; ")));
      out.println("Is that right? An empty line or \"yes\"; anything else asks again.");
      String answer = line(in).strip();
      if (answer.isEmpty() || answer.equalsIgnoreCase("yes")) {
        return stated.facts();
      }
    }
  }

  // No further than the end of the line: the rest are keys for the screen.
  private static String line(InputStream in) throws IOException {
    ByteArrayOutputStream line = new ByteArrayOutputStream();
    int next = in.read();
    while (next >= 0 && next != '\n') {
      if (line.size() >= LONGEST_LINE) {
        throw new IOException("expected a line of at most 64 KiB, found more");
      }
      line.write(next);
      next = in.read();
    }
    return line.toString(StandardCharsets.UTF_8);
  }
}
