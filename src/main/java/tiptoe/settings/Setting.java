package tiptoe.settings;

import java.util.List;
import java.util.Optional;

/** Everything that can be set: where in the file, what it can be, what it is when not set. */
public enum Setting {
  SATURATION_SCREEN(
      "rules",
      "saturation-screen",
      "pulse-oximetry screen: AAP 2025 (both limbs, one repeat), 2011 (either limb, two repeats) or"
          + " UK (both limbs within 2 %, one repeat, in the first day)",
      "2025",
      "2011",
      "uk"),
  HIP_ULTRASOUND(
      "rules",
      "hip-ultrasound",
      "hip ultrasound for stable hips at risk: uk, at 4-6 weeks (NHS England, NIPE screening"
          + " programme handbook, 2024), or us, from 6 weeks (AAP, Pediatrics 2016;138:e20163107)",
      "uk",
      "us") {
    @Override
    String read(String choice) {
      // As files of earlier versions name them.
      return switch (choice) {
        case "nipe" -> "uk";
        case "aap" -> "us";
        default -> choice;
      };
    }
  },
  JAUNDICE(
      "rules",
      "jaundice",
      "bilirubin thresholds: NICE CG98 (by week and hour) or AAP 2022 (from 35 weeks)",
      "nice-cg98",
      "aap-2022"),
  HYPOGLYCAEMIA(
      "rules",
      "hypoglycaemia",
      "blood glucose: who is at risk and what is low, BAPM 2017 or AAP 2011",
      "bapm-2017",
      "aap-2011"),
  SIZE_STANDARD(
      "rules",
      "size-standard",
      "which standard classes and flags size at birth; the other is shown beside it",
      "intergrowth-21st",
      "who"),
  WEIGHT_UNIT("units", "weight", "unit weights are shown in", "g", "lb"),
  LENGTH_UNIT("units", "length", "unit lengths are shown in", "cm", "in"),
  TEMPERATURE_UNIT(
      "units", "temperature", "unit temperatures are shown in", "celsius", "fahrenheit"),
  SPELLING(null, "spelling", "spelling of what is shown", "british", "american"),
  KEEP_AUDIO(
      null,
      "keep-audio",
      "how long the sound of an examination is kept",
      "until-signed",
      "never",
      "always"),
  TONES(null, "tones", "short tones when a finding is recorded or a question is open", "on", "off"),
  TONE_VOLUME(null, "tone-volume", "how loud the tones are", "normal", "soft", "loud"),
  WEIGHTS(
      null,
      "weights",
      "weights of the speech model; adapted hears better through crying, stock is as published",
      "adapted",
      "stock"),
  SPOKEN_ANSWERS(
      null,
      "spoken-answers",
      "what a voice says: questions and what is asked for, or results too",
      "off",
      "questions",
      "all"),
  SYNTHESISER(
      null,
      "synthesiser",
      "the command that speaks: the text is its input, or its argument {text}; it plays it, or"
          + " writes WAV to its output",
      "espeak-ng --stdin --stdout"),
  WHOM_TO_CALL(null, "whom-to-call", "whom parents are told to call, on the page for them", ""),
  LOCAL_PROTOCOL(
      "protocol",
      "local",
      "a file of the ward's own steps, words, key steps and remarks, beside this one",
      ""),
  WHO_NAME("who", "name", "who examines, reviews and signs here, where --as does not say it", ""),
  WHO_ROLE("who", "role", "in which role, where --role does not say it", "");

  private final String section;
  private final String key;
  private final String about;
  private final List<String> choices;

  Setting(String section, String key, String about, String... choices) {
    this.section = section;
    this.key = key;
    this.about = about;
    this.choices = List.of(choices);
  }

  /** The section of the file it stands in; null where it stands at the top. */
  public String section() {
    return section;
  }

  /** Its name within the section. */
  public String key() {
    return key;
  }

  /** Its name with the section, such as {@code rules.hip-ultrasound}. */
  public String path() {
    return section == null ? key : section + "." + key;
  }

  /** What it decides, for people. */
  public String about() {
    return about;
  }

  /** What it can be; the first is what it is when not set. */
  public List<String> choices() {
    return choices;
  }

  /** What a choice of a file is called now. */
  String read(String choice) {
    return choice;
  }

  /** Whether it can be this; what has one choice alone can be any text, blank where that one is. */
  boolean takes(String choice) {
    String usual = choices.get(0);
    return choices.size() > 1 ? choices.contains(choice) : usual.isEmpty() || !choice.isBlank();
  }

  /** The setting with this {@link #path}. */
  static Optional<Setting> at(String path) {
    return List.of(values()).stream().filter(setting -> setting.path().equals(path)).findFirst();
  }
}
