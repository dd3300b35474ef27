package tiptoe.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import ca.uhn.fhir.context.FhirContext;
import ca.uhn.fhir.context.support.DefaultProfileValidationSupport;
import ca.uhn.fhir.validation.FhirValidator;
import ca.uhn.fhir.validation.ResultSeverityEnum;
import ca.uhn.fhir.validation.ValidationResult;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.stream.Stream;
import org.hl7.fhir.common.hapi.validation.support.CommonCodeSystemsTerminologyService;
import org.hl7.fhir.common.hapi.validation.support.InMemoryTerminologyServerValidationSupport;
import org.hl7.fhir.common.hapi.validation.support.PrePopulatedValidationSupport;
import org.hl7.fhir.common.hapi.validation.support.ValidationSupportChain;
import org.hl7.fhir.common.hapi.validation.validator.FhirInstanceValidator;
import org.hl7.fhir.r4.model.Annotation;
import org.hl7.fhir.r4.model.Bundle;
import org.hl7.fhir.r4.model.Composition;
import org.hl7.fhir.r4.model.Provenance;
import org.hl7.fhir.r4.model.ServiceRequest;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import tiptoe.FullOnly;
import tiptoe.Golden;
import tiptoe.TestExtent;
import tiptoe.exam.Answer;
import tiptoe.exam.ExamRecord;
import tiptoe.exam.Examination;
import tiptoe.finding.Source;
import tiptoe.protocol.Norm;
import tiptoe.protocol.Protocol;
import tiptoe.protocol.Side;
import tiptoe.protocol.Step;
import tiptoe.protocol.Value;
import tiptoe.report.fhir.CodeSystems;
import tiptoe.report.fhir.FhirDocument;
import tiptoe.report.fhir.FhirReader;
import tiptoe.wording.RecordWording;

/** Checked by the HAPI FHIR validator with the definitions of HL7 FHIR R4 (4.0.1). */
class FhirDocumentTest {
  private static FhirValidator validator;

  @BeforeAll
  static void loadDefinitions() {
    FhirContext context = FhirContext.forR4();
    PrePopulatedValidationSupport ours = new PrePopulatedValidationSupport(context);
    CodeSystems.of(Protocol.standard()).forEach(ours::addCodeSystem);
    ValidationSupportChain chain =
        new ValidationSupportChain(
            new DefaultProfileValidationSupport(context),
            ours,
            new CommonCodeSystemsTerminologyService(context),
            new InMemoryTerminologyServerValidationSupport(context));
    validator = context.newValidator();
    FhirInstanceValidator instance = new FhirInstanceValidator(chain);
    instance.setAnyExtensionsAllowed(false);
    validator.registerValidatorModule(instance);
  }

  private static void assertValid(ExamRecord record) {
    ValidationResult result =
        validator.validateWithResult(FhirDocument.json(Records.wording(record)));
    List<String> errors =
        result.getMessages().stream()
            .filter(message -> message.getSeverity().compareTo(ResultSeverityEnum.ERROR) >= 0)
            .map(message -> message.getLocationString() + ": " + message.getMessage())
            .toList();
    assertEquals(List.of(), errors);
  }

  @Test
  void aTypicalRecordIsValid() {
    assertValid(Records.typical());
  }

  @Test
  void anEmptyRecordIsValid() {
    assertValid(Records.empty());
    assertValid(Records.of());
  }

  @Test
  void theDemonstrationIsValidAsADraftSignedAndAmended() {
    assertStatus(Composition.CompositionStatus.PRELIMINARY, Records.demonstration().record());
    assertStatus(Composition.CompositionStatus.FINAL, Records.signed());
    assertStatus(Composition.CompositionStatus.AMENDED, Records.amended());
  }

  private static void assertStatus(Composition.CompositionStatus status, ExamRecord record) {
    assertValid(record);
    Bundle bundle = FhirDocument.bundle(Records.wording(record));
    assertEquals(status, ((Composition) bundle.getEntryFirstRep().getResource()).getStatus());
    long signatures =
        bundle.getEntry().stream()
            .map(Bundle.BundleEntryComponent::getResource)
            .filter(Provenance.class::isInstance)
            .mapToLong(resource -> ((Provenance) resource).getSignature().size())
            .sum();
    assertEquals(0, signatures, "a name is no signature");
    assertEquals(
        record.signatures().size(),
        ((Composition) bundle.getEntryFirstRep().getResource()).getAttester().size());
  }

  @Test
  void aRecordWithEveryAbnormalFindingIsValid() {
    assertValid(Stated.everyAbnormal());
  }

  @Test
  void recordsAtRandomAreValidAndReadBackTheSame() {
    Random random = new Random(42);
    for (int i = 0; i < TestExtent.of(3, 10); i++) {
      ExamRecord record = Stated.atRandom(random);
      if (i < TestExtent.of(1, 10)) {
        assertValid(record);
      }
      assertSame(record);
    }
  }

  @Test
  void readsBackTheSameAnswers() {
    assertSame(Records.typical());
    assertSame(Stated.everyAbnormal());
  }

  /** The signs are the codes of Quantity.comparator in FHIR R4. */
  @Test
  void aNumberThatWasToldAsABoundIsWrittenAsOne() {
    for (String said : List.of("under", "at most", "at least", "over")) {
      ExamRecord record = Records.of("cap refill " + said + " two seconds");
      assertValid(record);
      assertSame(record);
    }
    String json =
        FhirDocument.json(Records.wording(Records.of("cap refill less than two seconds")))
            .replaceAll("\\s", "");
    assertTrue(json.contains("\"valueQuantity\":{\"value\":2,\"comparator\":\"<\""), json);
  }

