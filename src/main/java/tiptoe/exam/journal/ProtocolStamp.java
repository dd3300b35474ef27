package tiptoe.exam.journal;

import java.nio.charset.StandardCharsets;
import tiptoe.files.Sha256;
import tiptoe.protocol.Protocol;

/** Tells one version of the protocol from another. */
final class ProtocolStamp {
  private static final int DIGITS = 12;

  private ProtocolStamp() {}

  /** The first digits of a SHA-256 over all that the protocol says. */
  static String of(Protocol protocol) {
    byte[] all = protocol.regions().toString().getBytes(StandardCharsets.UTF_8);
    return Sha256.hexOf(all).substring(0, DIGITS);
  }
}
