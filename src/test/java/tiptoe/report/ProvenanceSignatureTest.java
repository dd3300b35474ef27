package tiptoe.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.ZoneOffset;
import java.util.Map;
import org.hl7.fhir.r4.model.Bundle;
import org.hl7.fhir.r4.model.Provenance;
import org.jose4j.jca.ProviderContext;
import org.jose4j.jwa.AlgorithmConstraints;
import org.jose4j.jwk.JsonWebKey;
import org.jose4j.jwk.OctetKeyPairJsonWebKey;
import org.jose4j.jws.AlgorithmIdentifiers;
import org.jose4j.jws.JsonWebSignature;
import org.jose4j.lang.JoseException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tiptoe.clinical.Assessor;
import tiptoe.exam.ExamRecord;
import tiptoe.exam.Examination;
import tiptoe.exam.SignedStatement;
import tiptoe.exam.journal.SigningKey;
import tiptoe.protocol.Protocol;
import tiptoe.report.fhir.FhirDocument;
import tiptoe.settings.Settings;
import tiptoe.wording.RecordWording;

/** The signature of a FHIR document, checked by a library that knows nothing of Tiptoe: jose4j. */
class ProvenanceSignatureTest {
  private static final AlgorithmConstraints EDDSA =
      new AlgorithmConstraints(
          AlgorithmConstraints.ConstraintType.PERMIT, AlgorithmIdentifiers.EDDSA);

  @TempDir Path folder;

  private static JsonWebSignature read(String compact, SigningKey key) throws Exception {
    JsonWebSignature jws = new JsonWebSignature();
    jws.setAlgorithmConstraints(EDDSA);
    jws.setProviderContext(new ProviderContext());
    jws.setCompactSerialization(compact);
    jws.setKey(SignedStatement.publicKey(key.key()));
    return jws;
  }

  private SigningKey key(String name) throws Exception {
    return SigningKey.create(folder.resolve(name), "Dr Bea Marlow", "quiet boats".toCharArray());
  }

  private static org.hl7.fhir.r4.model.Signature signature(ExamRecord record) {
    RecordWording wording =
        new RecordWording(
            record,
            Assessor.of(Protocol.standard()).assess(record, Settings.DEFAULT, ZoneOffset.UTC),
            Settings.DEFAULT);
    Bundle bundle = FhirDocument.bundle(wording);
    Provenance provenance =
        bundle.getEntry().stream()
            .map(Bundle.BundleEntryComponent::getResource)
            .filter(Provenance.class::isInstance)
            .map(Provenance.class::cast)
            .findFirst()
            .orElseThrow();
    assertEquals(1, provenance.getSignature().size());
    return provenance.getSignature().get(0);
  }

  @Test
  void isAJsonWebSignatureOverTheRecordByTheKeyOfTheSigner() throws Exception {
    SigningKey key = key("key");
    Examination examination = Records.demonstration();
    Map<String, String> sound = Map.of("segment-000001-0000000000.wav", "ab".repeat(32));
    examination.review("Dr Bea \"B\" Marlow").sign("paediatrician", sound, key);
    ExamRecord record = examination.record();
    org.hl7.fhir.r4.model.Signature signature = signature(record);
    assertEquals("application/jose", signature.getSigFormat());

    String compact = new String(signature.getData(), StandardCharsets.US_ASCII);
    JsonWebSignature jws = read(compact, key);
    assertTrue(jws.verifySignature());
    assertEquals(key.fingerprint(), jws.getKeyIdHeaderValue());
    JsonNode signed = new ObjectMapper().readTree(jws.getPayload());
    assertEquals(record.opened().id(), signed.get("record").asText());
    assertEquals("Dr Bea \"B\" Marlow", signed.get("name").asText());
    assertEquals("paediatrician", signed.get("role").asText());
    assertEquals(record.entries().size(), signed.get("sequence").asInt());
    assertEquals("ab".repeat(32), signed.get("sound").elements().next().asText());
    assertEquals(signature.getWhen().toInstant().toString(), signed.get("time").asText());

    assertFalse(read(compact, key("another")).verifySignature());
    String[] parts = compact.split("\\.");
    String payload = parts[1].substring(0, 10) + (parts[1].charAt(10) == 'A' ? 'B' : 'A');
    String changed = parts[0] + "." + payload + parts[1].substring(11) + "." + parts[2];
    assertFalse(read(changed, key).verifySignature());
  }

  /** RFC 8037, appendix A.4: the library itself takes the example of the standard. */
  @Test
  void theLibraryTakesTheExampleOfTheStandardAndNoOther() throws Exception {
    OctetKeyPairJsonWebKey key =
        (OctetKeyPairJsonWebKey)
            JsonWebKey.Factory.newJwk(
                "{\"kty\":\"OKP\",\"crv\":\"Ed25519\","
                    + "\"x\":\"11qYAYKxCrfVS_7TyWQHOg7hcvPapiMlrwIaaPcHURo\"}");
    JsonWebSignature jws = new JsonWebSignature();
    jws.setAlgorithmConstraints(EDDSA);
    jws.setKey(key.getPublicKey());
    jws.setCompactSerialization(
        "eyJhbGciOiJFZERTQSJ9.RXhhbXBsZSBvZiBFZDI1NTE5IHNpZ25pbmc."
            + "hgyY0il_MGCjP0JzlnLWG1PPOt7-09PGcvMg3AIbQR6dWbhijcNR4ki4iylGjg5BhVsPt9g7sVvpAr_MuM0KAg");
    assertTrue(jws.verifySignature());
    JsonWebSignature none = new JsonWebSignature();
    none.setAlgorithmConstraints(EDDSA);
    none.setKey(key.getPublicKey());
    none.setCompactSerialization("eyJhbGciOiJub25lIn0.e30.");
    assertThrows(JoseException.class, none::verifySignature);
  }
}
