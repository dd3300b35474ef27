package tiptoe.language;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import tiptoe.finding.Source;
import tiptoe.protocol.LocalProtocol;
import tiptoe.protocol.LocalProtocol.Wording;
import tiptoe.protocol.Norm;
import tiptoe.protocol.Protocol;
import tiptoe.protocol.Step;
import tiptoe.protocol.Value;

/** The grammar of what a ward adds: the forms of our own files around the ward's words. */
public final class LocalGrammar {
  /** The file it is written to, beside ours. */
  public static final String FILE = "local.gram";

  private static final String HEAD =
      """
      #ABNF 1.0 UTF-8;
      language en;
      mode voice;
      tag-format <semantics/1.0-literals>;
      root $local;
      """;

  private static final String SIDED =
      """
          $<shared.gram#side> $name%1$d [$<shared.gram#is>] $value%1$d [$rest%1$d]
        | $name%1$d (on the | on) $<shared.gram#side> [side] [$<shared.gram#is>] $value%1$d
        | $name%1$d [$<shared.gram#is>] $value%1$d
        | $name%1$d [$<shared.gram#is>] $value%1$d $<shared.gram#on_side>
        | $<shared.gram#both_before> $name%1$d [$<shared.gram#is>] $value%1$d
      """;
  private static final String REST =
      "private $rest%1$d = {;} [and | but] [the] $<shared.gram#side> [one | side | $name%1$d]"
          + " [$<shared.gram#is>] $value%1$d;%n";
  private static final String UNSIDED = "    [the] $name%1$d [$<shared.gram#is>] $value%1$d%n";
  private static final String LEFT_OUT =
      "  | $name%1$d [was | were] not (examined | done | assessed) {value=not-examined%2$s}%n";

  private final LocalProtocol local;
  private final List<String> findings = new ArrayList<>();
  private final StringBuilder rules = new StringBuilder();

  private LocalGrammar(LocalProtocol local) {
    this.local = local;
  }

  /** The text of the file. */
  public static String of(LocalProtocol local) {
    return new LocalGrammar(local).text();
  }

  /** The file of the root with a reference to what a ward adds. */
  public static String root(String ours) {
    String start = "private $finding =";
    if (!ours.contains(start)) {
      throw new IllegalArgumentException("expected " + start + " in the root grammar");
    }
    return ours.replace(start, start + "\n    $<" + FILE + "#local>\n  | ");
  }

  /** The phrases that are said of our steps, in words, as they would be dictated. */
  public static List<Wording> additions(LocalProtocol local) {
    return local.wordings().stream()
        .filter(wording -> Protocol.standard().find(wording.step()).isPresent())
        .toList();
  }

  /**
   * Words of the ward that our grammars take for something else, which would be heard as either.
   *
   * @param ours understands what our grammars hold
   */
  public static List<String> conflicts(LocalProtocol local, Interpreter ours) {
    List<String> found = new ArrayList<>();
    for (Wording wording : local.wordings()) {
      boolean addition = Protocol.standard().find(wording.step()).isPresent();
      for (String said :
          addition || wording.value() == null ? List.of(wording.words()) : named(local, wording)) {
        Interpretation meaning =
            ours.interpret(List.of(said.split(" ")), Dialogue.START, Source.GRAMMAR);
        boolean same =
            meaning.statements().stream()
                .anyMatch(
                    one ->
                        one.step().equals(wording.step())
                            && String.valueOf(one.value()).equals(wording.value()));
        if (meaning.uncovered().isEmpty() && !meaning.meanings().isEmpty() && !same) {
          long line = local.text().lines().takeWhile(one -> !one.contains(wording.words())).count();
          found.add(
              "local protocol %s line %d: expected words that mean nothing else, found \"%s\""
                  .formatted(local.name(), line + 1, said));
        }
      }
    }
    return found;
  }

  private static List<String> named(LocalProtocol local, Wording value) {
    return local.wordings().stream()
        .filter(one -> one.value() == null && one.step().equals(value.step()))
        .map(name -> name.words() + " " + value.words())
        .toList();
  }

  private String text() {
    for (int i = 0; i < local.steps().size(); i++) {
      step(local.steps().get(i), i);
    }
    additions(local).forEach(this::addition);
    String all = findings.isEmpty() ? "$NULL" : String.join("\n  | ", findings);
    return HEAD + "\npublic $local =\n    " + all + ";\n\n" + rules;
  }

  private void step(Step step, int number) {
    findings.add("{step=" + step.id() + "} $step" + number);
    String forms = step.sided() ? SIDED : UNSIDED;
    String both = step.sided() ? " side=both" : "";
    rules.append(String.format("private $step%1$d =%n" + forms + LEFT_OUT + ";%n", number, both));
    rules.append(step.sided() ? String.format(REST, number) : "");
    rules.append("private $name").append(number).append(" = ").append(words(step, null));
    rules.append(";\nprivate $value").append(number).append(" =\n    ");
    List<String> values = new ArrayList<>();
    for (Value value : step.values()) {
      values.add(words(step, value) + " {value=" + value.id() + "}");
    }
    // "Not cleft" is whole where there is nothing else that it could be.
    List<Value> others =
        step.values().stream().filter(value -> value.norm() != Norm.NORMAL).toList();
    if (others.size() == 1 && others.get(0).norm() == Norm.ABNORMAL) {
      values.add("not " + words(step, others.get(0)) + " {deny=" + others.get(0).id() + "}");
    }
    rules.append(String.join("\n  | ", values)).append(";\n\n");
  }

  private String words(Step step, Value value) {
    return local.wordings().stream()
        .filter(one -> one.step().equals(step.id()))
        .filter(one -> value == null ? one.value() == null : value.id().equals(one.value()))
        .map(Wording::words)
        .collect(Collectors.joining(" | ", "(", ")"));
  }

  private void addition(Wording wording) {
    String said = "{step=" + wording.step() + "} ";
    String words = wording.words() + " {value=" + wording.value() + "}";
    findings.add(said + words);
    if (Protocol.standard().step(wording.step()).sided()) {
      findings.add(said + "$<shared.gram#side> " + words);
      findings.add(said + words + " $<shared.gram#on_side>");
    }
  }
}
