package tiptoe.language.tagger;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import tiptoe.language.tagger.ToldItems.Item;
import tiptoe.language.tagger.ToldItems.Kind;
import tiptoe.language.tagger.ToldPart.Stated;

/**
 * Lets what is only named in a list take the value of its neighbour: "told about the heart and the
 * hips", "the leaflet and the safety net advice were given". Only what is done for every baby or
 * handed on is listed so, and only where nothing else is said of it.
 */
final class ToldLists {
  private final ToldWords sentence;
  private final ToldLexicon told;
  private final List<ToldPart> parts;

  ToldLists(ToldWords sentence, List<ToldPart> parts) {
    this.sentence = sentence;
    this.told = sentence.told();
    this.parts = parts;
  }

  void share() {
    for (int i = 1; i < parts.size(); i++) {
      if (isJoined(i) || saysToo(parts.get(i))) {
        take(parts.get(i), parts.get(i - 1));
      }
    }
    for (int i = parts.size() - 2; i >= 0; i--) {
      if (isJoined(i + 1)) {
        take(parts.get(i), parts.get(i + 1));
      }
    }
  }

  private boolean isJoined(int index) {
    ToldPart part = parts.get(index);
    return !part.corrects && sentence.isListed("list-joint", part.from());
  }

  private boolean saysToo(ToldPart part) {
    List<String> said = part.of(sentence.plain());
    return told.list("too").stream()
        .anyMatch(
            too ->
                said.size() > too.size()
                    && said.subList(said.size() - too.size(), said.size()).equals(too));
  }

  private void take(ToldPart bare, ToldPart giver) {
    if (bare.states() || bare.corrects || bare.asked || giver.asked || giver.corrects) {
      return;
    }
    listed(bare)
        .ifPresent(
            subject -> {
              List<Stated> given =
                  giver.stated().stream().filter(one -> shares(subject, one)).toList();
              boolean stated = parts.stream().anyMatch(part -> part.states(subject));
              if (given.size() == 1 && giver.stated().size() == 1 && !stated) {
                bare.state(
                    new Stated(
                        subject, given.get(0).value(), List.of(), false, given.get(0).sure()));
                bare.account(bare.from(), bare.to());
              }
            });
  }

  // The one thing that is named, where nothing but listing words stands beside it.
  private Optional<String> listed(ToldPart part) {
    Set<Integer> beside = told.beside(part.subjects(), part.of(sentence.plain()));
    List<String> subjects = new ArrayList<>();
    for (Item item : part.items) {
      List<String> named =
          item.abouts()
              .filter(sense -> !sense.weak())
              .map(ToldLexicon.Sense::subject)
              .filter(this::mayBeListed)
              .distinct()
              .toList();
      if (named.isEmpty()
          && !told.isListed("listed", sentence.of(item))
          && !isReferral(item)
          && !(item.kind() == Kind.FINDING && beside.contains(item.from() - part.from()))) {
        return Optional.empty();
      }
      subjects.addAll(named);
    }
    return Optional.of(subjects).filter(all -> all.size() == 1).map(all -> all.get(0));
  }

  private boolean isReferral(Item item) {
    return item.kind() != Kind.NUMBER && told.isListed("referral", sentence.of(item));
  }

  private boolean mayBeListed(String subject) {
    return isOffered(subject) || isHandover(subject);
  }

  private boolean isOffered(String subject) {
    return told.isSubjectListed("offered", subject);
  }

  private boolean isHandover(String subject) {
    return sentence.isHandover(subject) && !subject.startsWith("consent");
  }

  private boolean shares(String subject, Stated one) {
    boolean same =
        isHandover(subject) && isHandover(one.subject())
            || isOffered(subject) && isOffered(one.subject());
    return same && sentence.fact(subject).orElseThrow().values().contains(one.value());
  }
}
