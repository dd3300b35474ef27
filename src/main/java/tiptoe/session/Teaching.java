package tiptoe.session;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import tiptoe.grammar.WordAutomaton;
import tiptoe.graph.AcousticModel;
import tiptoe.graph.ModelFolder;
import tiptoe.graph.Pronunciation;
import tiptoe.graph.Pronunciations;
import tiptoe.graph.SoundsAlike;

/** Takes in how a word is said here, where the model can say it and it is told apart. */
public final class Teaching {
  private final OwnWords own;
  private final Home home;
  private final WordAutomaton phrases;
  private final AcousticModel acoustic;

  /**
   * @param model a model folder the user named; null for the one of the project
   */
  public Teaching(OwnWords own, Home home, Understanding understanding, Path model)
      throws IOException {
    this.own = own;
    this.home = home;
    phrases = understanding.network().automaton();
    acoustic =
        AcousticModel.read(
            ModelFolder.open(ModelFolder.locate(model, System.getenv(), home.folder())));
  }

  /**
   * What came of teaching a word.
   *
   * @param understood whether it is understood when said so
   * @param lines what to tell
   * @param problems what is wrong or doubtful
   */
  public record Taught(boolean understood, List<String> lines, List<String> problems) {}

  /**
   * Teaches a word.
   *
   * @param sounds what follows it in a line of {@code pronunciations.txt}
   * @param anyway though it sounds just like another word in its place
   */
  public Taught teach(String word, String sounds, boolean anyway) throws IOException {
    if (phrases.states().stream()
        .noneMatch(state -> state.arcs().stream().anyMatch(arc -> arc.word().equals(word)))) {
      return refused(
          List.of(
              "expected a word of the grammars, found %s; a wording that holds it must be added in %s first"
                  .formatted(word, home.grammars())));
    }
    Pronunciations before =
        Pronunciations.read(own.after(home.pronunciations()), acoustic.lexicon());
    String line = word + sounds;
    Pronunciations after = before.with("what was taught", List.of(line));
    if (!after.problems().isEmpty()) {
      return refused(after.problems().stream().map(Object::toString).toList());
    }
    List<Pronunciation> taught =
        after.of(word).stream().filter(one -> !before.of(word).contains(one)).toList();
    if (taught.isEmpty()) {
      return new Taught(true, List.of(word + " is understood when said so already"), List.of());
    }
    String shown = taught.stream().map(Pronunciation::toString).collect(Collectors.joining(" or "));
    if (!taught.stream().allMatch(acoustic::canSay)) {
      return refused(List.of("expected phones that the speech model has together, found " + shown));
    }
    List<String> alike = new ArrayList<>();
    boolean distinct = true;
    for (Pronunciation sound : taught) {
      for (SoundsAlike.Alike other : SoundsAlike.find(phrases, before::of, word, sound)) {
        alike.add(shown(word, other));
        distinct &= other.distance() > 0 || !other.samePlace();
      }
    }
    if (!distinct && !anyway) {
      alike.add("not taught; --anyway teaches it all the same");
      return refused(alike);
    }
    own.add(line);
    return new Taught(
        true, List.of(word + " is understood when said " + shown + " from now on"), alike);
  }

  private static Taught refused(List<String> problems) {
    return new Taught(false, List.of(), problems);
  }

  private static String shown(String word, SoundsAlike.Alike other) {
    return "%s sounds %s %s (%s)%s"
        .formatted(
            word,
            other.distance() == 0 ? "the same as" : "nearly like",
            other.word(),
            other.sound(),
            other.samePlace() ? ", which can be said in its place" : "");
  }
}
