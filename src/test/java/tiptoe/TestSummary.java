package tiptoe;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.stream.Stream;
import javax.xml.parsers.DocumentBuilder;
import javax.xml.parsers.DocumentBuilderFactory;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;

/**
 * Prints how many tests ran and which were skipped and why, since {@code mvn -q} prints neither.
 * Needs nothing but the platform: {@code java TestSummary.java target/surefire-reports}.
 */
final class TestSummary {
  private static final List<String> COUNTS = List.of("tests", "failures", "errors", "skipped");

  private TestSummary() {}

  /**
   * @param args the folder of Surefire's reports; where it is absent, no test ran
   */
  public static void main(String... args) throws Exception {
    Path folder = Path.of(args[0]);
    if (!Files.isDirectory(folder)) {
      System.out.println("Tests run: none");
      return;
    }
    DocumentBuilder parser = DocumentBuilderFactory.newInstance().newDocumentBuilder();
    int[] sums = new int[COUNTS.size()];
    SortedMap<String, Integer> skips = new TreeMap<>();
    for (Path report : reports(folder)) {
      Element suite = parser.parse(report.toFile()).getDocumentElement();
      for (int i = 0; i < sums.length; i++) {
        sums[i] += Integer.parseInt(suite.getAttribute(COUNTS.get(i)));
      }
      NodeList skipped = suite.getElementsByTagName("skipped");
      for (int i = 0; i < skipped.getLength(); i++) {
        Element skip = (Element) skipped.item(i);
        skips.merge(
            suite.getAttribute("name") + ": " + skip.getAttribute("message"), 1, Integer::sum);
      }
    }
    skips.forEach((skip, count) -> System.out.println("Skipped: " + count + " of " + skip));
    System.out.printf(
        "Tests run: %d, Failures: %d, Errors: %d, Skipped: %d%n",
        sums[0], sums[1], sums[2], sums[3]);
  }

  private static List<Path> reports(Path folder) throws IOException {
    try (Stream<Path> files = Files.list(folder)) {
      return files
          .filter(file -> file.getFileName().toString().matches("TEST-.*\\.xml"))
          .sorted()
          .toList();
    }
  }
}
