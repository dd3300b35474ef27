package tiptoe.report;

import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.annotation.JsonInclude.Include;
import com.fasterxml.jackson.annotation.JsonUnwrapped;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.cfg.JsonNodeFeature;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.function.Function;
import tiptoe.clinical.Assessment;
import tiptoe.exam.Answer;
import tiptoe.exam.Asked;
import tiptoe.exam.Contradiction;
import tiptoe.exam.ExamRecord;
import tiptoe.exam.Handover;
import tiptoe.exam.RecordedFinding;
import tiptoe.exam.Repair;
import tiptoe.exam.Slot;
import tiptoe.exam.Stated;
import tiptoe.exam.Utterance;
import tiptoe.exam.journal.EventLines;
import tiptoe.exam.journal.Integrity;
import tiptoe.exam.journal.StoredExam;
import tiptoe.finding.Bound;
import tiptoe.finding.Finding;
import tiptoe.finding.Outcome;
import tiptoe.finding.Quantity;
import tiptoe.finding.Question;
import tiptoe.finding.Source;
import tiptoe.protocol.Side;
import tiptoe.wording.UtteranceWording;

/** Writes a record in the JSON that other programs read; see {@code record.schema.json}. */
public final class RecordJson {
  private static final ObjectMapper JSON =
      JsonMapper.builder().disable(JsonNodeFeature.STRIP_TRAILING_BIGDECIMAL_ZEROES).build();

  private RecordJson() {}

  /** The answers of a record and how they came about. */
  public static ObjectNode of(ExamRecord record, Assessment assessment) {
    ObjectNode root = JSON.createObjectNode();
    root.set("utterances", list(record.utterances(), heard -> Heard.of(record, heard)));
    root.set("context", tree(record.baby().facts()));
    root.set("identity", tree(record.baby().identity(record.protocol())));
    root.set("answers", list(record.answers(), answer -> Said.of(answer, record, assessment)));
    root.set("missing", tree(missing(record, assessment)));
    root.set("questions", list(record.openQuestions(), Asking::of));
    root.set("contradictions", list(record.contradictions(), Contradicting::of));
    if (!record.remarks().isEmpty()) {
      root.set("remarks", list(record.remarks(), Remark::of));
    }
    root.set("flags", tree(assessment.flags()));
    root.set("sizes", tree(assessment.sizes()));
    root.set("results", tree(assessment.results()));
    root.set("plan", tree(assessment.plan()));
    root.set("programme", tree(assessment.programme()));
    root.set("handover", list(Handover.of(record).stated().values(), HandedOn::of));
    root.set("needs", tree(assessment.needs()));
    root.set("rule-sets", tree(assessment.ruleSets()));
    root.put("caution", assessment.caution());
    return root;
  }

  /** The same of one that was kept, with how it came to be. */
  public static ObjectNode of(StoredExam stored, Integrity integrity, Assessment assessment) {
    ObjectNode root = of(stored.record(), assessment);
    ExamRecord record = stored.record();
    ObjectNode exam = root.putObject("examination");
    exam.put("id", stored.folder().name());
    record.label().ifPresent(label -> exam.put("label", label));
    if (record.opened() != null) {
      exam.put("protocol", record.opened().protocol()).put("tool", record.opened().tool());
    }
    record.entries().stream()
        .findFirst()
        .ifPresent(entry -> exam.put("opened", entry.at().toString()));
    exam.put("phase", record.phase().id());
    exam.put("writing", stored.taken());
    exam.put("entries", record.entries().size());
    ArrayNode history = root.putArray("history");
    record.statements().forEach(said -> history.add(said(said)));
    put(root, "remarks", record.remarks());
    put(root, "gaps", record.gaps());
    put(root, "notes", record.notes());
    put(root, "flag-history", record.flags());
    put(root, "signatures", record.signatures());
    put(root, "breaks", stored.breaks());
    exam.put("integrity", integrity.state().name().toLowerCase(Locale.ROOT));
    if (integrity.isAltered()) {
      root.put("altered", integrity.banner(record));
      root.remove("signatures");
    }
    return root;
  }

  private static void put(ObjectNode root, String name, List<?> items) {
    root.set(name, EventLines.json().valueToTree(items));
  }

  private static ObjectNode said(RecordedFinding said) {
    ObjectNode node = EventLines.json().valueToTree(said);
    node.put("status", said.status().id());
    return node;
  }

  private static JsonNode tree(Object value) {
    return JSON.valueToTree(value);
  }

  private static <T> JsonNode list(Collection<T> all, Function<T, Object> form) {
    return tree(all.stream().map(form).toList());
  }

