package tiptoe.screen.review;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.List;
import java.util.function.BiFunction;
import java.util.function.Consumer;
import java.util.function.Function;
import java.util.function.Supplier;
import tiptoe.finding.Question;

/** What a reviewer is asked and told. Nothing is edited before it is known who does. */
final class ReviewDialogue {
  private static final Function<String, List<String>> NO_COMPLETION = text -> List.of();

  private final ReviewService service;
  private final ItemList shown = new ItemList();
  private final Overlay overlay = new Overlay();
  private String notice = "";

  ReviewDialogue(ReviewService service) {
    this.service = service;
    showItems();
    if (service.whyReadOnly() != null) {
      notice = "READ ONLY: " + service.whyReadOnly();
    } else if (service.reviewer() == null) {
      askWho();
    }
  }

  ReviewService service() {
    return service;
  }

  ItemList shown() {
    return shown;
  }

  Overlay overlay() {
    return overlay;
  }

  String notice() {
    return notice;
  }

  void notice(String text) {
    notice = text;
  }

  void showItems() {
    shown.update(ReviewItems.of(service.wording()));
  }

  void edit(Supplier<Reply> what) {
    if (mayEdit()) {
      tell(what.get());
    }
  }

  boolean mayEdit() {
    if (service.whyReadOnly() != null) {
      notice = "read only: " + service.whyReadOnly();
      return false;
    }
    if (service.reviewer() == null) {
      askWho();
      return false;
    }
    return true;
  }

  void tell(Reply reply) {
    notice = reply.text();
    showItems();
  }

  /** Asks for words to search for; none at all end a search. */
  void askSearch() {
    overlay.line("search for:", shown.search(), NO_COMPLETION, shown::search);
  }

  /** Asks for a line that an edit needs and that is no finding; an empty one does nothing. */
  void ask(String prompt, String text, Function<String, Reply> then) {
    askOn(prompt, text, line -> tell(then.apply(line)));
  }

  /** Asks for a line after which more is asked. */
  void askOn(String prompt, String text, Consumer<String> then) {
    if (mayEdit()) {
      overlay.line(
          prompt,
          text,
          NO_COMPLETION,
          line -> {
            if (line.isEmpty()) {
              notice = "nothing done: expected some words";
            } else {
              then.accept(line);
            }
          });
    }
  }

  /**
   * Lets a finding be typed, and then the answer to each question that it raises.
   *
   * @param then takes in the line and the question it answers
   * @param asking the question the first line answers; null for none
   */
  void type(String prompt, String text, BiFunction<String, Question, Reply> then, Question asking) {
    if (mayEdit()) {
      type(prompt, text, then, asking, new ArrayDeque<>());
    }
  }

  private void type(
      String prompt,
      String text,
      BiFunction<String, Question, Reply> then,
      Question asking,
      Deque<Question> waiting) {
    overlay.line(
        prompt,
        text,
        service.words()::completions,
        line -> {
          Reply reply = then.apply(line, asking);
          tell(reply);
          if (reply.refused() && reply.questions().isEmpty()) {
            type(prompt, line, then, asking, waiting);
            overlay.typing().ifPresent(again -> again.refuse(reply.text()));
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
    overlay.line("who reviews? your name:", "", NO_COMPLETION, this::askRole);
  }

  private void askRole(String name) {
    overlay.line(
        "your role:",
        "",
        NO_COMPLETION,
        role ->
            Reviewer.parse(name.replace(',', ' '))
                .ifPresent(who -> service.reviewer(new Reviewer(who.name(), role))));
  }
}
