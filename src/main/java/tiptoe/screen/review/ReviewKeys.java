package tiptoe.screen.review;

import com.googlecode.lanterna.input.KeyStroke;
import com.googlecode.lanterna.input.KeyType;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import tiptoe.protocol.Region;
import tiptoe.session.Playback;

/** A review by keys: what a key does while nothing lies over the list of items. */
public final class ReviewKeys {
  private static final double SLOW = 0.7;
  private static final int LEAF = 10;

  private final ReviewDialogue sitting;
  private final ReviewService desk;
  private final Shown shown;
  private final Overlay foreground;
  private final ItemActs items;
  private final ItemSound sound;
  private boolean over;

  public ReviewKeys(ReviewService desk, Playback playback) {
    this.desk = desk;
    sitting = new ReviewDialogue(desk);
    shown = sitting.shown();
    foreground = sitting.foreground();
    items = new ItemActs(sitting);
    sound = new ItemSound(playback);
  }

  ReviewService desk() {
    return desk;
  }

  Shown shown() {
    return shown;
  }

  Optional<TypingLine> typing() {
    return foreground.typing();
  }

  Optional<Choice> choice() {
    return foreground.choice();
  }

  /** The lines of the page that lies over the list; empty where none does. */
  List<String> page() {
    return foreground.page().map(Page::lines).orElse(List.of());
  }

  /** Rows of the page that were scrolled away, of the many that can be. */
  int pageFrom(int furthest) {
    return foreground.page().map(page -> page.from(furthest)).orElse(0);
  }

  String notice() {
    return sitting.notice();
  }

  boolean over() {
    return over;
  }

  /** Takes in what came from elsewhere; whether anything did. */
  boolean refresh() {
    Optional<String> trouble = sound.trouble();
    trouble.ifPresent(sitting::notice);
    boolean changed = desk.refresh();
    if (changed) {
      sitting.showItems();
    }
    return changed || trouble.isPresent();
  }

  void key(KeyStroke key) {
    boolean control = key.isCtrlDown() && key.getKeyType() == KeyType.Character;
    if (key.getKeyType() == KeyType.EOF || control && key.getCharacter() == 'c') {
      over = true;
    } else if (!foreground.takes(key)) {
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
      case Character -> Act.of(key.getCharacter()).ifPresent(this::act);
      default -> {}
    }
  }

  private void act(Act act) {
    sitting.notice("");
    switch (act) {
      case TYPE ->
          sitting.type("a finding:", "", (line, asking) -> desk.type(line, region(), asking), null);
      case CORRECT -> correct();
      case UNDO -> sitting.edit(desk::undo);
      case REDO -> sitting.edit(desk::redo);
      case REMARK -> sitting.ask("remark:", "", desk::remark);
      case FILTER -> shown.nextFilter();
      case SEARCH -> sitting.askSearch();
      case REGION -> chooseRegion();
      case HELP -> help();
      case QUIT -> over = true;
      case SIGN -> new SignaturePrompts(sitting).begin();
      case ADDENDUM -> sitting.ask("why an addendum?", "", desk::startAddendum);
      case PLAY -> sitting.notice(sound.play(trace(), 1));
      case SLOWER -> sitting.notice(sound.play(trace(), SLOW));
      case EXPORT -> sitting.notice(sound.export(trace()));
      default -> shown.chosen().ifPresent(item -> items.act(act, item));
    }
  }

  private void correct() {
    shown
        .chosen()
        .ifPresentOrElse(
            items::correct, () -> sitting.notice("that cannot be corrected; t types a finding"));
  }

  private String region() {
    return shown.chosen().map(ReviewItem::region).orElse(null);
  }

  private Trace trace() {
    return shown.chosen().map(ReviewItem::trace).orElse(Trace.NONE);
  }

  private void chooseRegion() {
    List<Region> regions = desk.record().protocol().regions();
    foreground.choose(
        "go to",
        regions.stream().map(Region::label).toList(),
        at -> {
          if (!shown.jump(regions.get(at).id())) {
            sitting.notice("nothing of " + regions.get(at).label() + " is shown");
          }
        });
  }

  private void help() {
    List<String> lines = new ArrayList<>(List.of("KEYS"));
    for (Act act : Act.values()) {
      lines.add("  " + act.key() + "  " + act.words());
    }
    lines.add("  arrows, Page, Home, End move; Enter is e; Esc ends a search or a line");
    foreground.read(lines, () -> {});
  }
}
