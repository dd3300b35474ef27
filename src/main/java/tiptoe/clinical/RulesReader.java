package tiptoe.clinical;

import static tiptoe.clinical.TermReader.expect;

import com.fasterxml.jackson.core.type.TypeReference;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.dataformat.yaml.YAMLFactory;
import java.io.IOException;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Stream;
import tiptoe.files.Shipped;
import tiptoe.protocol.LocalProtocol;
import tiptoe.protocol.Protocol;

/** Reads the rules file; a mistake in it names the rule and what was expected. */
final class RulesReader {
  private static final String SHIPPED = "rules.yaml";
  private static final ObjectMapper YAML = new ObjectMapper(new YAMLFactory());
  private static final Set<String> NEVER_ASSUMED = Set.of("sex", "age", "gestation");

  private static final String FLAG_KEYS =
      "id when level consider advice act-by asks steps instead-of done-by set-going-by source";
  private static final String PLAN_KEYS =
      "id when due what of-a-girl reason acts-on follows done-by set-going-by source";

  private final Protocol protocol;
  private final Set<String> flagIds = new HashSet<>();
  private final Set<String> earlier = new HashSet<>();

  private RulesReader(Protocol protocol) {
    this.protocol = protocol;
  }

  static Rules readShipped() {
    return read(Shipped.yaml(RulesReader.class, SHIPPED, JsonNode.class), Protocol.standard());
  }

  static Rules read(String yaml, Protocol protocol) throws IOException {
    return read(YAML.readTree(yaml), protocol);
  }

  private static Rules read(JsonNode file, Protocol protocol) {
    return new RulesReader(protocol).rules(file);
  }

  /** One rule for each abnormal value that a ward adds. */
  static List<Rules.FlagRule> ofWard(Protocol protocol, LocalProtocol local) {
    TermReader terms = new TermReader(protocol);
    return local.actions().stream()
        .map(
            action -> {
              Level level = Level.of(action.level());
              return new Rules.FlagRule(
                  "local-" + action.step() + "-" + action.value(),
                  terms.read(action.step() + "=" + action.value()),
                  level,
                  null,
                  action.action(),
                  usual(level),
                  null,
                  List.of(),
                  List.of(),
                  HandledBy.NOTHING,
                  "local protocol " + local.title());
            })
        .toList();
  }

  private Rules rules(JsonNode file) {
    onlyKeys("the file", file, "flags nothing-to-raise missing plan");
    for (JsonNode flag : file.path("flags")) {
      String id = text(flag, "id");
      expect(flagIds.add(id), "expected unique rule ids, found " + id + " twice");
    }
    return new Rules(
        each(file, "flags", this::flag),
        each(file, "nothing-to-raise", this::condition),
        each(file, "missing", this::missing),
        each(file, "plan", this::plan));
  }

  private <T> List<T> each(JsonNode file, String list, Function<JsonNode, T> reader) {
    List<T> made = new ArrayList<>();
    for (JsonNode entry : file.path(list)) {
      try {
        made.add(reader.apply(entry));
      } catch (IllegalArgumentException e) {
        String name = entry.path("id").asText(entry.path("step").asText(list));
        throw new IllegalArgumentException("in rule " + name + ": " + e.getMessage(), e);
      }
    }
    return made;
  }

  private Rules.FlagRule flag(JsonNode entry) {
    onlyKeys("the rule", entry, FLAG_KEYS);
    ConditionReader reader = new ConditionReader(protocol, earlier);
    Condition when = reader.read(entry.path("when"));
    Level level = Level.of(text(entry, "level"));
    String asks = entry.path("asks").asText(null);
    boolean mustAsk = reader.facts().stream().anyMatch(NEVER_ASSUMED::contains);
    expect(
        !mustAsk || asks != null,
        "expected asks beside a condition on " + String.join(", ", reader.facts()));
    List<String> insteadOf = list(entry, "instead-of");
    insteadOf.forEach(id -> expect(flagIds.contains(id), "expected the id of a flag, found " + id));
    list(entry, "steps").forEach(protocol::step);
    earlier.add(text(entry, "id"));
    return new Rules.FlagRule(
        text(entry, "id"),
        when,
        level,
        entry.path("consider").asText(null),
        text(entry, "advice"),
        entry.path("act-by").asText(usual(level)),
        asks,
        list(entry, "steps"),
        insteadOf,
        handledBy(entry),
        text(entry, "source"));
  }

  private static String usual(Level level) {
    return switch (level) {
      case EMERGENCY -> "now";
      case URGENT -> "today";
      case ARRANGE -> "before discharge";
      case NOTE -> "at review";
    };
  }

  private Rules.MissingRule missing(JsonNode entry) {
    onlyKeys("the rule", entry, "step detail when reason");
    String step = text(entry, "step");
    String detail = entry.path("detail").asText(null);
    expect(
        protocol.step(step).detail(detail).isPresent() || detail == null,
        "expected a detail of step " + step + ", found " + detail);
    return new Rules.MissingRule(
        new MissingItem(step, detail, text(entry, "reason")), condition(entry.path("when")));
  }

  private Rules.PlanRule plan(JsonNode entry) {
    onlyKeys("the rule", entry, PLAN_KEYS);
    Condition when =
        entry.has("when") ? condition(entry.path("when")) : baby -> ConditionResult.yes(List.of());
    List<String> actsOn = list(entry, "acts-on");
    List<String> follows = list(entry, "follows");
    Stream.concat(actsOn.stream(), follows.stream())
        .forEach(id -> ConditionReader.known(id, flagIds));
    return new Rules.PlanRule(
        text(entry, "id"),
        when,
        text(entry, "what"),
        text(entry, entry.has("of-a-girl") ? "of-a-girl" : "what"),
        Due.parse(text(entry, "due")),
        text(entry, "reason"),
        actsOn,
        follows,
        handledBy(entry),
        text(entry, "source"));
  }

  private HandledBy handledBy(JsonNode entry) {
    HandledBy by = new HandledBy(list(entry, "done-by"), list(entry, "set-going-by"));
    for (String term : Stream.concat(by.done().stream(), by.setGoing().stream()).toList()) {
      String[] parts = (term + "=").split("=", -1);
      protocol.require(parts[0], parts[1]);
    }
    return by;
  }

  private Condition condition(JsonNode node) {
    return new ConditionReader(protocol, flagIds).read(node);
  }

  private static String text(JsonNode entry, String key) {
    expect(entry.path(key).isTextual(), "expected text for " + key);
    return entry.path(key).asText();
  }

  private static List<String> list(JsonNode entry, String key) {
    return entry.has(key)
        ? YAML.convertValue(entry.get(key), new TypeReference<List<String>>() {})
        : List.of();
  }

  /**
   * Sees that an entry holds nothing unknown.
   *
   * @param keys those that there are, parted by blanks
   */
  static void onlyKeys(String where, JsonNode entry, String keys) {
    Set<String> known = Set.of(keys.split(" "));
    entry
        .fieldNames()
        .forEachRemaining(
            key -> expect(known.contains(key), "expected no " + key + " in " + where));
  }
}
