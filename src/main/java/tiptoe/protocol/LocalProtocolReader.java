package tiptoe.protocol;

import java.io.StringReader;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.regex.Pattern;
import org.yaml.snakeyaml.LoaderOptions;
import org.yaml.snakeyaml.Yaml;
import org.yaml.snakeyaml.error.MarkedYAMLException;
import org.yaml.snakeyaml.error.YAMLException;
import org.yaml.snakeyaml.nodes.MappingNode;
import org.yaml.snakeyaml.nodes.Node;
import org.yaml.snakeyaml.nodes.NodeTuple;
import org.yaml.snakeyaml.nodes.ScalarNode;
import org.yaml.snakeyaml.nodes.SequenceNode;
import tiptoe.protocol.LocalProtocol.Action;
import tiptoe.protocol.LocalProtocol.Wording;

/**
 * Reads the protocol of a ward and keeps the line of everything it refuses; what is refused is left
 * out of what it reads.
 *
 * <pre>
 * file    = "name:" text "version:" text
 *           [ "steps:" { step } ] [ "wordings:" { wording } ]
 *           [ "key-steps:" { id } ] [ "remarks:" { id ":" text } ] .
 * step    = "step:" id "region:" id [ "label:" text ] [ "sided:" yes ] [ "key:" yes ]
 *           [ "optional:" yes ] [ "for:" sex ] [ "remark:" text ] [ "called:" { words } ]
 *           "normal:" { id } [ "benign:" { id } ] [ "neutral:" { id } ]
 *           [ "abnormal:" { id ":" "level:" level "action:" text } ]
 *           [ "words:" { id ":" { words } } ] .
 * wording = "step:" id "value:" id "say:" { words } .
 * </pre>
 */
final class LocalProtocolReader {
  /** Longer than any ward needs, short enough to stand in each record. */
  private static final int MOST_LETTERS = 64 << 10;

  private static final int MOST_PROBLEMS = 20;
  private static final int MOST_STEPS = 50;
  private static final int MOST_WORDINGS = 500;
  private static final int NAME = 60;
  private static final int SENTENCE = 300;
  private static final Pattern ID = Pattern.compile("[a-z][a-z0-9]*(-[a-z0-9]+)*");

  /** What can be spoken: one to eight words of letters. */
  private static final Pattern WORDS = Pattern.compile("[a-z']+( [a-z']+){0,7}");

  private static final Pattern SIDES =
      Pattern.compile("\\b(left|right|both|bilateral|bilaterally)\\b");

  private static final Set<String> LEVELS = Set.of("emergency", "urgent", "arrange", "note");

  private final String file;
  private final Protocol ours;
  private final List<String> problems = new ArrayList<>();
  private final Map<String, Step> steps = new LinkedHashMap<>();
  private final Set<String> keySteps = new LinkedHashSet<>();
  private final Map<String, String> remarks = new TreeMap<>();
  private final List<Wording> wordings = new ArrayList<>();
  private final List<Action> actions = new ArrayList<>();

  LocalProtocolReader(String file, Protocol ours) {
    this.file = file;
    this.ours = ours;
  }

  List<String> problems() {
    return problems;
  }

  LocalProtocol read(String text) {
    Map<String, Node> fields =
        fields(compose(text), "name version", "steps wordings key-steps remarks");
    list(fields.get("steps"), MOST_STEPS).forEach(this::step);
    list(fields.get("wordings"), MOST_WORDINGS).forEach(this::wording);
    for (Node one : list(fields.get("key-steps"), MOST_WORDINGS)) {
      String id = text(one, NAME);
      if (isOurs(one, id)) {
        keySteps.add(id);
      }
    }
    entries(fields.get("remarks"))
        .forEach(
            (id, remark) -> {
              if (isOurs(remark, id)) {
                remarks.put(id, text(remark, SENTENCE));
              }
            });
    return new LocalProtocol(
        text(fields.get("name"), NAME),
        text(fields.get("version"), NAME),
        text,
        List.copyOf(steps.values()),
        keySteps,
        remarks,
        wordings,
        actions);
  }

  private Node compose(String text) {
    if (text.length() > MOST_LETTERS) {
      refuse(null, "at most " + MOST_LETTERS + " letters", "" + text.length());
      return null;
    }
    try {
      LoaderOptions options = new LoaderOptions();
      options.setNestingDepthLimit(10);
      options.setMaxAliasesForCollections(0);
      return new Yaml(options).compose(new StringReader(text));
    } catch (MarkedYAMLException e) {
      int line = e.getProblemMark() == null ? 0 : e.getProblemMark().getLine() + 1;
      refuse(line, "YAML", String.valueOf(e.getProblem()));
    } catch (YAMLException e) {
      refuse(null, "YAML", e.getMessage().lines().findFirst().orElse("something else"));
    }
    return null;
  }

