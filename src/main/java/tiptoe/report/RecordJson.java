package tiptoe.report;

import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.List;
import java.util.Map;
import tiptoe.clinical.Assessment;
import tiptoe.exam.Answer;
import tiptoe.exam.Asked;
import tiptoe.exam.Contradiction;
import tiptoe.exam.ExamRecord;
import tiptoe.exam.MissingDetail;
import tiptoe.exam.RecordedFinding;
import tiptoe.exam.Remark;
import tiptoe.exam.Slot;
import tiptoe.exam.Utterance;
import tiptoe.finding.Finding;
import tiptoe.finding.Outcome;
import tiptoe.finding.Quantity;
import tiptoe.language.Meaning;
import tiptoe.protocol.Side;

/** Writes a record in the JSON that other programs read; see {@code record.schema.json}. */
public final class RecordJson {
  private static final ObjectMapper JSON = new ObjectMapper();

  private RecordJson() {}

  /** The answers of a record and how they came about. */
  public static ObjectNode of(ExamRecord record, Assessment assessment) {
    ObjectNode root = JSON.createObjectNode();
    ArrayNode utterances = root.putArray("utterances");
    record.utterances().forEach(utterance -> utterances.add(utterance(record, utterance)));
    ObjectNode context = root.putObject("context");
    record.baby().facts().forEach(context::put);
    ObjectNode identity = root.putObject("identity");
    record.baby().identity(record.protocol()).forEach(identity::put);
    ArrayNode answers = root.putArray("answers");
    record.answers().forEach(answer -> answers.add(answer(answer)));
    ArrayNode missing = root.putArray("missing");
    record.missing().forEach(slot -> missing.add(missing(record, slot)));
    record.missingDetails().forEach(detail -> missing.add(detail(detail)));
    assessment.missing().stream()
        .filter(needed -> !listed(record, needed))
        .forEach(needed -> missing.add(JSON.valueToTree(needed)));
    ArrayNode questions = root.putArray("questions");
    record.openQuestions().forEach(asked -> questions.add(question(asked)));
    ArrayNode contradictions = root.putArray("contradictions");
    record.contradictions().forEach(one -> contradictions.add(contradiction(one)));
    if (!record.remarks().isEmpty()) {
      ArrayNode remarks = root.putArray("remarks");
      record.remarks().forEach(remark -> remarks.add(remark(remark)));
    }
    root.set("flags", JSON.valueToTree(assessment.flags()));
    root.set("sizes", JSON.valueToTree(assessment.sizes()));
    root.set("results", JSON.valueToTree(assessment.results()));
    root.set("plan", JSON.valueToTree(assessment.plan()));
    root.set("needs", JSON.valueToTree(assessment.needs()));
    root.set("rule-sets", JSON.valueToTree(assessment.ruleSets()));
    root.put("caution", assessment.caution());
    return root;
  }

  private static boolean listed(ExamRecord record, tiptoe.clinical.MissingItem needed) {
    return record.missingDetails().stream()
            .anyMatch(
                known ->
                    known.slot().step().equals(needed.step())
                        && known.detail().equals(needed.detail()))
        || needed.detail() == null
            && record.missing().stream().anyMatch(slot -> slot.step().equals(needed.step()));
  }

  private static ObjectNode utterance(ExamRecord record, Utterance utterance) {
    ObjectNode node = JSON.createObjectNode();
    node.put("start", seconds(utterance.heard().start()));
    node.put("end", seconds(utterance.heard().end()));
    node.put("text", utterance.heard().text());
    node.put("outcome", utterance.heard().outcome().id());
    String reason = utterance.heard().reason();
    if (reason != null && !reason.isBlank()) {
      node.put("reason", reason);
    }
    ArrayNode statements = node.putArray("statements");
    if (utterance.heard().outcome() == Outcome.UNSURE) {
      utterance.candidates().stream()
          .map(Meaning.States::statement)
          .forEach(statement -> statements.add(statement(statement)));
    } else {
      record.statements().stream()
          .filter(said -> Integer.valueOf(utterance.number()).equals(said.utterance()))
          .map(RecordedFinding::statement)
          .forEach(statement -> statements.add(statement(statement)));
    }
    return node;
  }

