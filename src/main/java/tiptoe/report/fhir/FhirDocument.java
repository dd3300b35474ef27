package tiptoe.report.fhir;

import ca.uhn.fhir.context.FhirContext;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Date;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TimeZone;
import org.hl7.fhir.r4.model.Bundle;
import org.hl7.fhir.r4.model.CodeableConcept;
import org.hl7.fhir.r4.model.Composition;
import org.hl7.fhir.r4.model.DateTimeType;
import org.hl7.fhir.r4.model.Device;
import org.hl7.fhir.r4.model.Identifier;
import org.hl7.fhir.r4.model.Narrative;
import org.hl7.fhir.r4.model.Observation;
import org.hl7.fhir.r4.model.Observation.ObservationStatus;
import org.hl7.fhir.r4.model.Reference;
import org.hl7.fhir.r4.model.Resource;
import org.hl7.fhir.r4.model.StringType;
import org.hl7.fhir.utilities.xhtml.XhtmlNode;
import tiptoe.clinical.MissingItem;
import tiptoe.clinical.Need;
import tiptoe.exam.Answer;
import tiptoe.exam.Event;
import tiptoe.exam.ExamRecord;
import tiptoe.exam.Slot;
import tiptoe.exam.journal.Integrity;
import tiptoe.protocol.Fact;
import tiptoe.protocol.Region;
import tiptoe.protocol.Value;
import tiptoe.wording.PlainText;
import tiptoe.wording.RecordWording;

/** The record as a FHIR R4 document: a Bundle with the Composition first. */
public final class FhirDocument {
  private static final TimeZone UTC = TimeZone.getTimeZone("UTC");

  private final RecordWording wording;
  private final Integrity integrity;
  private final ExamRecord record;
  private final String examination;
  private final Instant asOf;
  private final Map<String, Resource> resources = new LinkedHashMap<>();
  private final Map<Integer, List<Reference>> byStatement = new LinkedHashMap<>();
  private final Map<Slot, Reference> bySlot = new LinkedHashMap<>();

  private FhirDocument(RecordWording wording) {
    this.wording = wording;
    this.record = wording.record();
    this.integrity = wording.integrity();
    this.examination = record.opened() == null ? "empty" : record.opened().id();
    List<tiptoe.exam.Entry> entries = record.entries();
    this.asOf = entries.isEmpty() ? Instant.EPOCH : entries.get(entries.size() - 1).at();
  }

  public static Bundle bundle(RecordWording wording) {
    return new FhirDocument(wording).build();
  }

  public static String json(RecordWording wording) {
    return Contexts.R4.newJsonParser().setPrettyPrint(true).encodeResourceToString(bundle(wording))
        + "\n";
  }

  /** The context is costly to make and safe to share. */
  static final class Contexts {
    static final FhirContext R4 = FhirContext.forR4();

    private Contexts() {}
  }

  private Bundle build() {
    Composition composition = new Composition();
    String compositionUrl = put("composition", composition);
    Reference patient =
        add("patient", Persons.patient(record, identifier(Codes.uuid(examination, "baby"))));
    Reference author = author();
    composition
        .setStatus(status())
        .setType(new CodeableConcept(Codes.SHIPPED.ofDocument()))
        .setSubject(patient)
        .setDateElement(moment(asOf))
        .setTitle("Newborn examination")
        .setEncounter(add("encounter", Persons.encounter(record, patient, examiner().orElse(null))))
        .addAuthor(author);
    composition.setIdentifier(identifier(compositionUrl));
    if (integrity.isAltered()) {
      String banner = printable(integrity.banner(record));
      composition.setTitle("NOT VALID — newborn examination, " + banner);
      section(composition, "Not valid", integrity.problems());
    }
    ObservationMaker maker =
        new ObservationMaker(
            this,
            wording,
            patient,
            moment(asOf),
            isFinal() ? ObservationStatus.FINAL : ObservationStatus.PRELIMINARY);
    facts(composition, maker);
    new HandedOn(this, maker, patient, wording).add(composition);
    for (Region region : record.protocol().regions()) {
      section(composition, region, maker);
    }
    unsettled(composition, maker);
    if (composition.getSection().isEmpty()) {
      section(composition, "Findings", List.of("Nothing has been recorded."));
    }
    owed(composition, maker);
    new Computed(this, maker, wording).add(composition);
    new Consequences(this, wording, patient, moment(asOf)).add(composition);
    list(composition, "Remarks", wording.remarks());
    list(
        composition,
        "Local protocol",
        record.protocol().local().map(local -> local.title()).stream().toList());
    new Signing(this, author, moment(asOf))
        .add(record, composition, compositionUrl, integrity.isAltered());
    return bundle();
  }

