package tiptoe.report.fhir;

import java.util.Date;
import java.util.HexFormat;
import org.hl7.fhir.r4.model.CodeableConcept;
import org.hl7.fhir.r4.model.Coding;
import org.hl7.fhir.r4.model.DateTimeType;
import org.hl7.fhir.r4.model.Provenance;
import org.hl7.fhir.r4.model.Reference;
import tiptoe.exam.ExamRecord;
import tiptoe.exam.Signature;

/** Who stands behind the document: a Provenance, with a signature where it was signed. */
final class Signing {
  private static final String AGENTS =
      "http://terminology.hl7.org/CodeSystem/provenance-participant-type";
  private static final String SIGNATURES = "urn:iso-astm:E1762-95:2013";

  private final FhirDocument document;
  private final Reference author;
  private final DateTimeType when;

  Signing(FhirDocument document, Reference author, DateTimeType when) {
    this.document = document;
    this.author = author;
    this.when = when;
  }

  void add(ExamRecord record, String composition) {
    Provenance provenance = new Provenance();
    provenance.addTarget(new Reference(composition));
    provenance.setRecorded(Date.from(when.getValue().toInstant()));
    provenance.getRecordedElement().setTimeZoneZulu(true);
    provenance
        .addAgent()
        .setType(new CodeableConcept().addCoding(new Coding(AGENTS, "author", "Author")))
        .setWho(author.copy());
    record.signatures().forEach(signed -> provenance.addSignature(signature(signed)));
    document.add("provenance", provenance);
  }

  // Each addendum is signed by itself, maybe by another: who is named beside each signature.
  private static org.hl7.fhir.r4.model.Signature signature(Signature signed) {
    var signature = new org.hl7.fhir.r4.model.Signature();
    signature.addType(new Coding(SIGNATURES, "1.2.840.10065.1.12.1.1", "Author's Signature"));
    signature.setWhen(Date.from(signed.at()));
    signature.getWhenElement().setTimeZoneZulu(true);
    signature.setWho(new Reference().setDisplay(signed.name() + ", " + signed.role()));
    signature.setSigFormat("application/octet-stream");
    // The seal: SHA-256 over the chained journal and the audio.
    signature.setData(HexFormat.of().parseHex(signed.seal()));
    return signature;
  }
}