  private static ObjectNode remark(Remark remark) {
    ObjectNode node = JSON.createObjectNode();
    node.put("start", seconds(remark.start()));
    node.put("end", seconds(remark.end()));
    node.put("text", remark.text());
    if (!remark.heard().equals(remark.text())) {
      node.put("heard", remark.heard());
    }
    if (!remark.repairs().isEmpty()) {
      ArrayNode repaired = node.putArray("repaired");
      remark.repairs().forEach(repair -> repaired.add(JSON.valueToTree(repair)));
    }
    if (remark.author() != null) {
      node.put("author", remark.author());
    }
    return node;
  }

  private static ObjectNode statement(Finding said) {
    ObjectNode node = place(said.step(), said.side());
    what(node, said.value(), said.quantity(), said.details(), said.denied());
    if (said.group()) {
      node.put("group", true);
    }
    return node.put("source", said.source().id());
  }

  private static ObjectNode answer(Answer answer) {
    ObjectNode node = place(answer.step(), answer.side());
    what(node, answer.value(), answer.quantity(), answer.details(), answer.denied());
    if (answer.group()) {
      node.put("group", true);
    }
    return node;
  }

  private static ObjectNode place(String step, Side side) {
    ObjectNode node = JSON.createObjectNode();
    node.put("step", step);
    if (side != null) {
      node.put("side", side.id());
    }
    return node;
  }

  private static void what(
      ObjectNode node,
      String value,
      Quantity quantity,
      Map<String, String> details,
      List<String> denied) {
    if (value != null) {
      node.put("value", value);
    }
    if (quantity != null) {
      node.put("number", number(quantity.number()));
      node.put("unit", quantity.unit());
    }
    if (!details.isEmpty()) {
      ObjectNode beside = node.putObject("details");
      details.forEach(beside::put);
    }
    if (!denied.isEmpty()) {
      ArrayNode list = node.putArray("denied");
      denied.forEach(list::add);
    }
  }

  private static BigDecimal number(double number) {
    return new BigDecimal(BigDecimal.valueOf(number).stripTrailingZeros().toPlainString());
  }

  private static BigDecimal seconds(double seconds) {
    return BigDecimal.valueOf(seconds).setScale(2, RoundingMode.HALF_UP);
  }

  private static ObjectNode slot(Slot slot) {
    return place(slot.step(), slot.side());
  }

  private static ObjectNode missing(ExamRecord record, Slot slot) {
    String reason = record.deferred().get(slot);
    ObjectNode node = slot(slot);
    return reason == null
        ? node
        : node.put("deferred", reason.isEmpty() ? "no reason given" : reason);
  }

  private static ObjectNode detail(MissingDetail missing) {
    return slot(missing.slot()).put("detail", missing.detail());
  }

  private static ObjectNode question(Asked asked) {
    ObjectNode node = JSON.createObjectNode();
    node.put("kind", asked.question().kind().id());
    Finding about = asked.question().about();
    if (about != null) {
      node.setAll(place(about.step(), about.side()));
      what(node, about.value(), about.quantity(), Map.of(), List.of());
    }
    if (asked.question().detail() != null) {
      node.put("detail", asked.question().detail());
    }
    return node.put("text", asked.question().text());
  }

  private static ObjectNode contradiction(Contradiction contradiction) {
    ObjectNode node = JSON.createObjectNode();
    node.put("text", contradiction.text());
    if (contradiction.older() != null) {
      node.set("older", said(contradiction.older()));
    }
    if (contradiction.newer() != null) {
      node.set("newer", said(contradiction.newer()));
    }
    return node;
  }

  private static ObjectNode said(RecordedFinding said) {
    ObjectNode node = statement(said.statement());
    node.put("words", said.words());
    if (said.start() != null) {
      node.put("start", seconds(said.start()));
    }
    return node;
  }
}