  private static List<Object> missing(ExamRecord record, Assessment assessment) {
    List<Object> missing = new ArrayList<>();
    record.missing().forEach(slot -> missing.add(Missing.of(record, slot)));
    record
        .missingDetails()
        .forEach(one -> missing.add(new Missing(one.slot(), null, one.detail())));
    missing.addAll(assessment.missingBeside(record));
    return missing;
  }

  private static BigDecimal seconds(double seconds) {
    return BigDecimal.valueOf(seconds).setScale(2, RoundingMode.HALF_UP);
  }

  @JsonInclude(Include.NON_NULL)
  private record HandedOn(String fact, String value, String at, String by) {
    static HandedOn of(Stated one) {
      return new HandedOn(
          one.fact(), one.value(), one.at() == null ? null : one.at().toString(), one.by());
    }
  }

  @JsonInclude(Include.NON_NULL)
  private record Heard(
      BigDecimal start,
      BigDecimal end,
      String text,
      Outcome outcome,
      String reason,
      List<Said> statements) {
    static Heard of(ExamRecord record, Utterance utterance) {
      tiptoe.exam.Heard heard = utterance.heard();
      return new Heard(
          seconds(heard.start()),
          seconds(heard.end()),
          heard.text(),
          heard.outcome(),
          heard.reason() == null || heard.reason().isBlank() ? null : heard.reason(),
          UtteranceWording.statements(record, utterance).stream()
              .map(said -> Said.of(said, said.source()))
              .toList());
    }
  }

  /** A finding; of a contradiction with the words it was said in and when. */
  @JsonInclude(Include.NON_NULL)
  private record Said(
      String step,
      Side side,
      String value,
      BigDecimal number,
      String unit,
      Bound comparator,
      @JsonInclude(Include.NON_EMPTY) Map<String, String> details,
      @JsonInclude(Include.NON_EMPTY) List<String> denied,
      Boolean group,
      Source source,
      String words,
      BigDecimal start,
      BigDecimal age) {
    static Said of(Answer answer, ExamRecord record, Assessment assessment) {
      BigDecimal age = record.statement(answer.statement()).flatMap(assessment::age).orElse(null);
      return of(answer.finding(), null, null, null, age);
    }

    static Said of(Finding said, Source source) {
      return of(said, source, null, null, null);
    }

    static Said of(RecordedFinding said) {
      return said == null
          ? null
          : of(said.statement(), said.statement().source(), said.words(), said.start(), null);
    }

    private static Said of(
        Finding said, Source source, String words, Double start, BigDecimal age) {
      Quantity quantity = said.quantity();
      return new Said(
          said.step(),
          said.side(),
          said.value(),
          quantity == null ? null : new BigDecimal(quantity.text()),
          quantity == null ? null : quantity.unit(),
          quantity == null ? null : quantity.comparator(),
          said.details(),
          said.denied(),
          said.group() ? true : null,
          source,
          words,
          start == null ? null : seconds(start),
          age);
    }
  }

  @JsonInclude(Include.NON_NULL)
  private record Missing(@JsonUnwrapped Slot slot, String deferred, String detail) {
    static Missing of(ExamRecord record, Slot slot) {
      String reason = record.deferred().get(slot);
      return new Missing(slot, "".equals(reason) ? "no reason given" : reason, null);
    }
  }

  @JsonInclude(Include.NON_NULL)
  private record Asking(Question.Kind kind, @JsonUnwrapped Said about, String detail, String text) {
    static Asking of(Asked asked) {
      Question question = asked.question();
      Said about = question.about() == null ? null : Said.of(question.about().bare(), null);
      return new Asking(question.kind(), about, question.detail(), question.text());
    }
  }

  @JsonInclude(Include.NON_NULL)
  private record Contradicting(String text, Said older, Said newer) {
    static Contradicting of(Contradiction one) {
      return new Contradicting(one.text(), Said.of(one.older()), Said.of(one.newer()));
    }
  }

  @JsonInclude(Include.NON_NULL)
  private record Remark(
      BigDecimal start,
      BigDecimal end,
      String text,
      String heard,
      @JsonInclude(Include.NON_EMPTY) List<Repair> repaired,
      String author) {
    static Remark of(tiptoe.exam.Remark remark) {
      return new Remark(
          seconds(remark.start()),
          seconds(remark.end()),
          remark.text(),
          remark.heard().equals(remark.text()) ? null : remark.heard(),
          remark.repairs(),
          remark.author());
    }
  }
}