  private void step(Node node) {
    Map<String, Node> fields =
        fields(
            node,
            "step region normal",
            "label sided key optional for remark called benign neutral abnormal words");
    String id = text(fields.get("step"), NAME);
    String region = text(fields.get("region"), NAME);
    if (id.isEmpty() || region.isEmpty()) {
      return;
    }
    if (ours.find(id).isPresent() || ours.fact(id).isPresent()) {
      refuse(fields.get("step"), "an id of its own", id + ", which is one of ours");
    } else if (ours.region(region).isEmpty()) {
      String known = String.join(", ", ours.regions().stream().map(Region::id).toList());
      refuse(fields.get("region"), "a region (" + known + ")", region);
    } else if (!ID.matcher(id).matches() || steps.containsKey(id)) {
      refuse(fields.get("step"), "an id of its own such as ear-lobe", id);
    } else {
      String label = fields.containsKey("label") ? text(fields.get("label"), NAME) : Labels.of(id);
      String sex = fields.containsKey("for") ? text(fields.get("for"), NAME) : null;
      if (sex != null && !Set.of("boy", "girl").contains(sex)) {
        refuse(fields.get("for"), "boy or girl", sex);
      }
      Step made =
          new Step(
              id,
              region,
              label,
              null,
              isYes(fields.get("sided")),
              isYes(fields.get("key")),
              isYes(fields.get("optional")),
              sex,
              false,
              null,
              values(id, fields),
              List.of(),
              false,
              List.of(),
              fields.containsKey("remark") ? text(fields.get("remark"), SENTENCE) : null);
      steps.put(id, made);
      words(made, fields);
    }
  }

  private List<Value> values(String step, Map<String, Node> fields) {
    Map<String, Value> made = new LinkedHashMap<>();
    for (Norm norm : List.of(Norm.NORMAL, Norm.BENIGN, Norm.NEUTRAL)) {
      list(fields.get(Labels.id(norm.name())), MOST_STEPS)
          .forEach(one -> value(made, one, text(one, NAME), norm));
    }
    if (made.values().stream().noneMatch(value -> value.norm() == Norm.NORMAL)) {
      refuse(fields.get("step"), "a normal value", "none in " + step);
    }
    entries(fields.get("abnormal"))
        .forEach(
            (id, node) -> {
              Map<String, Node> action = fields(node, "level action", "");
              String level = text(action.get("level"), NAME);
              if (action.containsKey("level") && !LEVELS.contains(level)) {
                refuse(action.get("level"), "a level (emergency, urgent, arrange or note)", level);
              }
              value(made, node, id, Norm.ABNORMAL);
              if (LEVELS.contains(level)) {
                actions.add(new Action(step, id, level, text(action.get("action"), SENTENCE)));
              }
            });
    return List.copyOf(made.values());
  }

  private void value(Map<String, Value> made, Node node, String id, Norm norm) {
    if (!ID.matcher(id).matches() || id.equals(Value.NOT_EXAMINED) || made.containsKey(id)) {
      refuse(node, "an id of its own such as cleft", id);
    } else {
      made.put(id, new Value(id, Labels.of(id), norm, false));
    }
  }

  /** How a step and its values are said: as its labels are, where nothing else is. */
  private void words(Step step, Map<String, Node> fields) {
    say(fields.get("called"), step, null, step.label());
    Map<String, Node> words = entries(fields.get("words"));
    words.forEach(
        (id, node) -> {
          if (step.value(id).isEmpty()) {
            refuse(node, "a value of " + step.id(), id);
          }
        });
    for (Value value : step.values()) {
      say(words.get(value.id()), step, value.id(), value.label());
    }
  }

  private void wording(Node node) {
    Map<String, Node> fields = fields(node, "step value say", "");
    String id = text(fields.get("step"), NAME);
    String value = text(fields.get("value"), NAME);
    if (id.isEmpty() || value.isEmpty() || !isOurs(fields.get("step"), id)) {
      return;
    }
    Step step = ours.step(id);
    if (step.value(value).isEmpty()) {
      String known = String.join(", ", step.values().stream().map(Value::id).toList());
      refuse(fields.get("value"), known.isEmpty() ? "a step with values" : known, value);
      return;
    }
    for (Node say : list(fields.get("say"), MOST_WORDINGS)) {
      if (text(say, NAME).indexOf(' ') < 0) {
        // A word alone is heard in talk too easily to be a finding.
        refuse(say, "two words or more", text(say, NAME));
      }
    }
    say(fields.get("say"), step, value, null);
  }

