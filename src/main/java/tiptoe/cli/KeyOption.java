package tiptoe.cli;

import java.io.IOException;
import java.nio.file.Path;
import picocli.CommandLine.Option;
import tiptoe.exam.Signer;
import tiptoe.exam.journal.SigningKey;

/** The options that say by which key is signed; without one only a name is given. */
final class KeyOption {
  static final String PASSPHRASE = "--key-passphrase-file";

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
      names = PASSPHRASE,
      paramLabel = "FILE",
      description = "Read the passphrase of the key from the first line of a file.")
  private Path passphrase;

  /** Who signs: with the key, where one was asked for. */
  Signer signer(Path data) throws IOException {
    if (key == null) {
      return Signer.NAME_ONLY;
    }
    Path file = key.isEmpty() ? SigningKey.place(data) : Path.of(key);
    return SigningKey.open(file, Console.secret(passphrase, PASSPHRASE, "passphrase of the key: "));
  }
}
