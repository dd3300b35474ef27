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

  boolean isCue(String list) {
    return kind == Kind.CUE && value.equals(list);
  }
}
