package tiptoe.screen.review;

import com.googlecode.lanterna.input.KeyStroke;
import com.googlecode.lanterna.input.KeyType;
import java.io.IOException;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.function.BiFunction;
import java.util.function.Consumer;
import java.util.function.Function;
import java.util.function.Supplier;
import tiptoe.exam.Asked;
import tiptoe.exam.Slot;
import tiptoe.language.Question;
import tiptoe.protocol.Region;
import tiptoe.protocol.Step;
import tiptoe.protocol.Value;

/** A review by keys: what is shown, what is being typed or chosen, and what a key does. */
public final class Reviewing {
  private static final double AROUND = 0.5;
  private static final double SLOW = 0.7;
  private static final int PAGE = 10;
  private static final Function<String, List<String>> NO_COMPLETION = text -> List.of();

  private final Desk desk;
  private final Playback playback;
  private final Shown shown = new Shown();
  private final ConcurrentLinkedQueue<String> told = new ConcurrentLinkedQueue<>();
  private TypingLine typing;
  private Choice choice;
  private List<String> page = List.of();
  private int pageFrom;
  private Runnable afterPage;
  private String notice = "";
  private boolean over;

  public Reviewing(Desk desk, Playback playback) {
    this.desk = desk;
    this.playback = playback;
    shown.update(items());
    if (desk.whyReadOnly() != null) {
      notice = "READ ONLY: " + desk.whyReadOnly();
    } else if (desk.reviewer() == null) {
      askWho();
    }
  }

  private List<Item> items() {
    return Items.of(desk.record(), desk.assessment());
  }

  Desk desk() {
    return desk;
  }

  Shown shown() {
    return shown;
  }

  Optional<TypingLine> typing() {
    return Optional.ofNullable(typing);
  }

  Optional<Choice> choice() {
    return Optional.ofNullable(choice);
  }

  List<String> page() {
    return page;
  }

  /** Lines of the page that were scrolled away. */
  int pageFrom() {
    return pageFrom;
  }

  String notice() {
    return notice;
  }

  boolean over() {
    return over;
  }

  /** Takes in what came from elsewhere; whether anything did. */
  boolean refresh() {
    String text = told.poll();
    if (text != null) {
      notice = text;
    }
    boolean changed = desk.refresh();
    if (changed) {
      shown.update(items());
    }
    return changed || text != null;
  }

  void key(KeyStroke key) {
    boolean control = key.isCtrlDown() && key.getKeyType() == KeyType.Character;
    if (key.getKeyType() == KeyType.EOF || control && key.getCharacter() == 'c') {
      over = true;
    } else if (typing != null) {
      typing.key(key);
    } else if (choice != null) {
      choice.key(key);
    } else if (!page.isEmpty()) {
      page(key);
    } else {
      list(key);
    }
  }

  private void page(KeyStroke key) {
    switch (key.getKeyType()) {
      case ArrowUp -> scroll(-1);
      case ArrowDown -> scroll(1);
      case PageUp -> scroll(-PAGE);
      case PageDown -> scroll(PAGE);
      default -> closePage(key);
    }
  }

  private void scroll(int lines) {
    pageFrom = Math.max(0, Math.min(page.size() - 1, pageFrom + lines));
  }

  private void closePage(KeyStroke key) {
    Runnable then = afterPage;
    page = List.of();
    pageFrom = 0;
    afterPage = null;
    if (then != null && key.getKeyType() == KeyType.Enter) {
      then.run();
    }
  }

  private void list(KeyStroke key) {
    switch (key.getKeyType()) {
      case ArrowUp -> shown.move(-1);
      case ArrowDown -> shown.move(1);
      case PageUp -> shown.move(-PAGE);
      case PageDown -> shown.move(PAGE);
      case Home -> shown.move(-shown.items().size());
      case End -> shown.move(shown.items().size());
      case Enter -> correct();
      case Escape -> shown.search("");
      case Character -> Act.of(key.getCharacter()).ifPresent(this::act);
      default -> {}
    }
  }

  private void act(Act act) {
    notice = "";
    switch (act) {
      case TYPE ->
          type("a finding:", "", (line, asking) -> desk.type(line, region(), asking), null);
      case CORRECT -> correct();
      case UNDO -> edit(desk::undo);
      case REDO -> edit(desk::redo);
      case REMARK -> ask("remark:", "", line -> tell(desk.remark(line)));
      case FILTER -> shown.nextFilter();
      case SEARCH -> ask("search for:", shown.search(), shown::search);
      case REGION -> regions();
      case HELP -> help();
      case QUIT -> over = true;
      case SIGN -> sign();
      case ADDENDUM -> ask("why an addendum?", "", line -> tell(desk.startAddendum(line)));
      case PLAY -> play(1);
      case SLOWER -> play(SLOW);
      case EXPORT -> export();
      default -> shown.chosen().ifPresent(item -> act(act, item));
    }
  }

