package tiptoe.cli;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Arrays;
import tiptoe.files.BoundedFile;
import tiptoe.wording.PlainText;

/**
 * Where commands print: results to one stream, everything else to the other. Both are {@link
 * PlainText#stream}s.
 */
public final class Console {
  private static PrintStream results = System.out;
  private static PrintStream out = PlainText.stream(System.out);
  private static PrintStream err = PlainText.stream(System.err);

  private static BufferedReader answers;

  private Console() {}

  static void use(PrintStream to, PrintStream rest) {
    results = to;
    out = PlainText.stream(to);
    err = PlainText.stream(rest);
    // One for all questions, since it reads ahead.
    answers = new BufferedReader(new InputStreamReader(System.in, StandardCharsets.UTF_8));
  }

  static PrintStream out() {
    return out;
  }

  /** Prints JSON, a line, without changing what it says. */
  static void json(Object json) {
    out.println(PlainText.json(json.toString()));
  }

  /** Prints what is cleaned already and whose line ends its format says. */
  static void file(String content) {
    results.print(content);
    results.flush();
  }

  public static PrintStream err() {
    return err;
  }

  /**
   * A passphrase from the first line of a file, or asked for where none is named.
   *
   * @param option what names the file
   */
  static char[] secret(Path file, String option, String prompt) throws IOException {
    if (file != null) {
      return BoundedFile.SECRET.lines(file).stream().findFirst().orElse("").toCharArray();
    }
    java.io.Console console = System.console();
    if (console == null) {
      throw new IOException("expected a passphrase: name a file with " + option);
    }
    char[] typed = console.readPassword("%s", prompt);
    return typed == null ? new char[0] : typed;
  }

  /** The same for a new one, which is asked for twice. */
  static char[] newSecret(Path file, String option, String prompt, int shortest)
      throws IOException {
    char[] first = secret(file, option, prompt);
    if (first.length < shortest) {
      throw new IOException(
          first.length == 0 && shortest == 1
              ? "expected a passphrase, found none"
              : "expected a passphrase of at least " + shortest + " characters");
    }
    if (file == null && !Arrays.equals(first, secret(null, option, "again: "))) {
      throw new IOException("the two passphrases differ");
    }
    return first;
  }

  /** Asks until the end of a line; only yes is yes. */
  static boolean agreed(String question) throws IOException {
    err.print(question + " (yes/no) ");
    err.flush();
    String answer = answers.readLine();
    return answer != null && answer.strip().equalsIgnoreCase("yes");
  }
}
