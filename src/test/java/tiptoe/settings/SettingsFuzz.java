package tiptoe.settings;

import com.code_intelligence.jazzer.junit.FuzzTest;
import java.nio.charset.StandardCharsets;

/** Whatever a configuration file holds, it is understood, or what is wrong with it is said. */
class SettingsFuzz {
  @FuzzTest
  void anyTextIsUnderstoodOrRefused(byte[] bytes) {
    SettingsFile.Outcome outcome =
        SettingsFile.parse("tiptoe.yaml", new String(bytes, StandardCharsets.UTF_8));
    for (Setting setting : Setting.values()) {
      if (!setting.choices().contains(outcome.settings().get(setting))) {
        throw new AssertionError("no choice of " + setting.path());
      }
    }
    outcome.problems().forEach(Object::toString);
  }
}
