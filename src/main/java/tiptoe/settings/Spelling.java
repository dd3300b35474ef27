package tiptoe.settings;

import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Shows text, which is written in British spelling, in the spelling that was chosen. */
public final class Spelling {
  // Parts of words, in the order they are tried; ids in kebab-case are never shown through this.
  private static final List<String[]> AMERICAN =
      List.of(
          new String[] {"aemi", "emi"},
          new String[] {"haem", "hem"},
          new String[] {"paed", "ped"},
          new String[] {"apnoea", "apnea"},
          new String[] {"caesarean", "cesarean"},
          new String[] {"colour", "color"},
          new String[] {"foetal", "fetal"},
          new String[] {"fontanelle", "fontanel"},
          new String[] {"manoeuvre", "maneuver"},
          new String[] {"metre", "meter"},
          new String[] {"moulding", "molding"},
          new String[] {"oedema", "edema"},
          new String[] {"praecordi", "precordi"},
          new String[] {"tumour", "tumor"},
          new String[] {"centile", "percentile"});

  private Spelling() {}

  /** The text as it is to be shown. */
  public static String of(String british, Settings settings) {
    if (!settings.is(Setting.SPELLING, "american")) {
      return british;
    }
    String text = british;
    for (String[] pair : AMERICAN) {
      text = replaced(text, pair[0], pair[1]);
    }
    return text;
  }

  private static String replaced(String text, String british, String american) {
    Matcher found = Pattern.compile("(?<!per)" + british, Pattern.CASE_INSENSITIVE).matcher(text);
    return found.replaceAll(
        match ->
            Character.isUpperCase(match.group().charAt(0))
                ? Character.toUpperCase(american.charAt(0)) + american.substring(1)
                : american);
  }
}
