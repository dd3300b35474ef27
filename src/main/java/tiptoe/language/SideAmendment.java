package tiptoe.language;

import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import tiptoe.protocol.Side;

/**
 * "No, sorry, left" at the end of what is said: the finding before it is on the other side.
 *
 * @param from index of its first word
 * @param side the side that is right; empty where that is the one that was not said
 * @param outright whether it can only be meant so; a bare "no, right" is also said to parents, and
 *     behind a finding it may deny the other side
 */
record SideAmendment(int from, Optional<Side> side, boolean outright) {
  private static final Pattern WORDS =
      Pattern.compile(
          "(?:^|.*? )((?:no|oh|wait|actually|sorry|(?:sorry )?i mean|i meant)"
              + "(?: (?:no|oh|wait|actually|sorry|i mean|i meant))*"
              + "(?: (?:it is|it's|it was|that's|that is|was|on|to|the|his|her))*"
              + " (left|right|other(?= side| one))( side| one| hand side)?)");
  private static final Pattern OUTRIGHT =
      Pattern.compile(".*\\b(?:sorry|mean|meant|actually|side)\\b.*");

  /** The amendment that these words end with; empty where they end with none. */
  static Optional<SideAmendment> of(List<String> words) {
    Matcher found = WORDS.matcher(String.join(" ", words));
    if (!found.matches()) {
      return Optional.empty();
    }
    String amends = found.group(1);
    return Optional.of(
        new SideAmendment(
            words.size() - amends.split(" ").length,
            Optional.of(found.group(2)).filter(said -> !said.equals("other")).map(Side::of),
            OUTRIGHT.matcher(amends).matches()));
  }
}
