package tiptoe.language.tagger;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.IntStream;
import tiptoe.protocol.Side;

/**
 * Reads the stretches of a sentence that say that something was not examined; one with a word more
 * is none.
 */
final class LeftOutStretches {
  /**
   * Says that it was not done, of what, on which side and until when.
   *
   * @param from its first word
   * @param behind behind its last word, where the reason may begin
   * @param names the words of each thing that it names
   * @param until whether it says until when
   */
  record Stretch(
      int from,
      int behind,
      List<List<String>> names,
      LeftOutSides sides,
      Undone undone,
      boolean until) {}

  /**
   * That it was not done.
   *
   * @param to behind the last word that says so
   * @param deed what was not done; empty where no word says it
   * @param perceived whether nothing was seen, heard or felt, which may be a finding
   * @param denied whether no more is said than "no"
   */
  record Undone(int to, List<String> deed, boolean perceived, boolean denied) {}

  private final SentenceItems said;
  private final LeftOutNames names;

  LeftOutStretches(SentenceItems said, LeftOutNames names) {
    this.said = said;
    this.names = names;
  }

  /** The one that begins at a word; none where that says nothing of what was left out. */
  Optional<Stretch> from(int from) {
    if (!begins(from)) {
      return Optional.empty();
    }
    List<List<String>> named = new ArrayList<>();
    List<String> name = new ArrayList<>();
    LeftOutSides sides = LeftOutSides.NONE;
    Undone undone = null;
    boolean until = false;
    boolean namesNoMore = false;
    int to = said.breaks().to(from);
    int at = from;
    while (at < to) {
      String word = said.words().get(at);
      if (undone == null) {
        undone = undone(from, at);
        if (undone != null) {
          close(name, named);
          namesNoMore = !named.isEmpty();
          at = undone.to();
          continue;
        }
      }
      if (isSought(at, name)) {
        name.clear();
        at++;
        continue;
      }
      if (undone != null && isReason(at)) {
        break;
      }
      int aside = name.isEmpty() || !said.isListed("ends-a-name", at) ? aside(at) : 0;
      if (aside > 0) {
        if (said.term("other", at) > 0 && said.sideBefore(from).isEmpty()) {
          return Optional.empty();
        }
        sides = sides(sides, from, at);
        until |= said.term("left-out-until", at) > 0;
        close(name, named);
        at += aside;
        continue;
      }
      if (undone != null && name.isEmpty() && said.isListed("undone-no", at)) {
        // "No Barlow and no Ortolani from me"
        at++;
        continue;
      }
      boolean leads = name.isEmpty() && said.isListed("determiner", at);
      if (said.isSide(at)) {
        sides = sides.and(Side.of(word));
      } else if (namesNoMore && !leads) {
        return Optional.empty();
      } else if (!leads) {
        name.add(word);
      }
      at++;
    }
    close(name, named);
    return undone == null || asks(from)
        ? Optional.empty()
        : Optional.of(new Stretch(from, at, named, sides, undone, until));
  }

  // Behind a break, or inside a stretch where the examiner begins to speak of himself, or "so".
  private boolean begins(int at) {
    return !said.breaks().at(at)
        && (said.breaks().at(at - 1)
            || said.isListed("parts-off", at - 1)
            || said.isListed("examiner", at) && !said.isListed("asking", at - 1));
  }

  // "Did we not do the hips": no statement.
  private boolean asks(int from) {
    return from + 1 < said.words().size()
        && said.isListed("asking", from)
        && said.isListed("asked-of", from + 1);
  }

  private void close(List<String> name, List<List<String>> named) {
    while (!name.isEmpty() && said.lexicon().isListed("determiner", name.get(name.size() - 1))) {
      name.remove(name.size() - 1);
    }
    if (!name.isEmpty()) {
      named.add(List.copyOf(name));
      name.clear();
    }
  }