  private Bundle bundle() {
    Bundle bundle = new Bundle();
    bundle.setType(Bundle.BundleType.DOCUMENT);
    bundle.setIdentifier(identifier(Codes.uuid(examination, "bundle")));
    bundle.setTimestampElement(
        new org.hl7.fhir.r4.model.InstantType(
            Date.from(asOf), ca.uhn.fhir.model.api.TemporalPrecisionEnum.MILLI, UTC));
    resources.forEach((url, resource) -> bundle.addEntry().setFullUrl(url).setResource(resource));
    return bundle;
  }

  private Composition.CompositionStatus status() {
    if (integrity.isAltered() && !record.signatures().isEmpty()) {
      return Composition.CompositionStatus.ENTEREDINERROR;
    }
    if (!isFinal()) {
      return Composition.CompositionStatus.PRELIMINARY;
    }
    return record.signatures().size() > 1
        ? Composition.CompositionStatus.AMENDED
        : Composition.CompositionStatus.FINAL;
  }

  private boolean isFinal() {
    return record.signed() && !integrity.isAltered();
  }

  private Reference author() {
    if (!record.signatures().isEmpty()) {
      return signer(record.signatures().size() - 1);
    }
    Device device = new Device();
    device.addDeviceName().setName("Tiptoe").setType(Device.DeviceNameType.USERFRIENDLYNAME);
    return examiner().orElseGet(() -> add("device", device));
  }

  /** Who gave this signature. */
  Reference signer(int number) {
    return add("signer/" + number, Persons.signer(record.signatures().get(number)));
  }

  /** Who examined; empty where nobody was named. */
  Optional<Reference> examiner() {
    return Optional.ofNullable(record.opened())
        .map(Event.ExaminationOpened::author)
        .map(name -> add("examiner", Persons.named(name)));
  }

  private void facts(Composition composition, ObservationMaker maker) {
    Map<String, String> facts = new LinkedHashMap<>(record.baby().facts());
    facts.keySet().removeIf(this::isApart);
    List<Reference> entries = new ArrayList<>();
    List<String> words = new ArrayList<>();
    facts.forEach(
        (id, value) -> {
          entries.add(add("fact/" + id, maker.fact(id, value)));
          words.add(wording.words().title(id) + ": " + wording.words().fact(id, value));
        });
    if (!words.isEmpty()) {
      section(composition, "The baby", words).setEntry(entries);
    }
  }

  private boolean isApart(String fact) {
    return record
        .protocol()
        .fact(fact)
        .filter(
            one ->
                one.handover() || one.kind() == Fact.Kind.IDENTITY || one.kind() == Fact.Kind.TEXT)
        .isPresent();
  }

  private void section(Composition composition, Region region, ObservationMaker maker) {
    List<Answer> answers =
        record.answers().stream()
            .filter(answer -> record.protocol().step(answer.step()).region().equals(region.id()))
            .toList();
    if (answers.isEmpty()) {
      return;
    }
    List<String> words =
        answers.stream().map(answer -> wording.words().of(answer.finding())).toList();
    Composition.SectionComponent section =
        section(composition, wording.words().title(region.label()), words)
            .setCode(new CodeableConcept(Codes.SHIPPED.section(region.id())));
    int number = 0;
    for (Answer answer : answers) {
      String thing = "answer/" + region.id() + "/" + number++;
      Reference reference = add(thing, answer, maker.observation(answer));
      section.addEntry(reference);
      if (Value.NOT_EXAMINED.equals(answer.value())) {
        bySlot.put(new Slot(answer.step(), answer.side()), reference);
      }
    }
  }

