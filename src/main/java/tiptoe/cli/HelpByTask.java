package tiptoe.cli;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import picocli.CommandLine;
import picocli.CommandLine.Help;
import picocli.CommandLine.Model.UsageMessageSpec;

/** Lists the commands by what somebody wants to do, those of every day first. */
final class HelpByTask {
  private static final Map<String, List<String>> TASKS = new LinkedHashMap<>();

  static {
    TASKS.put("At the cot", List.of("ready", "exam", "soundcheck", "say", "teach", "demo"));
    TASKS.put(
        "Afterwards", List.of("records", "record", "due", "review", "sign", "report", "send"));
    TASKS.put("Keep and set up", List.of("settings", "key", "backup", "restore"));
    TASKS.put("Try and measure", List.of("interpret", "replay", "assess", "measure", "statistics"));
  }

  private HelpByTask() {}

  /** Puts the groups in the place of one list of all. */
  static CommandLine on(CommandLine line) {
    line.getHelpSectionMap().put(UsageMessageSpec.SECTION_KEY_COMMAND_LIST_HEADING, help -> "");
    line.getHelpSectionMap().put(UsageMessageSpec.SECTION_KEY_COMMAND_LIST, HelpByTask::list);
    return line;
  }

  /** All commands in the order of the groups. */
  static List<String> names() {
    return TASKS.values().stream().flatMap(List::stream).toList();
  }

  private static String list(Help help) {
    StringBuilder text = new StringBuilder();
    TASKS.forEach(
        (task, names) -> {
          text.append("%n%s:%n".formatted(task));
          names.stream()
              .map(help.subcommands()::get)
              .forEach(
                  command ->
                      text.append(
                          "  %-11s %s%n"
                              .formatted(
                                  command.commandSpec().name(),
                                  command.commandSpec().usageMessage().description()[0])));
        });
    return text.toString();
  }
}
