package tiptoe;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.File;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.SortedSet;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.Test;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;

/** What the program brings along is listed with its licence, and the build is pinned. */
class ThirdPartyTest {
  private static final Pattern ROW =
      Pattern.compile("\\| [^|: ]+:(?<name>\\S+) \\| (?<version>\\S+) \\| (?<licence>.+) \\|");

  @Test
  void everyLibraryIsListedWithItsLicenceAndNoOther() throws IOException {
    SortedSet<String> listed = new TreeSet<>();
    for (String line : Files.readAllLines(Path.of("THIRD-PARTY.md"))) {
      Matcher row = ROW.matcher(line);
      if (row.matches()) {
        listed.add(row.group("name") + "-" + row.group("version") + ".jar");
      }
    }
    SortedSet<String> brought = new TreeSet<>();
    String classPath = Files.readString(Path.of("target/libraries.txt")).strip();
    for (String library : classPath.split(File.pathSeparator)) {
      brought.add(Path.of(library).getFileName().toString());
    }
    assertEquals(brought, listed);
  }

  @Test
  void everyPluginOfTheBuildHasOneVersion() throws Exception {
    NodeList plugins =
        DocumentBuilderFactory.newInstance()
            .newDocumentBuilder()
            .parse(Path.of("pom.xml").toFile())
            .getElementsByTagName("plugin");
    TreeSet<String> named = new TreeSet<>();
    TreeSet<String> pinned = new TreeSet<>();
    for (int i = 0; i < plugins.getLength(); i++) {
      Element plugin = (Element) plugins.item(i);
      String name = plugin.getElementsByTagName("artifactId").item(0).getTextContent();
      named.add(name);
      NodeList version = plugin.getElementsByTagName("version");
      if (version.getLength() > 0 && version.item(0).getParentNode() == plugin) {
        assertTrue(version.item(0).getTextContent().matches("[0-9][0-9A-Za-z.-]*"), name);
        pinned.add(name);
      }
    }
    assertTrue(named.size() > 10);
    assertEquals(named, pinned);
  }
}