  private void unsettled(Composition composition, ObservationMaker maker) {
    List<String> words = wording.unsettled();
    if (words.isEmpty()) {
      return;
    }
    Composition.SectionComponent section = section(composition, "Not settled", words);
    int number = 0;
    for (Answer answer : wording.waiting()) {
      section.addEntry(add("waiting/" + number++, answer, maker.waiting(answer)));
    }
  }

  /** What nobody has answered or stated: what was left out is owed and stands here again. */
  private void owed(Composition composition, ObservationMaker maker) {
    List<Reference> entries = new ArrayList<>();
    for (Slot slot : record.missing()) {
      bySlot.computeIfAbsent(slot, one -> add("owed/" + one, maker.owed(one.step(), one.side())));
      entries.add(slot(slot));
    }
    List<String> words = new ArrayList<>(wording.missingKeySteps());
    words.addAll(wording.otherMissingSteps());
    words.addAll(wording.missingDetails());
    for (MissingItem item : wording.assessment().missingBeside(record)) {
      words.add(wording.words().step(item.step()) + ": " + wording.words().spelled(item.reason()));
      if (item.detail() == null || record.answers(item.step()).isEmpty()) {
        entries.add(add("needed/" + item.step() + "/" + item.detail(), maker.owed(item)));
      }
    }
    words.addAll(wording.needs());
    for (Need need : wording.assessment().needs()) {
      entries.add(add("need/" + need.fact(), maker.needed(need)));
    }
    if (!words.isEmpty()) {
      section(composition, "Not examined or not stated", words)
          .setCode(ObservationMaker.own(Codes.SECTIONS, "owed", "owed"))
          .setEntry(entries);
    }
  }

  /** The observation of what is owed, or of what was left out. */
  Reference slot(Slot slot) {
    return bySlot.get(slot).copy();
  }

  private static void list(Composition composition, String title, List<String> words) {
    if (!words.isEmpty()) {
      section(composition, title, words);
    }
  }

  /** A section that tells so many lines. */
  static Composition.SectionComponent section(
      Composition composition, String title, List<String> words) {
    return composition.addSection().setTitle(title).setText(narrative(words));
  }

  /** The observations made from these statements. */
  List<Reference> observations(List<Integer> statements) {
    return statements.stream()
        .flatMap(number -> byStatement.getOrDefault(number, List.of()).stream())
        .map(Reference::copy)
        .toList();
  }

  private Reference add(String thing, Answer answer, Observation observation) {
    Reference reference = add(thing, observation);
    byStatement.computeIfAbsent(answer.statement(), key -> new ArrayList<>()).add(reference);
    return reference;
  }

  Reference add(String thing, Resource resource) {
    return new Reference(put(thing, resource));
  }

  private String put(String thing, Resource resource) {
    String url = Codes.uuid(examination, thing);
    resources.put(url, resource);
    return url;
  }

  private static Identifier identifier(String uuid) {
    return new Identifier().setSystem(Codes.UUIDS).setValue(uuid);
  }

  static DateTimeType moment(Instant instant) {
    return new DateTimeType(
        Date.from(instant), ca.uhn.fhir.model.api.TemporalPrecisionEnum.SECOND, UTC);
  }

  static Narrative narrative(List<String> lines) {
    XhtmlNode div = new XhtmlNode(org.hl7.fhir.utilities.xhtml.NodeType.Element, "div");
    div.setAttribute("xmlns", "http://www.w3.org/1999/xhtml");
    XhtmlNode list = div.addTag("ul");
    lines.forEach(line -> list.addTag("li").addText(printable(line)));
    Narrative narrative = new Narrative();
    narrative.setStatus(Narrative.NarrativeStatus.GENERATED);
    narrative.setDiv(div);
    return narrative;
  }

  static StringType string(String text) {
    return new StringType(printable(text));
  }

  static String printable(String text) {
    String clean = PlainText.line(text).strip();
    return clean.isEmpty() ? "–" : clean;
  }
}
