package tiptoe.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Map;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import tiptoe.exam.SignedStatement;
import tiptoe.exam.SignerName;
import tiptoe.exam.journal.SigningKey;
import tiptoe.exam.journal.TrustedKeys;
import tiptoe.settings.Setting;

/** Makes a key to sign with, trusts those of others, and lists whose are trusted. */
@Command(
    name = "key",
    description = {
      "Makes a key to sign records with, or trusts that of somebody else.",
      "Without an option: lists the keys that are trusted here, by fingerprint and owner.",
      "Compare a fingerprint with its owner before you trust a key."
    },
    footer = {
      "",
      "Example: tiptoe key --new --as \"Rowan Reed\"",
      "         tiptoe key --trust MCowBQYDK2VwAyEA... --as \"Ada Quill\""
    })
final class KeyCommand implements Callable<Integer> {
  private static final int SHORTEST = 8;

  @Option(
      names = "--new",
      arity = "0..1",
      paramLabel = "NAME",
      fallbackValue = "",
      description = "Make a key pair, of whom --as names.")
  private String made;

  @Option(
      names = "--file",
      paramLabel = "FILE",
      description = "With --new: put it here; else in your data folder.")
  private Path file;

  @Option(names = "--trust", paramLabel = "KEY", description = "Trust this public key.")
  private String trusted;

  @Option(
      names = KeyOption.PASSPHRASE,
      paramLabel = "FILE",
      description = "Read the passphrase from the first line of a file instead of asking.")
  private Path passphrase;

  @Mixin private DataOption data;
  @Mixin private SettingsOption option;

  @Option(
      names = "--as",
      paramLabel = "NAME",
      description = "Whose key it is; with --new else who the settings say you are.")
  private String whose;

  @Override
  public Integer call() throws IOException {
    TrustedKeys keys = new TrustedKeys(data.place());
    if (made != null) {
      return make(keys);
    }
    if (trusted != null) {
      return trust(keys);
    }
    Map<String, String> owners = keys.owners();
    owners.forEach((fingerprint, whose) -> Console.out().println(fingerprint + "  " + whose));
    WrongUse.unless(!owners.isEmpty(), "no key is trusted here");
    return 0;
  }

  private int make(TrustedKeys keys) throws IOException {
    String owner = whose != null ? whose : made;
    owner = owner.isEmpty() ? option.settings().get(Setting.WHO_NAME) : owner;
    if (!SignerName.isVisible(owner)) {
      Console.err().println("expected a name in visible letters, found a blank one");
    }
    char[] secret =
        Console.newSecret(
            passphrase, KeyOption.PASSPHRASE, "new passphrase of the key: ", SHORTEST);
    Path place = file == null ? SigningKey.place(data.place()) : file;
    SigningKey made = SigningKey.create(place, owner.strip(), secret);
    keys.add(made.key(), owner.strip());
    Console.out().println("key kept in " + place);
    Console.out().println("fingerprint " + made.fingerprint());
    Console.out().println("public key " + made.key());
    return 0;
  }

  private int trust(TrustedKeys keys) throws IOException {
    WrongUse.unless(
        whose != null && SignerName.isVisible(whose), "expected whose key it is, with --as");
    try {
      keys.add(trusted, whose.strip());
    } catch (IllegalArgumentException e) {
      throw new WrongUse("expected a public key of Ed25519 in base64, found " + trusted);
    }
    Console.out().println("trusted " + SignedStatement.fingerprint(trusted));
    return 0;
  }
}