  // "Didn't look in the mouth for the palate": that alone, not all that is there.
  private boolean isSought(int at, List<String> name) {
    return said.isListed("sought", at)
        && names.steps(name).isEmpty()
        && !names.steps(said.words().subList(at + 1, said.breaks().to(at))).isEmpty();
  }

  private boolean isReason(int at) {
    return said.isListed("reason-begins", at) || said.term("reason-of", at) > 0;
  }

  // How many words name nothing: who does it, until when, on both sides or the other one, the
  // pronoun of what was named.
  private int aside(int at) {
    int longest =
        List.of("of-both-sides", "of-that-side", "other", "left-out-until", "undone-beside")
            .stream()
            .mapToInt(list -> said.term(list, at))
            .reduce(0, Math::max);
    boolean one =
        said.isListed("undone-joint", at)
            || said.isListed("side-words", at)
            || isDoneBehind(at + 1);
    return longest > 0 ? longest : one ? 1 : 0;
  }

  // "No Moro done": it was not tried, where "no Moro" is none.
  private boolean isDoneBehind(int end) {
    return said.breaks().at(end) && said.isListed("undone-done", end - 1);
  }

  // "Too puffy on the right, couldn't check it on that side"
  private LeftOutSides sides(LeftOutSides sides, int from, int at) {
    if (said.term("of-both-sides", at) > 0) {
      return sides.ofBoth();
    }
    if (said.term("other", at) > 0) {
      return said.sideBefore(from).map(side -> sides.and(side.other())).orElse(sides);
    }
    return said.term("of-that-side", at) == 0
        ? sides
        : IntStream.range(0, at)
            .filter(said::isSide)
            .mapToObj(place -> Set.of(Side.of(said.words().get(place))))
            .reduce((first, last) -> last)
            .map(sides::or)
            .orElse(sides);
  }

  // "I've left Barlow and Ortolani undone", "left the Moro out", "i've left the stepping": no side.
  private boolean leavesUndone(int from, int at) {
    int end = said.breaks().to(at);
    boolean first = at == from || said.isListed("examiner", at - 1);
    return first
        && said.isListed("left-it", at)
        && at + 1 < end
        && (said.isListed("left-so", end - 1) && (at > from || said.isListed("determiner", at + 1))
            || at > from
                && said.isListed("determiner", at + 1)
                && !names.steps(nameFrom(at + 2)).isEmpty());
  }

  // Up to a break or a reason.
  private List<String> nameFrom(int from) {
    int to = from;
    while (to < said.words().size() && !said.breaks().at(to) && !isReason(to)) {
      to++;
    }
    return said.words().subList(Math.min(from, to), to);
  }

  // "Haven't been able to check", "left out", "i'm skipping"; null where no word says so.
  private Undone undone(int from, int at) {
    if (at == from && said.isListed("undone-no", at)) {
      int end = said.breaks().to(from);
      boolean done = isDoneBehind(end) || said.says("by-choice", from, end);
      return new Undone(at + 1, List.of(), !done, !done);
    }
    if (leavesUndone(from, at)) {
      return new Undone(at + 1, List.of(), false, false);
    }
    int leaves = said.term("leaves-out", at);
    if (leaves > 0 || at == from && said.isListed("leaves", at)) {
      return new Undone(at + Math.max(leaves, 1), List.of(), false, false);
    }
    int not = said.term("undone-not", at);
    // "Couldn't get to check", "couldn't get": a deed, and only then what was looked for.
    Undone perceived = null;
    for (int next = at + not; not > 0 && !said.breaks().at(next); next++) {
      int deed = next + said.term("deed", next);
      if (deed > next) {
        return new Undone(deed, said.words().subList(next, deed), false, false);
      }
      int found = next + said.term("perceives", next);
      if (found > next && perceived == null) {
        perceived = new Undone(found, said.words().subList(next, found), true, false);
      }
      if (!said.isListed("undone-between", next)) {
        break;
      }
    }
    return perceived;
  }
}
