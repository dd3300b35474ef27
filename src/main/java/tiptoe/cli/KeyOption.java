package tiptoe.cli;

import java.io.IOException;
import java.nio.file.Path;
import picocli.CommandLine.Option;
import tiptoe.exam.Signer;
import tiptoe.exam.journal.SigningKey;
import tiptoe.files.BoundedFile;

/** The options that say by which key is signed; without one only a name is given. */
final class KeyOption {
  @Option(
      names = "--key",
      arity = "0..1",
      paramLabel = "FILE",
      fallbackValue = "",
      description = {
        "Sign by your key, that of the command key or in this file.",
        "Without it a name is given, which anybody could give."
      })
  private String key;

  @Option(
      names = "--key-passphrase-file",
      paramLabel = "FILE",
      description = "Read the passphrase of the key from the first line of a file.")
  private Path passphrase;

  /** Who signs: with the key, where one was asked for. */
  Signer signer(Path data) throws IOException {
    if (key == null) {
      return Signer.NAME_ONLY;
    }
    Path file = key.isEmpty() ? SigningKey.place(data) : Path.of(key);
    return SigningKey.open(file, secret(passphrase, "passphrase of the key: "));
  }

  /** A passphrase from the first line of a file, or asked for where none is named. */
  static char[] secret(Path file, String prompt) throws IOException {
    if (file != null) {
      return BoundedFile.SECRET.lines(file).stream().findFirst().orElse("").toCharArray();
    }
    java.io.Console console = System.console();
    if (console == null) {
      throw new IOException("expected a passphrase: name a file with --key-passphrase-file");
    }
    char[] typed = console.readPassword("%s", prompt);
    return typed == null ? new char[0] : typed;
  }
}
