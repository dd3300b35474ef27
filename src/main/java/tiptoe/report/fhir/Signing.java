package tiptoe.report.fhir;

import java.nio.charset.StandardCharsets;
import java.util.Date;
import org.hl7.fhir.r4.model.CodeableConcept;
import org.hl7.fhir.r4.model.Coding;
import org.hl7.fhir.r4.model.Composition;
import org.hl7.fhir.r4.model.DateTimeType;
import org.hl7.fhir.r4.model.Provenance;
import org.hl7.fhir.r4.model.Reference;
import tiptoe.exam.ExamRecord;
import tiptoe.exam.Signature;

/** Who stands behind the document: a Provenance, with a signature where it was signed. */
record Signing(FhirDocument document, Reference author, DateTimeType when) {
  private static final String AGENTS =
      "http://terminology.hl7.org/CodeSystem/provenance-participant-type";
  private static final String SIGNATURES = "urn:iso-astm:E1762-95:2013";

  void add(ExamRecord record, Composition composition, String url, boolean altered) {
    Provenance provenance = new Provenance();
    provenance.addTarget(new Reference(url));
    provenance.setRecorded(Date.from(when.getValue().toInstant()));
    provenance.getRecordedElement().setTimeZoneZulu(true);
    provenance
        .addAgent()
        .setType(new CodeableConcept(new Coding(AGENTS, "author", "Author")))
        .setWho(author.copy());
    if (!altered) {
      // A name that anybody could give attests; only a key signs.
      for (int number = 0; number < record.signatures().size(); number++) {
        attest(composition, record.signatures().get(number), document.signer(number));
      }
      record.signatures().stream()
          .filter(Signature::isKeyed)
          .forEach(one -> provenance.addSignature(signature(one)));
    }
    document.add("provenance", provenance);
  }

  private static void attest(Composition composition, Signature one, Reference signer) {
    Composition.CompositionAttesterComponent attester = composition.addAttester();
    attester.setMode(Composition.CompositionAttestationMode.PERSONAL);
    attester.setTimeElement(FhirDocument.moment(one.at()));
    attester.setParty(signer.setDisplay(who(one)));
  }

  private static String who(Signature one) {
    return one.name() + ", " + one.role();
  }

  // Each addendum is signed by itself, maybe by another: who is named beside each signature.
  private static org.hl7.fhir.r4.model.Signature signature(Signature signed) {
    var signature = new org.hl7.fhir.r4.model.Signature();
    signature.addType(new Coding(SIGNATURES, "1.2.840.10065.1.12.1.1", "Author's Signature"));
    signature.setWhen(Date.from(signed.at()));
    signature.getWhenElement().setTimeZoneZulu(true);
    signature.setWho(new Reference().setDisplay(who(signed)));
    // A JSON Web Signature (RFC 7515) over what the record and its sound were, and by whom.
    signature.setTargetFormat("application/json");
    signature.setSigFormat("application/jose");
    signature.setData(signed.jws().getBytes(StandardCharsets.US_ASCII));
    return signature;
  }
}
