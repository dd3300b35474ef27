package tiptoe.report;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import java.util.Locale;
import tiptoe.exam.ExamRecord;
import tiptoe.exam.RecordedFinding;
import tiptoe.exam.journal.EventLines;
import tiptoe.exam.journal.Integrity;
import tiptoe.exam.journal.StoredExam;

/** Adds to the JSON of a record what only one that was kept has: how it came to be. */
public final class HistoryJson {
  private HistoryJson() {}

  /** Adds it to the object that {@link RecordJson} made. */
  public static void addTo(ObjectNode root, StoredExam stored, Integrity integrity) {
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
  }

  private static void put(ObjectNode root, String name, List<?> items) {
    root.set(name, EventLines.json().valueToTree(items));
  }

  private static ObjectNode said(RecordedFinding said) {
    ObjectNode node = EventLines.json().valueToTree(said);
    node.put("status", said.status().id());
    return node;
  }
}
