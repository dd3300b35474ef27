package tiptoe.protocol;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * What a ward adds to the examination: steps of its own, words for what is there, steps that must
 * be stated for themselves, and remarks. It takes nothing away: no id of ours is defined anew, no
 * key step stops being one, and every abnormal value says how soon to act.
 *
 * @param name of the ward or its protocol
 * @param version of the ward's own counting
 * @param text the file as it was, which a record keeps
 * @param steps steps of its own, each with the region it is added to
 * @param keySteps ids of our steps that are key steps here
 * @param remarks by id of a step of ours, what to be reminded of there
 * @param wordings how its values, and values of ours, are said
 * @param actions what its abnormal values ask for, one for each
 */
public record LocalProtocol(
    String name,
    String version,
    String text,
    List<Step> steps,
    Set<String> keySteps,
    Map<String, String> remarks,
    List<Wording> wordings,
    List<Action> actions) {
  private static final int DIGITS = 12;

  /**
   * Words for a value of a step.
   *
   * @param value null where they name the step itself
   */
  public record Wording(String step, String value, String words) {}

  /**
   * What an abnormal value asks for.
   *
   * @param level emergency, urgent, arrange or note
   */
  public record Action(String step, String value, String level, String action) {}

  public LocalProtocol {
    steps = List.copyOf(steps);
    keySteps = Set.copyOf(keySteps);
    remarks = Map.copyOf(remarks);
    wordings = List.copyOf(wordings);
    actions = List.copyOf(actions);
  }

  /** Reads a file that must hold nothing wrong. */
  public static LocalProtocol parse(String file, String text, Protocol ours) {
    LocalProtocolReader reader = new LocalProtocolReader(file, ours);
    LocalProtocol read = reader.read(text);
    if (!reader.problems().isEmpty()) {
      throw new IllegalArgumentException(String.join("\n", reader.problems()));
    }
    return read;
  }

  /**
   * Reads what a record kept. What an older version of ours let it hold, and this one does not, is
   * left out.
   */
  static LocalProtocol kept(String text, Protocol ours) {
    return new LocalProtocolReader("the record", ours).read(text);
  }

  /** Name, version, and the first digits of the SHA-256 of the file. */
  public String title() {
    return name + " " + version + " (" + sha256().substring(0, DIGITS) + ")";
  }

  /** SHA-256 of the file. */
  public String sha256() {
    try {
      return HexFormat.of()
          .formatHex(
              MessageDigest.getInstance("SHA-256").digest(text.getBytes(StandardCharsets.UTF_8)));
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException(e);
    }
  }
}
