package tiptoe.protocol;

/**
 * One answer a step can take.
 *
 * @param id the word of the trade in kebab-case, unique within its step
 * @param label for people, in British spelling
 * @param norm how it stands to what is expected
 * @param sided whether the value has a side although the step has none, such as a facial palsy
 */
public record Value(String id, String label, Norm norm, boolean sided) {

  /** Every step can be left out, with a reason: {@code reason} is a detail of the answer. */
  public static final String NOT_EXAMINED = "not-examined";
}
