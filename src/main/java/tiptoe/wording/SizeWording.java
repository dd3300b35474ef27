package tiptoe.wording;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import tiptoe.clinical.Size;
import tiptoe.protocol.Protocol;

/** Measurements with their centiles, for people. */
public final class SizeWording {
  private SizeWording() {}

  /** A line for each measurement; a remark on all of them is said once, at the end. */
  static List<String> of(List<Size> sizes, Protocol protocol) {
    boolean oneRemark =
        sizes.size() > 1 && sizes.stream().map(Size::remarks).distinct().count() == 1;
    List<String> lines = new ArrayList<>();
    for (Size size : sizes) {
      String name = protocol.step(size.step()).label();
      lines.add(name + places(size) + (oneRemark ? "" : remarks(" — ", size)));
    }
    if (oneRemark && !sizes.get(0).remarks().isEmpty()) {
      lines.add(remarks("", sizes.get(0)));
    }
    return lines;
  }

  private static String places(Size size) {
    String places =
        size.against().stream()
            .map(
                place ->
                    place.centileText()
                        + " centile, z "
                        + z(place.z())
                        + " ("
                        + standard(place.standard())
                        + ")")
            .collect(Collectors.joining("; "));
    return places.isEmpty() ? "" : ": " + places;
  }

  private static String standard(String id) {
    return id.equals("intergrowth-21st") ? "INTERGROWTH-21st" : id.toUpperCase(Locale.ROOT);
  }

  private static String remarks(String before, Size size) {
    return size.remarks().isEmpty() ? "" : before + String.join("; ", size.remarks());
  }

  private static String z(double z) {
    return BigDecimal.valueOf(z)
        .setScale(2, RoundingMode.HALF_UP)
        .toPlainString()
        .replace('-', '−');
  }
}
