package tiptoe.language;

import static java.util.stream.Collectors.joining;

import java.util.ArrayList;
import java.util.List;
import tiptoe.finding.Question;

/** Writes meanings in the short form of the utterance tables. */
final class Notation {
  private Notation() {}

  static String of(Interpretation interpretation) {
    List<String> items = new ArrayList<>();
    for (Meaning meaning : interpretation.meanings()) {
      String item = of(meaning);
      if (item != null) {
        items.add(item);
      }
    }
    return items.isEmpty() ? "-" : String.join("; ", items);
  }

  private static String of(Meaning meaning) {
    if (meaning instanceof Meaning.States finding) {
      return finding.statement().toString();
    } else if (meaning instanceof Meaning.Asks asks) {
      return of(asks.question());
    } else if (meaning instanceof Meaning.Fact fact) {
      return fact.id() + ":=" + fact.value();
    } else if (meaning instanceof Meaning.Heading heading) {
      return "@" + heading.region();
    } else if (meaning instanceof Meaning.Instruction instruction) {
      return "#" + instruction.command().id() + (instruction.doubtful() ? ", asked" : "");
    }
    if (meaning instanceof Meaning.Picks picks) {
      String places = picks.places().stream().map(String::valueOf).collect(joining(" "));
      return picks.all()
          ? "all"
          : (picks.only() ? "only " : "not ")
              + (places.isEmpty() ? String.join("|", picks.steps()) : places)
              + (picks.side() == null ? "" : " " + picks.side().id());
    }
    return null; // an answered question shows in what it yields
  }

  private static String of(Question question) {
    String kind = question.kind().name().toLowerCase(java.util.Locale.ROOT);
    String detail = question.detail() == null ? "" : ":" + question.detail();
    String about = question.about() == null ? "" : " " + question.about();
    return "?" + kind + detail + about;
  }
}