  /**
   * Answers with time and sign, flags, plan, results, what is owed and what was handed on are all
   * there as data.
   */
  @ParameterizedTest
  @ValueSource(strings = {"well", "green-vomit", "infection", "heart", "hips-and-jaundice"})
  void aWholeCheckIsValidAndReadBackTheSame(String name) throws IOException {
    ExamRecord record = WholeCheckTest.checked(name).record();
    if (TestExtent.isFull() || name.equals("hips-and-jaundice")) {
      assertValid(record);
    }
    assertSame(record);
  }

  @Test
  void whatWasTickedOffIsCompleted() {
    Examination examination = Records.dictated(List.of("baby girl", "born at forty weeks"));
    examination.review("Sam Fell").tick("nipe-review", "all four again", true, "seen at 7 weeks");
    assertSame(examination.record());
    Bundle bundle = FhirDocument.bundle(Records.wording(examination.record()));
    assertEquals(
        List.of("completed, seen at 7 weeks, Sam Fell, 2026-03-02T12:00:00+00:00"),
        bundle.getEntry().stream()
            .map(Bundle.BundleEntryComponent::getResource)
            .filter(ServiceRequest.class::isInstance)
            .map(ServiceRequest.class::cast)
            .map(one -> one.getStatus().toCode() + ", " + handled(one.getNote().get(1)))
            .toList());
  }

  private static String handled(Annotation note) {
    return note.getText() + ", " + note.getAuthor() + ", " + note.getTimeElement().asStringValue();
  }

  static void assertSame(ExamRecord record) {
    RecordWording wording = Records.wording(record);
    FhirReader.Contents back =
        new FhirReader(Protocol.standard()).contents(FhirDocument.json(wording));
    assertEquals(
        record.answers().stream().map(FhirDocumentTest::key).sorted().toList(),
        back.answers().stream().map(FhirDocumentTest::key).sorted().toList());
    assertEquals(
        String.join("\n", new RecordContents(record, wording.assessment()).lines()),
        String.join("\n", back.others()));
  }

  private static String key(Answer answer) {
    return answer.finding().withSource(Source.TYPED).toString();
  }

  @Test
  void theSameRecordGivesTheSameDocument() {
    assertEquals(
        FhirDocument.json(Records.wording(Records.typical())),
        FhirDocument.json(Records.wording(Records.typical())));
  }

  @Test
  void beginsWithTheCompositionAndIsPreliminaryUntilSigned() {
    ExamRecord record = Records.typical();
    Bundle bundle = FhirDocument.bundle(Records.wording(record));
    assertEquals(Bundle.BundleType.DOCUMENT, bundle.getType());
    Composition composition = (Composition) bundle.getEntryFirstRep().getResource();
    assertEquals(Composition.CompositionStatus.PRELIMINARY, composition.getStatus());
    assertTrue(composition.getSection().size() > 10);
  }

  @Test
  @FullOnly("documents with codes of these systems are valid")
  void theCodeSystemsArePublishedInTheProjectAndValid() throws IOException {
    String now = CodeSystems.json(Protocol.standard());
    Golden.check(
        java.nio.file.Path.of("src/main/resources/tiptoe/report/fhir/code-systems.json"), now);
    List<String> errors =
        validator.validateWithResult(now).getMessages().stream()
            .filter(message -> message.getSeverity().compareTo(ResultSeverityEnum.ERROR) >= 0)
            .map(message -> message.getLocationString() + ": " + message.getMessage())
            .toList();
    assertEquals(List.of(), errors);
  }

  @Test
  void everyCodeOfTheProtocolIsPublished() {
    long values = Protocol.standard().steps().mapToLong(step -> step.values().size()).sum();
    assertEquals(values, CodeSystems.of(Protocol.standard()).get(1).getConcept().size());
  }

  /** Records with findings chosen from the protocol. */
  private static final class Stated {
    static ExamRecord everyAbnormal() {
      List<String> lines = new ArrayList<>();
      lines.add("sex undetermined");
      return PickedFindings.record(lines, step -> picked(step, Norm.ABNORMAL));
    }

    static ExamRecord atRandom(Random random) {
      return PickedFindings.record(
          List.of("baby boy", "thirty eight weeks"),
          step -> {
            if (random.nextInt(4) == 0) {
              return Stream.empty();
            }
            List<Value> values = step.values();
            return values.isEmpty()
                ? Stream.empty()
                : Stream.of(values.get(random.nextInt(values.size())).id());
          });
    }

    private static Stream<String> picked(Step step, Norm norm) {
      return step.values().stream()
          .filter(value -> value.norm() == norm)
          .map(Value::id)
          .limit(step.many() ? Long.MAX_VALUE : 1);
    }
  }

  /** Makes a record of values picked for each step, on both sides where it has sides. */
  private static final class PickedFindings {
    static ExamRecord record(
        List<String> lines, java.util.function.Function<Step, Stream<String>> pick) {
      Examination examination = Records.dictated(lines);
      Protocol.standard()
          .steps()
          .forEach(step -> pick.apply(step).forEach(value -> state(examination, step, value)));
      return examination.record();
    }

    private static void state(Examination examination, Step step, String value) {
      List<Side> sides = new ArrayList<>();
      if (step.sided()) {
        sides.addAll(List.of(Side.values()));
      } else {
        sides.add(null);
      }
      for (Side side : sides) {
        tiptoe.finding.Finding statement = tiptoe.finding.Finding.of(step.id(), side, value);
        examination.hear(
            tiptoe.exam.Heard.typed(step.id(), 0),
            new tiptoe.language.Interpretation(
                List.of(new tiptoe.language.Meaning.States(statement, true)),
                List.of(),
                examination.dialogue()));
      }
    }
  }
}
