package tiptoe.screen.review;

import java.util.Optional;

/** What a key does in the list of items, those first that are wanted most. */
enum ReviewAction {
  HELP('?', "help", "this page"),
  QUIT('q', "leave", "leave; every edit is kept already"),
  SIGN('S', "sign", "see what is missing and open, and sign"),
  TYPE('t', "type a finding", "type a finding, as it would be said; Tab completes"),
  CORRECT('e', "correct", "type what stands in the place of this, or answer this question"),
  ACCEPT('a', "accept", "let count what was unsure, or what does not count any more"),
  DISMISS('d', "drop", "do not use an unsure item; close a question"),
  SIDE('s', "other side", "put a finding on the other side"),
  VALUE('v', "value", "choose another value, or one for a missing step"),
  REJECT('x', "take out", "take a finding out, with a reason"),
  LEAVE_OUT('n', "not examined", "mark a step as not examined, with a reason"),
  PLAY('p', "play", "play the sound of this item; again to repeat"),
  FIRST('1', "first", "contradiction: the first is right"),
  SECOND('2', "second", "contradiction: the second is right"),
  UNDO('u', "undo", "undo the last edit of this dialogue"),
  REDO('y', "redo", "do it again"),
  FILTER('f', "filter", "all, unsure, missing, flagged, changed"),
  SEARCH('/', "search", "show only what holds these words"),
  REGION('g', "region", "go to a region"),
  REMARK('m', "remark", "add a remark"),
  SLOWER('o', "slower", "play slower"),
  EXPORT('w', "write WAV", "write the sound of this item to a file"),
  ADDENDUM('A', "addendum", "open a signed record for an addendum");

  private final char key;
  private final String shortly;
  private final String words;

  ReviewAction(char key, String shortly, String words) {
    this.key = key;
    this.shortly = shortly;
    this.words = words;
  }

  char key() {
    return key;
  }

  String shortly() {
    return shortly;
  }

  String words() {
    return words;
  }

  static Optional<ReviewAction> of(char key) {
    for (ReviewAction act : values()) {
      if (act.key == key) {
        return Optional.of(act);
      }
    }
    return Optional.empty();
  }
}
