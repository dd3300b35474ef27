package tiptoe.report.fhir;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.hl7.fhir.r4.model.CodeableConcept;
import org.hl7.fhir.r4.model.Coding;
import org.hl7.fhir.r4.model.Composition;
import org.hl7.fhir.r4.model.Observation;
import org.hl7.fhir.r4.model.Period;
import org.hl7.fhir.r4.model.StringType;
import tiptoe.clinical.ProgrammeResult;
import tiptoe.clinical.Result;
import tiptoe.clinical.Size;
import tiptoe.exam.Answer;
import tiptoe.protocol.Labels;
import tiptoe.wording.RecordWording;
import tiptoe.wording.Words;

/** What was worked out from the findings: centiles, screens and classes, the programme's result. */
record Computed(FhirDocument document, ObservationMaker maker, RecordWording wording) {
  void add(Composition composition) {
    Map<String, Observation> sizes = new LinkedHashMap<>();
    for (Size size : wording.assessment().sizes()) {
      for (Size.Place place : size.against()) {
        sizes.put("size/" + size.step() + "/" + place.standard(), of(size, place));
      }
    }
    section(composition, "Size", wording.sizes(), sizes);
    Map<String, Observation> results = new LinkedHashMap<>();
    wording
        .assessment()
        .results()
        .forEach(result -> results.put("result/" + result.id(), of(result)));
    section(composition, "Screens and classes", wording.results(), results);
    Map<String, Observation> programme = new LinkedHashMap<>();
    wording
        .assessment()
        .programme()
        .forEach(result -> programme.put("programme/" + result.part(), of(result)));
    section(composition, "Screening programme", wording.programmeLines(), programme);
  }

  private void section(
      Composition composition, String title, List<String> words, Map<String, Observation> all) {
    if (words.isEmpty() && all.isEmpty()) {
      return;
    }
    Composition.SectionComponent section = FhirDocument.section(composition, title, words);
    all.forEach((thing, observation) -> section.addEntry(document.add(thing, observation)));
  }

  private Observation of(Size size, Size.Place place) {
    Observation observation =
        maker
            .blank("exam")
            .setCode(result(size.step() + "-centile").setText(wording.words().step(size.step())))
            .setValue(ObservationMaker.quantity(Double.toString(place.centile()), "%", "%"))
            .setMethod(method(place.standard(), place.source()));
    observation
        .addComponent()
        .setCode(result("z-score"))
        .setValue(ObservationMaker.quantity(Double.toString(place.z()), "z", "{z}"));
    if (size.sizeClass() != null && place.equals(size.against().get(0))) {
      observation
          .addComponent()
          .setCode(result("size-class"))
          .setValue(outcome("size-class", size.sizeClass().id()));
    }
    List<Integer> statements =
        wording.record().answers(size.step()).stream().map(Answer::statement).toList();
    document.observations(statements).forEach(observation::addDerivedFrom);
    size.remarks()
        .forEach(remark -> observation.addNote().setText(wording.words().spelled(remark)));
    return observation;
  }

  private Observation of(Result result) {
    Observation observation =
        maker
            .blank("exam")
            .setCode(result(result.id()))
            .setValue(
                outcome(result.id(), result.value())
                    .setText(wording.words().spelled(result.text())))
            .setMethod(method(result.standard(), result.source()));
    Map<String, Double> numbers = new TreeMap<>();
    numbers.put("number", result.number());
    numbers.put("phototherapy", result.phototherapy());
    numbers.put("exchange", result.exchange());
    numbers.forEach(
        (name, number) -> {
          if (number != null) {
            observation
                .addComponent()
                .setCode(ObservationMaker.own(Codes.RESULTS, result.id() + "." + name, name))
                .setValue(
                    ObservationMaker.quantity(
                        Double.toString(number), result.unit(), Codes.ucum(result.unit())));
          }
        });
    result
        .remarks()
        .forEach(remark -> observation.addNote().setText(wording.words().spelled(remark)));
    return observation;
  }

  private Observation of(ProgrammeResult result) {
    Observation observation =
        maker
            .blank("exam")
            .setCode(
                ObservationMaker.own(Codes.PROGRAMME, result.part(), Labels.of(result.part())));
    switch (result.outcome()) {
      case NO_CONCERN, REFERRAL ->
          observation.setValue(outcome("programme", result.outcome().id()));
      case NOT_DONE -> observation.setDataAbsentReason(ObservationMaker.absent("not-performed"));
      case NOT_APPLICABLE ->
          observation.setDataAbsentReason(
              ObservationMaker.absent(
                  wording.record().baby().sex().isPresent() ? "not-applicable" : "unknown"));
    }
    if (result.referrals().stream().anyMatch(ProgrammeResult.Referral::provisional)) {
      observation.setStatus(Observation.ObservationStatus.PRELIMINARY);
    }
    result.referrals().forEach(referral -> refer(observation, referral));
    result.owed().forEach(slot -> observation.addHasMember(document.slot(slot)));
    return observation;
  }

  private void refer(Observation observation, ProgrammeResult.Referral referral) {
    Observation.ObservationComponentComponent component =
        observation
            .addComponent()
            .setCode(
                ObservationMaker.own(Codes.RULES, referral.rule(), null)
                    .setText(
                        wording.words().spelled(referral.what())
                            + (referral.provisional() ? " (" + Words.NOT_SETTLED + ")" : "")));
    Period period = Consequences.period(referral.from(), referral.to());
    component.setValue(period.isEmpty() ? new StringType(referral.due()) : period);
  }

  private static CodeableConcept result(String id) {
    return ObservationMaker.own(Codes.RESULTS, id, Labels.of(id));
  }

  private static CodeableConcept outcome(String id, String value) {
    return ObservationMaker.own(Codes.OUTCOMES, id + "." + value, Labels.of(value));
  }

  private static CodeableConcept method(String standard, String source) {
    CodeableConcept method = new CodeableConcept().setText(source);
    if (standard != null) {
      method.addCoding(new Coding(Codes.STANDARDS, standard, null));
    }
    return method;
  }
}
