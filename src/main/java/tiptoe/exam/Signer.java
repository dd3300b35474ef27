package tiptoe.exam;

/** Who signs: somebody who gives a name, or who has a key as well. */
public interface Signer {
  /** Somebody who gives a name only. */
  Signer NAME_ONLY = new Signer() {};

  /** The public key, Ed25519 as in RFC 8410, in base64; null where there is none. */
  default String key() {
    return null;
  }

  /** The signature over this, as in {@link SignedStatement#toSign}, in base64url; null for none. */
  default String signature(SignedStatement statement) {
    return null;
  }
}
