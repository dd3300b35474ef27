package tiptoe.language.tagger;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import tiptoe.language.SecondReading.Omitted;

/** Says which steps the words name that were left out. */
final class LeftOutNames {
  private final SentenceItems said;

  LeftOutNames(SentenceItems said) {
    this.said = said;
  }

  Omitted omitted(List<String> name, List<String> deed) {
    // "Head not measured"
    List<String> around = new ArrayList<>(name);
    around.add("circumference");
    boolean measured = deed.stream().anyMatch(word -> said.lexicon().isListed("measures", word));
    return measured && said.protocol().find(id(around)).isPresent()
        ? new Omitted(around, Set.of(id(around)))
        : new Omitted(name, steps(name));
  }

  /** All steps that the words may name. */
  Set<String> all(List<String> name) {
    return said.lexicon().matches(name).stream()
        .flatMap(match -> match.steps(Sense.Kind.PART).stream())
        .collect(Collectors.toSet());
  }

  private String id(List<String> name) {
    return name.stream()
        .map(LayLexicon::plain)
        .filter(word -> !said.lexicon().isListed("determiner", word))
        .collect(Collectors.joining("-"));
  }

  /** The steps that words name which say nothing else; none where they may name more than one. */
  Set<String> steps(List<String> name) {
    String id = id(name);
    for (String one : List.of(id, id.replaceFirst("s$", ""))) {
      if (said.protocol().find(one).isPresent()) {
        return Set.of(one);
      }
    }
    Set<Integer> covered = new TreeSet<>();
    List<TermMatch> parts =
        said.lexicon().matches(name).stream()
            .filter(match -> !match.steps(Sense.Kind.PART).isEmpty())
            .toList();
    parts.forEach(part -> part.addTo(covered));
    for (int at = 0; at < name.size(); at++) {
      if (!covered.contains(at) && !said.lexicon().isListed("inside-a-name", name.get(at))) {
        return Set.of();
      }
    }
    return common(parts);
  }

  // The one step that all of them name: "the vessels of the cord".
  private static Set<String> common(List<TermMatch> parts) {
    Set<String> all = new TreeSet<>();
    Set<String> firm = new TreeSet<>();
    for (TermMatch part : parts) {
      all.addAll(part.steps(Sense.Kind.PART));
      part.senses().stream()
          .filter(sense -> sense.kind() == Sense.Kind.PART && !sense.isLoose())
          .forEach(sense -> firm.add(sense.step()));
    }
    parts.forEach(part -> all.retainAll(part.steps(Sense.Kind.PART)));
    if (all.size() > 1) {
      all.retainAll(firm);
    }
    return all.size() == 1 ? all : Set.of();
  }

  /**
   * What a stretch names, but for what stands in the way ("left eye's clamped shut") and where
   * something is ("a red reflex in either eye").
   */
  List<Omitted> in(List<WordItem> stretch) {
    List<Omitted> named = new ArrayList<>();
    List<TermMatch> parts = new ArrayList<>();
    for (WordItem item : stretch) {
      String last = said.words().get(item.to() - 1);
      if (item.kind() == WordItem.Kind.PART && !item.match().steps(Sense.Kind.PART).isEmpty()) {
        parts.add(item.match());
      } else if (item.kind() == WordItem.Kind.FINDING && said.protocol().find(last).isPresent()) {
        named.add(new Omitted(List.of(last), Set.of(last)));
      } else if (item.kind() == WordItem.Kind.FINDING && !item.match().isBound()) {
        named.add(new Omitted(List.of(), item.match().steps(Sense.Kind.VALUE)));
      }
    }
    parts.removeIf(part -> said.says("in-the-way", part.to(), said.breaks().to(part.to())));
    if (parts.size() > 1 && !common(parts).isEmpty()) {
      named.add(new Omitted(List.of(), common(parts)));
      return named;
    }
    List<TermMatch> things = parts.stream().filter(part -> !isPlace(part)).toList();
    for (TermMatch part : things.isEmpty() ? parts : things) {
      Set<String> one = common(List.of(part));
      named.add(
          new Omitted(
              said.words().subList(part.from(), part.to()),
              one.isEmpty() ? part.steps(Sense.Kind.PART) : one));
    }
    return named;
  }

  private boolean isPlace(TermMatch part) {
    int before = part.from() - 1;
    while (before >= 0
        && (said.isSide(before)
            || said.isListed("both", before)
            || said.isListed("determiner", before))) {
      before--;
    }
    return before >= 0 && said.isListed("place-preposition", before);
  }
}
