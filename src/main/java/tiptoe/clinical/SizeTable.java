package tiptoe.clinical;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import tiptoe.files.Shipped;

/** The parameters of the newborn size standard by measure, sex and day of gestation. */
final class SizeTable {
  private static final String SHIPPED = "newborn-size.csv";

  private final Map<String, SkewT> byKey = new HashMap<>();

  private SizeTable(List<String> lines) {
    List<String[]> shapes = new ArrayList<>();
    for (String line : lines) {
      String[] cells = line.split(",");
      if (cells[0].equals("shape")) {
        shapes.add(cells);
      } else if (cells[0].equals("day")) {
        addDay(shapes, cells);
      }
    }
  }

  static SizeTable shipped() {
    return new SizeTable(Shipped.lines(SizeTable.class, SHIPPED));
  }

  /** The distribution on a day from 231 (33+0) to 300 (42+6). */
  SkewT at(SizeMeasure measure, String sex, int days) {
    return byKey.get(key(measure.step(), sex, days));
  }

  private void addDay(List<String[]> shapes, String[] cells) {
    int days = Integer.parseInt(cells[1]);
    int column = 2;
    for (String[] shape : shapes) {
      double mu = Double.parseDouble(cells[column++]);
      double sigma = Double.parseDouble(cells[column++]);
      double nu = Double.parseDouble(shape[3]);
      double tau = Double.parseDouble(shape[4]);
      byKey.put(key(shape[1], shape[2], days), new SkewT(mu, sigma, nu, tau));
    }
  }

  private static String key(String step, String sex, int days) {
    return step + " " + sex + " " + days;
  }
}
