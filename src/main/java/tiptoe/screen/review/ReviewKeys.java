package tiptoe.screen.review;

import com.googlecode.lanterna.input.KeyStroke;
import com.googlecode.lanterna.input.KeyType;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Queue;
import java.util.concurrent.ConcurrentLinkedQueue;
import tiptoe.exam.Asked;
import tiptoe.finding.Question;
import tiptoe.language.Meaning;
import tiptoe.protocol.Region;
import tiptoe.protocol.Step;
import tiptoe.protocol.Value;
import tiptoe.session.Playback;
import tiptoe.wording.Words;

/** A review by keys: what a key does with the list of items and with the one that is chosen. */
public final class ReviewKeys {
  private static final double SLOW = 0.7;
  private static final int LEAF = 10;

  /** So much is played before and behind an item, in s. */
  private static final double AROUND = 0.5;

  private static final String NO_SOUND = "there is no sound of this item";

  private final ReviewDialogue dialogue;
  private final ReviewService service;
  private final ItemList shown;
  private final Overlay overlay;
  private final Playback playback;

  /** What went wrong with playing, from whatever thread. */
  private final Queue<String> troubles = new ConcurrentLinkedQueue<>();

  private boolean over;

  public ReviewKeys(ReviewService service, Playback playback) {
    this.service = service;
    dialogue = new ReviewDialogue(service);
    shown = dialogue.shown();
    overlay = dialogue.overlay();
    this.playback = playback;
  }

  ReviewDialogue dialogue() {
    return dialogue;
  }

  boolean over() {
    return over;
  }

  /** Takes in what came from elsewhere; whether anything did. */
  boolean refresh() {
    Optional<String> trouble = Optional.ofNullable(troubles.poll());
    trouble.ifPresent(dialogue::notice);
    boolean changed = service.refresh();
    if (changed) {
      dialogue.showItems();
    }
    return changed || trouble.isPresent();
  }

  void key(KeyStroke key) {
    boolean control = key.isCtrlDown() && key.getKeyType() == KeyType.Character;
    if (key.getKeyType() == KeyType.EOF || control && key.getCharacter() == 'c') {
      over = true;
    } else if (!overlay.takes(key)) {
      list(key);
    }
  }

  private void list(KeyStroke key) {
    switch (key.getKeyType()) {
      case ArrowUp -> shown.move(-1);
      case ArrowDown -> shown.move(1);
      case PageUp -> shown.move(-LEAF);
      case PageDown -> shown.move(LEAF);
      case Home -> shown.move(-shown.items().size());
      case End -> shown.move(shown.items().size());
      case Enter -> correct();
      case Escape -> shown.search("");
      case Character -> ReviewAction.of(key.getCharacter()).ifPresent(this::act);
      default -> {}
    }
  }

  private void act(ReviewAction act) {
    dialogue.notice("");
    switch (act) {
      case TYPE ->
          dialogue.type(
              "a finding:", "", (line, asking) -> service.type(line, region(), asking), null);
      case CORRECT -> correct();
      case UNDO -> dialogue.edit(service::undo);
      case REDO -> dialogue.edit(service::redo);
      case REMARK -> dialogue.ask("remark:", "", service::remark);
      case FILTER -> shown.nextFilter();
      case SEARCH -> dialogue.askSearch();
      case REGION -> chooseRegion();
      case HELP -> help();
      case QUIT -> over = true;
      case SIGN -> sign();
      case ADDENDUM -> dialogue.ask("why an addendum?", "", service::startAddendum);
      case PLAY -> dialogue.notice(play(provenance(), 1));
      case SLOWER -> dialogue.notice(play(provenance(), SLOW));
      case EXPORT -> dialogue.notice(export(provenance()));
      default -> shown.chosen().ifPresent(item -> act(act, item));
    }
  }

  private void correct() {
    shown
        .chosen()
        .ifPresentOrElse(
            this::correct, () -> dialogue.notice("that cannot be corrected; t types a finding"));
  }

  private String region() {
    return shown.chosen().map(ReviewItem::region).orElse(null);
  }

  private Provenance provenance() {
    return shown.chosen().map(ReviewItem::provenance).orElse(Provenance.NONE);
  }

