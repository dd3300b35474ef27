package tiptoe.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import picocli.AutoComplete;

/** The completion in a real bash, as the package brings it. */
class CompletionTest {
  @TempDir private Path folder;

  private String completed(String words, int at) throws IOException, InterruptedException {
    Path script = folder.resolve("completion");
    Files.writeString(
        script,
        AutoComplete.bash("tiptoe", Tiptoe.commandLine())
            + Files.readString(Path.of("src/dist/records-completion.sh"))
            + "\ncompopt() { :; }\nCOMP_WORDS=("
            + words
            + ")\nCOMP_CWORD="
            + at
            + "\n_tiptoe_with_records\necho ${COMPREPLY[@]}\n");
    Process bash =
        new ProcessBuilder("bash", "--norc", script.toString()).redirectErrorStream(true).start();
    String said = new String(bash.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    assertEquals(0, bash.waitFor(), said);
    return said.strip();
  }

  @Test
  void recordsAndOptionsAreOffered() throws IOException, InterruptedException {
    assumeTrue(Files.isExecutable(Path.of("/bin/bash")), "no bash here");
    Files.createDirectories(folder.resolve("examinations/2026-03-01-0900-k3f9"));
    Files.createDirectories(folder.resolve("examinations/2025-12-24-1800-b7rd"));
    String data = "--data " + folder;
    assertEquals("2026-03-01-0900-k3f9", completed("tiptoe exam " + data + " --continue 2026", 5));
    assertEquals(
        "last 2025-12-24-1800-b7rd 2026-03-01-0900-k3f9",
        completed("tiptoe records " + data + " --remove ''", 5));
    assertEquals("last", completed("tiptoe review la", 2));
    assertEquals("--from", completed("tiptoe exam --fr", 2));
    assertEquals("review", completed("tiptoe revi", 1));
  }
}
