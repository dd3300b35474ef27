package tiptoe.measure;

import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Collection;
import java.util.Collections;
import java.util.List;

/** The figures as JSON: one object a recording and condition, and one for the summary. */
public final class MeasureJson {
  private static final ObjectMapper JSON = new ObjectMapper();

  private MeasureJson() {}

  /** What came out of one recording; nothing in it depends on the machine but {@code busy}. */
  public static ObjectNode of(Score score) {
    ObjectNode node = JSON.createObjectNode();
    node.put("file", score.file().toString());
    node.put("condition", score.condition().name());
    if (score.noise() != null) {
      node.put("noise", score.noise().getFileName().toString());
    }
    node.put("seconds", rounded(score.seconds()));
    node.put("text", score.text());
    if (!score.words().isEmpty()) {
      node.put("lines", score.words().size());
      node.put("exact", Collections.frequency(score.words(), Alignment.Outcome.RIGHT));
      node.put("understood", Collections.frequency(score.meaning(), Alignment.Outcome.RIGHT));
      node.put("wrong", Collections.frequency(score.meaning(), Alignment.Outcome.WRONG));
      node.put("missed", Collections.frequency(score.meaning(), Alignment.Outcome.MISSED));
    }
    node.put("expected", score.expected().size());
    node.put("right", score.right().size());
    list(node, "false-answers", score.wrong());
    list(node, "missing-answers", score.missing());
    list(node, "not-covered", score.notCovered());
    ArrayNode heard = node.putArray("utterances");
    score.heard().forEach(one -> heard.add(of(one)));
    node.put("busy", rounded(score.busySeconds()));
    return node;
  }

  /** Why a recording has no score. */
  public static ObjectNode of(MeasureRun.Done failed) {
    return JSON.createObjectNode()
        .put("file", failed.task().file().toString())
        .put("condition", failed.task().condition().name())
        .put("problem", failed.problem());
  }

  public static ObjectNode summary(List<Figures> rows) {
    ObjectNode node = JSON.createObjectNode();
    ArrayNode summary = node.putArray("summary");
    rows.forEach(row -> summary.add(of(row)));
    return node;
  }

  private static ObjectNode of(Figures row) {
    ObjectNode node = JSON.createObjectNode();
    node.put("set", row.set()).put("condition", row.condition().name());
    node.put("files", row.files()).put("hours", rounded(row.hours()));
    node.put("lines", row.lines()).put("exact", row.exact());
    node.put("understood", row.understood()).put("wrong", row.wrong()).put("missed", row.missed());
    node.put("expected", row.expected()).put("found", row.found());
    node.put("false-answers", row.falseAnswers());
    node.put("false-answers-per-hour", rounded(row.perHour(row.falseAnswers())));
    node.put("precision", rounded(row.precision()));
    node.put("recall", rounded(row.recall()));
    node.put("f1", rounded(row.f1()));
    node.put("accepted", row.accepted()).put("commands", row.commands());
    node.put("accepted-per-hour", rounded(row.perHour(row.accepted())));
    node.put("unsure", row.unsure());
    node.put("unsure-per-hour", rounded(row.perHour(row.unsure())));
    node.put("ignored", row.ignored());
    node.put("real-time-factor", rounded(row.realTimeFactor()));
    node.put("timed", row.latencies().size());
    node.put("latency-p50", rounded(row.latency(0.5)));
    node.put("latency-p95", rounded(row.latency(0.95)));
    return node;
  }

  private static ObjectNode of(TimedUtterance heard) {
    ObjectNode node = JSON.createObjectNode();
    node.put("start", rounded(heard.start())).put("end", rounded(heard.end()));
    node.put("text", heard.text()).put("outcome", heard.outcome().id());
    if (!heard.reason().isEmpty()) {
      node.put("reason", heard.reason());
    }
    node.put("at", rounded(heard.at()));
    list(node, "meant", heard.meant().stream().map(ComparableMeaning::text).toList());
    return node;
  }

  private static void list(ObjectNode node, String name, Collection<?> items) {
    if (!items.isEmpty()) {
      ArrayNode list = node.putArray(name);
      items.forEach(item -> list.add(item.toString()));
    }
  }

  /** Null where nothing tells the figure. */
  private static BigDecimal rounded(double number) {
    return Double.isFinite(number)
        ? BigDecimal.valueOf(number).setScale(4, RoundingMode.HALF_UP)
        : null;
  }
}
