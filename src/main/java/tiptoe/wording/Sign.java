package tiptoe.wording;

/** What a line comes to at a glance: a sign beside it, since colour alone must not tell. */
public enum Sign {
  DONE("+"),
  BENIGN("~"),
  ABNORMAL("!"),
  SKIPPED("-"),
  /** Heard, but not recorded. */
  UNSURE("?"),
  /** A key step without an answer. */
  KEY("#"),
  /** Another step or detail without an answer. */
  OPEN("."),
  NONE(" ");

  private final String ascii;

  Sign(String ascii) {
    this.ascii = ascii;
  }

  /** One character that every terminal and font has. */
  public String ascii() {
    return ascii;
  }
}