  private void act(Act act, Item item) {
    boolean said = item.is(Item.Kind.STATEMENT);
    boolean heard = item.is(Item.Kind.UTTERANCE);
    boolean asked = item.is(Item.Kind.QUESTION);
    int number = item.number();
    if (act == Act.ACCEPT && heard) {
      edit(() -> desk.accept(number));
    } else if (act == Act.ACCEPT && said) {
      edit(() -> desk.restate(number));
    } else if (act == Act.DISMISS && heard) {
      edit(() -> desk.dismiss(number));
    } else if (act == Act.DISMISS && asked) {
      ask("why without an answer?", "", line -> tell(desk.drop(number, line)));
    } else if (act == Act.SIDE && said) {
      edit(() -> desk.otherSide(number));
    } else if (act == Act.REJECT && said) {
      ask("why is it taken out?", "mis-heard", line -> tell(desk.reject(number, line)));
    } else if (act == Act.LEAVE_OUT && item.slot() != null) {
      ask("why not examined?", "", line -> tell(desk.notExamined(item.slot(), line)));
    } else if (act == Act.VALUE && item.slot() != null) {
      values(item);
    } else if ((act == Act.FIRST || act == Act.SECOND) && contradiction(item)) {
      edit(() -> desk.settle(number, act == Act.SECOND));
    } else {
      notice = "that cannot be done with this item";
    }
  }

  private Optional<Question> question(Item item) {
    return desk.record().openQuestions().stream()
        .filter(asked -> item.is(Item.Kind.QUESTION) && asked.number() == item.number())
        .map(Asked::question)
        .findFirst();
  }

  private boolean contradiction(Item item) {
    return question(item).filter(one -> one.kind() == Question.Kind.CONTRADICTION).isPresent();
  }

  private void correct() {
    Item item = shown.chosen().orElse(null);
    if (item == null || item.is(Item.Kind.FLAG) || item.is(Item.Kind.GAP)) {
      notice = "that cannot be corrected; t types a finding";
    } else if (contradiction(item)) {
      notice = "press 1 if the first is right, 2 if the second is";
    } else if (item.is(Item.Kind.REMARK)) {
      ask("remark:", item.text(), line -> tell(desk.reword(item.number(), line)));
    } else if (item.is(Item.Kind.UTTERANCE)) {
      type(
          "what was said:",
          item.trace().words(),
          (line, asking) -> desk.typeFor(item.number(), line, item.region(), asking),
          null);
    } else if (item.is(Item.Kind.STATEMENT)) {
      type(
          "in its place:",
          item.trace().words(),
          (line, asking) -> desk.typeInstead(item.number(), line, item.region(), asking),
          null);
    } else {
      Question question = question(item).orElse(null);
      String name = item.is(Item.Kind.STEP) ? item.text().replaceFirst(" is missing.*", " ") : "";
      type(
          question == null ? "a finding:" : question.text(),
          name,
          (line, asking) -> desk.type(line, item.region(), asking),
          question);
    }
  }

  private String region() {
    return shown.chosen().map(Item::region).orElse(null);
  }

  private void edit(Supplier<Reply> what) {
    if (mayEdit()) {
      tell(what.get());
    }
  }

  private boolean mayEdit() {
    if (desk.whyReadOnly() != null) {
      notice = "read only: " + desk.whyReadOnly();
      return false;
    }
    if (desk.reviewer() == null) {
      askWho();
      return false;
    }
    return true;
  }

  private void tell(Reply reply) {
    notice = reply.text();
    shown.update(items());
  }

  /** Asks for a line that is no finding; an empty one does nothing. */
  private void ask(String prompt, String text, Consumer<String> then) {
    boolean search = prompt.startsWith("search");
    if (search || mayEdit()) {
      open(
          prompt,
          text,
          NO_COMPLETION,
          line -> {
            if (search || !line.isEmpty()) {
              then.accept(line);
            } else {
              notice = "nothing done: expected some words";
            }
          });
    }
  }