  private void say(Node node, Step step, String value, String otherwise) {
    List<Node> said = list(node, MOST_WORDINGS);
    if (said.isEmpty() && otherwise != null) {
      add(node, step, value, otherwise);
    }
    said.forEach(one -> add(one, step, value, text(one, NAME)));
  }

  private void add(Node node, Step step, String value, String words) {
    boolean other =
        wordings.stream()
            .filter(one -> one.words().equals(words))
            .anyMatch(
                one ->
                    (one.value() == null) == (value == null)
                        && (value == null
                            || one.step().equals(step.id())
                            || ours.find(one.step()).isPresent()
                                && ours.find(step.id()).isPresent()));
    if (!WORDS.matcher(words).matches()) {
      refuse(node, "up to eight spoken words of small letters for " + step.id(), words);
    } else if (SIDES.matcher(words).find()) {
      refuse(node, "words without a side, which is understood around them", words);
    } else if (other || wordings.size() == MOST_WORDINGS) {
      refuse(node, "words that nothing else is said in, " + MOST_WORDINGS + " at most", words);
    } else {
      wordings.add(new Wording(step.id(), value, words));
    }
  }

  private boolean isOurs(Node node, String id) {
    if (ours.find(id).isEmpty() && !id.isEmpty()) {
      refuse(node, "the id of a step of ours", id);
    }
    return ours.find(id).isPresent();
  }

  private boolean isYes(Node node) {
    String said = node == null ? "no" : text(node, NAME);
    if (!Set.of("yes", "no", "true", "false").contains(said)) {
      refuse(node, "yes or no", said);
    }
    return said.equals("yes") || said.equals("true");
  }

  /** The entries of a mapping that has names, parted by blanks: some that it needs, some it can. */
  private Map<String, Node> fields(Node node, String needs, String can) {
    List<String> needed = List.of(needs.split(" "));
    Set<String> known = new TreeSet<>(List.of((needs + " " + can).strip().split(" ")));
    Map<String, Node> found = entries(node);
    found.forEach(
        (key, value) -> {
          if (!known.contains(key)) {
            refuse(value, "one of " + String.join(", ", known), key);
          }
        });
    for (String key : needed) {
      if (!found.containsKey(key) && (node != null || problems.isEmpty())) {
        refuse(node, key, "none");
      }
    }
    return found;
  }

  private Map<String, Node> entries(Node node) {
    Map<String, Node> found = new LinkedHashMap<>();
    if (node instanceof MappingNode mapping) {
      for (NodeTuple entry : mapping.getValue()) {
        String key = text(entry.getKeyNode(), NAME);
        if (found.putIfAbsent(key, entry.getValueNode()) != null) {
          refuse(entry.getKeyNode(), "each entry once", key + " again");
        }
      }
    } else if (node != null) {
      refuse(node, "entries such as name: Ward 7", shown(node));
    }
    return found;
  }

  private List<Node> list(Node node, int most) {
    if (node instanceof SequenceNode list) {
      if (list.getValue().size() > most) {
        refuse(node, "at most " + most + " in a list", "" + list.getValue().size());
      }
      return list.getValue().stream().limit(most).toList();
    }
    if (node != null) {
      refuse(node, "a list such as [one, two]", shown(node));
    }
    return List.of();
  }

  /** One printable line; empty, and told, where it is none. */
  private String text(Node node, int most) {
    if (node == null) {
      return "";
    }
    String text = node instanceof ScalarNode scalar ? scalar.getValue().strip() : "";
    if (!(node instanceof ScalarNode) || text.isEmpty()) {
      refuse(node, "text", shown(node));
    } else if (text.length() > most || !text.matches("[^\\p{C}\\p{Zl}\\p{Zp}]+")) {
      refuse(node, "one line of at most " + most + " letters", text.length() + " letters");
      return "";
    }
    return text;
  }

  private static String shown(Node node) {
    return node instanceof ScalarNode scalar
        ? scalar.getValue().isEmpty() ? "nothing" : scalar.getValue()
        : node instanceof SequenceNode ? "a list" : "entries";
  }

  private void refuse(Node node, String expected, String found) {
    refuse(node == null ? 0 : node.getStartMark().getLine() + 1, expected, found);
  }

  private void refuse(int line, String expected, String found) {
    if (problems.size() < MOST_PROBLEMS) {
      problems.add(
          file + (line > 0 ? " line " + line : "") + ": expected " + expected + ", found " + found);
    }
  }
}
