package tiptoe.measure;

import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.function.Predicate;
import tiptoe.measure.Agreement.Judged;
import tiptoe.measure.Agreement.Sort;
import tiptoe.protocol.Protocol;
import tiptoe.protocol.Region;
import tiptoe.protocol.Step;

/** How often reviewers found it right: of all, by region and by step. */
public final class AgreementTable {
  private static final String FORM = "%-30s %16s %16s %16s%n";

  /**
   * A row.
   *
   * @param region null for all
   * @param step null for the whole region
   */
  private record Row(String region, String step, String name, List<Judged> judged) {
    long of(Sort sort) {
      return judged.stream().filter(one -> one.sort() == sort).count();
    }

    long right(Sort sort) {
      return judged.stream().filter(one -> one.sort() == sort && one.right()).count();
    }

    String cell(Sort sort) {
      return Quality.share(right(sort), of(sort));
    }
  }

  private final int records;
  private final List<Row> rows = new ArrayList<>();

  private AgreementTable(int records) {
    this.records = records;
  }

  /**
   * Adds up what reviewers judged.
   *
   * @param records how many signed records it is from
   */
  public static AgreementTable of(Protocol protocol, int records, List<Judged> judged) {
    AgreementTable table = new AgreementTable(records);
    table.add(null, null, "all", judged, one -> true);
    for (Region region : protocol.regions()) {
      table.add(region.id(), null, region.id(), judged, one -> region.id().equals(one.region()));
      for (Step step : region.steps()) {
        table.add(
            region.id(), step.id(), "  " + step.id(), judged, one -> step.id().equals(one.step()));
      }
    }
    table.add("none", null, "no region yet", judged, one -> Objects.isNull(one.region()));
    return table;
  }

  private void add(
      String region, String step, String name, List<Judged> judged, Predicate<Judged> takes) {
    List<Judged> taken = judged.stream().filter(takes).toList();
    if (!taken.isEmpty() || region == null) {
      rows.add(new Row(region, step, name, taken));
    }
  }

  public String text() {
    StringBuilder text = new StringBuilder();
    text.append(
        "%d signed record%s; right, as the reviewer left them%n"
            .formatted(records, records == 1 ? "" : "s"));
    text.append(FORM.formatted("", "accepted", "unsure", "ignored"));
    for (Row row : rows) {
      text.append(
          FORM.formatted(
              row.name(), row.cell(Sort.ACCEPTED), row.cell(Sort.UNSURE), row.cell(Sort.IGNORED)));
    }
    return text.toString();
  }

  /** One object a region or step, and one for the summary at the end. */
  public List<ObjectNode> json() {
    List<ObjectNode> lines = new ArrayList<>();
    rows.subList(1, rows.size()).forEach(row -> lines.add(json(row)));
    ObjectNode all = json(rows.get(0));
    all.put("records", records);
    ObjectNode last = new ObjectMapper().createObjectNode();
    last.set("summary", all);
    lines.add(last);
    return lines;
  }

  private static ObjectNode json(Row row) {
    ObjectNode node = new ObjectMapper().createObjectNode();
    if (row.region() != null) {
      node.put("region", row.region());
    }
    if (row.step() != null) {
      node.put("step", row.step());
    }
    for (Sort sort : Sort.values()) {
      node.putObject(sort.name().toLowerCase(Locale.ROOT))
          .put("right", row.right(sort))
          .put("of", row.of(sort));
    }
    return node;
  }
}