  private void open(
      String prompt,
      String text,
      Function<String, List<String>> completion,
      Consumer<String> then) {
    typing =
        new TypingLine(
            prompt,
            text,
            completion,
            line -> {
              typing = null;
              then.accept(line);
            },
            () -> typing = null);
  }

  private void type(
      String prompt, String text, BiFunction<String, Question, Reply> then, Question asking) {
    if (mayEdit()) {
      type(prompt, text, then, asking, new ArrayDeque<>());
    }
  }

  /** Types a finding, and then the answer to each question that it raises. */
  private void type(
      String prompt,
      String text,
      BiFunction<String, Question, Reply> then,
      Question asking,
      Deque<Question> waiting) {
    open(
        prompt,
        text,
        desk.words()::completions,
        line -> {
          Reply reply = then.apply(line, asking);
          tell(reply);
          if (reply.refused() && reply.questions().isEmpty()) {
            type(prompt, line, then, asking, waiting);
            return;
          }
          waiting.addAll(reply.questions());
          Question next = waiting.poll();
          if (next != null) {
            type(next.text(), "", then, next, waiting);
          }
        });
  }

  private void askWho() {
    open(
        "who reviews? your name:",
        "",
        NO_COMPLETION,
        name ->
            open(
                "your role:",
                "",
                NO_COMPLETION,
                role ->
                    Reviewer.parse(name.replace(',', ' '))
                        .ifPresent(who -> desk.reviewer(new Reviewer(who.name(), role)))));
  }

  private void choose(String title, List<String> options, java.util.function.IntConsumer then) {
    choice =
        new Choice(
            title,
            options,
            at -> {
              choice = null;
              then.accept(at);
            },
            () -> choice = null);
  }

  private void values(Item item) {
    Slot slot = item.slot();
    Step step = desk.record().protocol().step(slot.step());
    if (step.isMeasured()) {
      correct();
    } else if (mayEdit()) {
      List<Value> values = step.values();
      choose(
          step.label(),
          values.stream().map(Value::label).toList(),
          at ->
              tell(
                  item.is(Item.Kind.STATEMENT)
                      ? desk.value(item.number(), values.get(at).id())
                      : desk.fill(slot, values.get(at).id())));
    }
  }

  private void regions() {
    List<Region> regions = desk.record().protocol().regions();
    choose(
        "go to",
        regions.stream().map(Region::label).toList(),
        at -> {
          if (!shown.jump(regions.get(at).id())) {
            notice = "nothing of " + regions.get(at).label() + " is shown";
          }
        });
  }

  private void help() {
    List<String> lines = new ArrayList<>(List.of("KEYS"));
    for (Act act : Act.values()) {
      lines.add("  " + act.key() + "  " + act.words());
    }
    lines.add("  arrows, Page, Home, End move; Enter is e; Esc ends a search or a line");
    page = lines;
  }

  private void sign() {
    if (!mayEdit()) {
      return;
    }
    try {
      List<String> lines =
          new ArrayList<>(List.of("BEFORE SIGNING  (Enter goes on, arrows scroll, Esc leaves)"));
      lines.addAll(desk.beforeSigning());
      page = lines;
      afterPage = this::askSignature;
    } catch (IOException e) {
      notice = "cannot be signed now: " + e.getMessage();
    }
  }

  private void askSignature() {
    Reviewer who = desk.reviewer();
    ask(
        "sign as, name:",
        who.name(),
        name ->
            ask(
                "role:",
                who.role(),
                role ->
                    ask(
                        "type yes to sign as " + name + ", " + role + ":",
                        "",
                        yes ->
                            tell(
                                yes.equalsIgnoreCase("yes")
                                    ? desk.sign(name, role)
                                    : Reply.refused("not signed")))));
  }

  private void play(double speed) {
    Trace trace = shown.chosen().map(Item::trace).orElse(Trace.NONE);
    if (!trace.hasSound()) {
      notice = "there is no sound of this item";
      return;
    }
    notice = "playing " + Trace.clock(trace.from()) + " to " + Trace.clock(trace.to());
    playback.stop();
    playback.play(Math.max(0, trace.from() - AROUND), trace.to() + AROUND, speed, told::add);
  }

  private void export() {
    Trace trace = shown.chosen().map(Item::trace).orElse(Trace.NONE);
    if (!trace.hasSound()) {
      notice = "there is no sound of this item";
      return;
    }
    try {
      double from = Math.max(0, trace.from() - AROUND);
      notice =
          "written, readable, outside the record: " + playback.export(from, trace.to() + AROUND);
    } catch (IOException e) {
      notice = e.getMessage();
    }
  }
}
