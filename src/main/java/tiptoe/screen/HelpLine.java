package tiptoe.screen;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** The last row: what can be said or pressed now, in turns where not all of it fits. */
record HelpLine(Canvas canvas) {
  private static final String HEAD = " say/press";
  private static final String TAIL = "  ? help ";

  void draw(Area area, ScreenState state) {
    canvas.row(area, 0, Ink.BAR);
    Optional<String> missed = canvas.missed();
    if (missed.isPresent()) {
      canvas.text(area, 0, 1, missed.get(), Ink.BAR);
      return;
    }
    List<String> turns = turns(offers(state), area.width() - TAIL.length());
    int turn = state.sound().seconds() / Pages.SECONDS % turns.size();
    canvas.text(area, 0, 0, turns.get(turn), Ink.BAR);
    canvas.text(area, 0, area.width() - TAIL.length(), TAIL, Ink.BAR);
  }

  private static List<String> offers(ScreenState state) {
    List<AnswerKey> answers = AnswerKey.now(state.record());
    return answers.isEmpty()
        ? Voice.useful(state.record()).stream().map(Voice::offer).toList()
        : answers.stream().map(AnswerKey::offer).toList();
  }

  private static List<String> turns(List<String> offers, int width) {
    List<String> turns = new ArrayList<>();
    StringBuilder text = new StringBuilder(HEAD);
    for (String offer : offers) {
      if (text.length() > HEAD.length() && text.length() + 2 + offer.length() > width) {
        turns.add(text.toString());
        text = new StringBuilder(HEAD);
      }
      text.append("  ").append(offer);
    }
    turns.add(text.toString());
    return turns;
  }
}
