package tiptoe.language.tagger;

/**
 * One thing a term can stand for.
 *
 * @param kind what it is
 * @param step id of the step; null for words that belong to none, such as "no"
 * @param value id of the value for a {@code VALUE}, name of the list for a {@code CUE}, else null
 * @param pair whether both sides are meant
 * @param bound whether it counts only beside a part of its step
 */
record Sense(Kind kind, String step, String value, boolean pair, boolean bound) {

  private static final String LOOSELY = "loosely";

  /** Kinds of sense. */
  enum Kind {
    PART,
    PLACE,
    VALUE,
    CUE
  }

  static Sense cue(String list) {
    return new Sense(Kind.CUE, null, list, false, false);
  }

  /** A structure that says this step only where no other of the steps it can say is meant. */
  static Sense loosely(String step) {
    return new Sense(Kind.PART, step, LOOSELY, false, false);
  }

  boolean isLoose() {
    return kind == Kind.PART && LOOSELY.equals(value);
  }

  boolean isCue(String list) {
    return kind == Kind.CUE && value.equals(list);
  }
}
