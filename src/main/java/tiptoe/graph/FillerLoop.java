package tiptoe.graph;

import java.util.ArrayList;
import java.util.List;
import java.util.function.IntUnaryOperator;
import tiptoe.graph.DecodingGraph.Arc;
import tiptoe.graph.DecodingGraph.State;
import tiptoe.graph.Phone.Place;

/**
 * Speech that is no phrase, and cries: made-up words of one first phone, any inner phones and one
 * last phone. Filler of one-phone words would upset the alignment of the words beside it.
 */
final class FillerLoop {
  private final PhoneContexts contexts;
  private final SharedStates states;
  private final GraphSettings settings;
  private final IntUnaryOperator fillerEnd;
  private final int[] hubs = new int[Phone.LAST + 1];

  /**
   * @param fillerEnd gives the state behind a made-up word for its last phone
   */
  FillerLoop(
      PhoneContexts contexts,
      SharedStates states,
      GraphSettings settings,
      IntUnaryOperator fillerEnd) {
    this.contexts = contexts;
    this.states = states;
    this.settings = settings;
    this.fillerEnd = fillerEnd;
    for (Place place : List.of(Place.BEGIN, Place.INSIDE)) {
      for (Phone phone : Phone.values()) {
        hubs[phone.at(place)] = states.reserve();
      }
    }
    for (Place place : List.of(Place.BEGIN, Place.INSIDE)) {
      for (Phone phone : Phone.values()) {
        states.fill(hubs[phone.at(place)], State.of(onward(phone.at(place))));
      }
    }
  }

  /** The arcs that begin filler after a phone. */
  List<Arc> begin(int left) {
    List<Arc> arcs = new ArrayList<>();
    for (Phone phone : Phone.values()) {
      float cost = settings.fillerEntry() + settings.fillerPhone();
      add(arcs, left, phone.at(Place.BEGIN), DecodingGraph.FILLER_LABEL, cost);
    }
    return arcs;
  }

  private List<Arc> onward(int left) {
    List<Arc> arcs = new ArrayList<>();
    for (Phone phone : Phone.values()) {
      add(arcs, left, phone.at(Place.INSIDE), 0, settings.fillerPhone());
      add(arcs, left, phone.at(Place.END), 0, settings.fillerPhone());
    }
    return arcs;
  }

  private void add(List<Arc> arcs, int left, int phone, int out, float cost) {
    int in = contexts.forward(left, phone);
    if (in == 0) {
      return;
    }
    boolean ends = hubs[phone] == 0;
    int behind = ends ? fillerEnd.applyAsInt(phone) : hubs[phone];
    int target = states.sounding(in, List.of(Arc.empty(0, behind)));
    arcs.add(new Arc(in, out, cost + PhoneCosts.TRANSITION, target));
  }
}
