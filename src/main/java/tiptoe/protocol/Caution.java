package tiptoe.protocol;

/** The one wording of what the tool is and is not: on the first screen and in every report. */
public final class Caution {
  public static final String TEXT =
      "Tiptoe documents the examination and reminds. It does not diagnose, and it defers to your"
          + " local protocol and to the judgement of licensed practitioners.";

  private Caution() {}
}
