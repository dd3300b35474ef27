package tiptoe.language.tagger;

import java.util.Locale;

/** What a stretch of words is. */
enum Label {
  STRUCTURE,
  FINDING,
  SIDE,
  NEGATION,
  NUMBER,
  UNIT,
  SEVERITY,
  PLACE;

  String id() {
    return name().toLowerCase(Locale.ROOT);
  }
}