  private void chooseRegion() {
    List<Region> regions = service.record().protocol().regions();
    List<String> names = regions.stream().map(service.wording().words()::region).toList();
    overlay.choose(
        "go to",
        names,
        at -> {
          if (!shown.jump(regions.get(at).id())) {
            dialogue.notice("nothing of " + names.get(at) + " is shown");
          }
        });
  }

  private void help() {
    List<String> lines = new ArrayList<>(List.of("KEYS"));
    for (ReviewAction act : ReviewAction.values()) {
      lines.add("  " + act.key() + "  " + act.words());
    }
    lines.add("  arrows, Page, Home, End move; Enter is e; Esc ends a search or a line");
    overlay.read(lines, () -> {});
  }

  /** What each key does with an item, by what kind of item it is. */
  private void act(ReviewAction act, ReviewItem item) {
    boolean said = item.is(ReviewItem.Kind.STATEMENT);
    boolean heard = item.is(ReviewItem.Kind.UTTERANCE);
    boolean asked = item.is(ReviewItem.Kind.QUESTION);
    int number = item.number();
    if (act == ReviewAction.ACCEPT && heard) {
      accept(number);
    } else if (act == ReviewAction.ACCEPT && said) {
      dialogue.edit(() -> service.restate(number));
    } else if (act == ReviewAction.DISMISS && heard) {
      dialogue.edit(() -> service.dismiss(number));
    } else if (act == ReviewAction.DISMISS && asked) {
      dialogue.ask("why without an answer?", "", line -> service.drop(number, line));
    } else if (act == ReviewAction.SIDE && said) {
      dialogue.edit(() -> service.otherSide(number));
    } else if (act == ReviewAction.REJECT && said) {
      dialogue.ask("why is it taken out?", "mis-heard", line -> service.reject(number, line));
    } else if (act == ReviewAction.LEAVE_OUT && item.slot() != null) {
      dialogue.ask("why not examined?", "", line -> service.notExamined(item.slot(), line));
    } else if (act == ReviewAction.VALUE && item.slot() != null) {
      chooseValue(item);
    } else if ((act == ReviewAction.FIRST || act == ReviewAction.SECOND) && isContradiction(item)) {
      dialogue.edit(() -> service.settle(number, act == ReviewAction.SECOND));
    } else {
      dialogue.notice("that cannot be done with this item");
    }
  }

  /** All that an utterance seems to say, or each part for itself. */
  private void accept(int utterance) {
    List<Meaning> parts = service.parts(utterance);
    if (parts.size() < 2 || service.isNoFinding(utterance)) {
      dialogue.edit(() -> service.accept(utterance));
    } else if (dialogue.mayEdit()) {
      overlay.choose(
          "accept",
          List.of("all " + parts.size(), "one by one"),
          at -> {
            if (at == 0) {
              dialogue.tell(service.accept(utterance, parts));
            } else {
              acceptOneByOne(utterance, parts, 0, new ArrayList<>());
            }
          });
    }
  }

  private void acceptOneByOne(
      int utterance, List<Meaning> parts, int next, List<Meaning> accepted) {
    if (next == parts.size()) {
      dialogue.tell(service.accept(utterance, accepted));
      return;
    }
    Meaning part = parts.get(next);
    overlay.choose(
        service.wording().words().offered(part),
        List.of("accept", "leave out"),
        at -> {
          if (at == 0) {
            accepted.add(part);
          }
          acceptOneByOne(utterance, parts, next + 1, accepted);
        });
  }

  private Optional<Question> question(ReviewItem item) {
    return service.record().openQuestions().stream()
        .filter(asked -> item.is(ReviewItem.Kind.QUESTION) && asked.number() == item.number())
        .map(Asked::question)
        .findFirst();
  }

  private boolean isContradiction(ReviewItem item) {
    return question(item).filter(one -> one.kind() == Question.Kind.CONTRADICTION).isPresent();
  }

  /** Lets be typed what is to stand in the place of an item. */
  private void correct(ReviewItem item) {
    switch (item.kind()) {
      case FLAG, GAP -> dialogue.notice("that cannot be corrected; t types a finding");
      case REMARK ->
          dialogue.ask("remark:", item.text(), line -> service.reword(item.number(), line));
      case UTTERANCE -> correctWords(item);
      case STATEMENT ->
          dialogue.type(
              "in its place:",
              item.provenance().words(),
              (line, asking) -> service.typeInstead(item.number(), line, item.region(), asking),
              null);
      default -> answer(item);
    }
  }

