package tiptoe.cli;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import tiptoe.exam.Signature;

/**
 * A seal as it was read off paper.
 *
 * @param hex 64 digits, in lower case
 */
record PrintedSeal(String hex) {
  /** The seal in a text, whose case, blanks and line ends do not matter; empty where it is none. */
  static Optional<PrintedSeal> parse(String text) {
    String hex = text.replaceAll("\\s", "").toLowerCase(Locale.ROOT);
    return hex.matches("[0-9a-f]{64}") ? Optional.of(new PrintedSeal(hex)) : Optional.empty();
  }

  /** The signature that it belongs to. */
  Optional<Signature> among(List<Signature> signatures) {
    return signatures.stream().filter(signature -> signature.seal().equals(hex)).findFirst();
  }
}
