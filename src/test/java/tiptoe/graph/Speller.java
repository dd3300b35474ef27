package tiptoe.graph;

import java.util.ArrayList;
import java.util.List;

/** Spells words as the transition-ids of their phones in context, each phone two frames long. */
final class Speller {
  private final AcousticModel model;
  private final List<Integer> ids = new ArrayList<>();
  private int left;

  Speller(AcousticModel model) {
    this.model = model;
  }

  Speller silence() {
    return phone(Phone.SILENCE);
  }

  Speller word(Pronunciation pronunciation) {
    for (int phone : pronunciation.ids()) {
      phone(phone);
    }
    return this;
  }

  Speller phone(int phone) {
    int forward = model.contexts().forward(left, phone);
    ids.add(forward);
    ids.add(TransitionModel.selfLoopOf(forward));
    left = phone;
    return this;
  }

  List<Integer> ids() {
    return ids;
  }
}