  private void correctWords(ReviewItem item) {
    if (service.isNoFinding(item.number())) {
      dialogue.notice(ReviewService.NO_FINDING);
      return;
    }
    dialogue.type(
        "what was said:",
        item.provenance().words(),
        (line, asking) -> service.typeFor(item.number(), line, item.region(), asking),
        null);
  }

  private void answer(ReviewItem item) {
    if (isContradiction(item)) {
      dialogue.notice("press 1 if the first is right, 2 if the second is");
      return;
    }
    Question question = question(item).orElse(null);
    String name =
        item.is(ReviewItem.Kind.STEP) ? service.wording().words().name(item.slot()) + " " : "";
    dialogue.type(
        question == null ? "a finding:" : service.wording().words().spelled(question.text()),
        name,
        (line, asking) -> service.type(line, item.region(), asking),
        question);
  }

  private void chooseValue(ReviewItem item) {
    Step step = service.record().protocol().step(item.slot().step());
    if (step.isMeasured()) {
      correct(item);
    } else if (dialogue.mayEdit()) {
      Words words = service.wording().words();
      List<Value> values = step.values();
      overlay.choose(
          words.step(step.id()),
          values.stream().map(value -> words.spelled(value.label())).toList(),
          at -> dialogue.tell(give(item, values.get(at).id())));
    }
  }

  private Reply give(ReviewItem item, String value) {
    return item.is(ReviewItem.Kind.STATEMENT)
        ? service.value(item.number(), value)
        : service.fill(item.slot(), value);
  }

  /**
   * The way to a signature: what is open is read first, then name, role and a yes are asked for.
   */
  private void sign() {
    if (!dialogue.mayEdit()) {
      return;
    }
    try {
      List<String> lines =
          new ArrayList<>(List.of("BEFORE SIGNING  (Enter goes on, arrows scroll, Esc leaves)"));
      lines.addAll(service.beforeSigning());
      overlay.read(lines, this::askName);
    } catch (IOException e) {
      dialogue.notice("cannot be signed now: " + e.getMessage());
    }
  }

  private void askName() {
    dialogue.askOn("sign as, name:", service.reviewer().name(), this::askRole);
  }

  private void askRole(String name) {
    dialogue.askOn("role:", service.reviewer().role(), role -> askDespite(name, role));
  }

  private void askDespite(String name, String role) {
    try {
      int open = service.unsettled().size();
      if (open == 0) {
        askYes(name, role, "");
      } else {
        dialogue.askOn(
            open + " not settled; why sign all the same:", "", why -> askYes(name, role, why));
      }
    } catch (IOException e) {
      dialogue.notice("cannot be signed now: " + e.getMessage());
    }
  }

  private void askYes(String name, String role, String despite) {
    dialogue.ask(
        "type yes to sign as " + name + ", " + role + ":",
        "",
        yes ->
            yes.equalsIgnoreCase("yes")
                ? service.sign(name, role, despite)
                : Reply.refused("not signed"));
  }

  /** Begins to play; what to tell the reviewer. */
  private String play(Provenance provenance, double speed) {
    if (!provenance.hasSound()) {
      return NO_SOUND;
    }
    playback.stop();
    playback.play(from(provenance), to(provenance), speed, troubles::add);
    return "playing "
        + Provenance.clock(provenance.from())
        + " to "
        + Provenance.clock(provenance.to());
  }

  /** Writes it to a file of its own; what to tell the reviewer. */
  private String export(Provenance provenance) {
    if (!provenance.hasSound()) {
      return NO_SOUND;
    }
    try {
      return "written, readable, outside the record: "
          + playback.export(from(provenance), to(provenance));
    } catch (IOException e) {
      return e.getMessage();
    }
  }

  private static double from(Provenance provenance) {
    return Math.max(0, provenance.from() - AROUND);
  }

  private static double to(Provenance provenance) {
    return provenance.to() + AROUND;
  }
}
