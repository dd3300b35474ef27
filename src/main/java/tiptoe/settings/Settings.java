package tiptoe.settings;

import java.util.Collections;
import java.util.EnumMap;
import java.util.Map;

/**
 * The choices in force.
 *
 * @param chosen one of its choices for every setting
 */
public record Settings(Map<Setting, String> chosen) {
  /** What holds when nothing is configured. */
  public static final Settings DEFAULT = new Settings(Map.of());

  public Settings {
    Map<Setting, String> all = new EnumMap<>(Setting.class);
    for (Setting setting : Setting.values()) {
      String choice = setting.read(chosen.getOrDefault(setting, setting.choices().get(0)));
      if (!setting.takes(choice)) {
        throw new IllegalArgumentException(
            "expected " + either(setting) + " for " + setting.path() + ", found " + choice);
      }
      all.put(setting, choice);
    }
    chosen = Collections.unmodifiableMap(all);
  }

  public String get(Setting setting) {
    return chosen.get(setting);
  }

  public boolean is(Setting setting, String choice) {
    return get(setting).equals(setting.read(choice));
  }

  /** The same with one setting changed. */
  public Settings with(Setting setting, String choice) {
    Map<Setting, String> changed = new EnumMap<>(chosen);
    changed.put(setting, choice);
    return new Settings(changed);
  }

  static String either(Setting setting) {
    return String.join(" or ", setting.choices());
  }
}
