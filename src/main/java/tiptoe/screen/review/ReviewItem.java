package tiptoe.screen.review;

import java.util.List;
import java.util.Set;
import tiptoe.exam.Slot;
import tiptoe.wording.Sign;

/**
 * One line of a review.
 *
 * @param kind what it is
 * @param section the part of the review it is in
 * @param region id of its region; null where it belongs to none
 * @param number of the statement, utterance, question or remark; 0 where it has none
 * @param id of the fact or the rule, or what is missing; empty where the number tells it
 * @param slot the step and side it is about; null where it is about none
 * @param sign what it comes to at a glance
 * @param text for people
 * @param provenance where it comes from
 * @param notes what else there is to know, a line each
 * @param of the filters that show it
 */
public record ReviewItem(
    Kind kind,
    Section section,
    String region,
    int number,
    String id,
    Slot slot,
    Sign sign,
    String text,
    Provenance provenance,
    List<String> notes,
    Set<Filter> of) {
  public enum Kind {
    QUESTION,
    UTTERANCE,
    FLAG,
    STATEMENT,
    /** A step without an answer. */
    STEP,
    /** A detail that a finding wants. */
    DETAIL,
    FACT,
    REMARK,
    GAP
  }

  public ReviewItem {
    notes = List.copyOf(notes);
    of = Set.copyOf(of);
  }

  /** Tells it from all others, also after an edit. */
  String key() {
    return kind + " " + number + " " + id;
  }

  boolean is(Kind other) {
    return kind == other;
  }
}
