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

  /** The source with this id. */
  public static Source of(String id) {
    for (Source source : values()) {
      if (source.id().equals(id)) {
        return source;
      }
    }
    throw new IllegalArgumentException("expected grammar, tagger or typed, found " + id);
  }
}
