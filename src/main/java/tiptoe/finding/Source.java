package tiptoe.finding;

/** How a statement was understood. */
public enum Source {
  GRAMMAR,
  TAGGER,
  TYPED;

  @com.fasterxml.jackson.annotation.JsonValue
  public String id() {
    return name().toLowerCase(java.util.Locale.ROOT);
  }
}
