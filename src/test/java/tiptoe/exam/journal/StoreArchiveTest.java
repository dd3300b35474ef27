package tiptoe.exam.journal;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.stream.Stream;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tiptoe.exam.Signer;
import tiptoe.protocol.Protocol;
import tiptoe.wording.QuestionWording;

class StoreArchiveTest {
  private static final char[] SECRET = "correct horse".toCharArray();

  /** Few, since they are no part of what is tested; the file itself says how many. */
  private static final int ITERATIONS = 10;

  @TempDir private Path folder;
  private Path data;
  private Path file;

  private static RecordStore store(Path data) {
    return new RecordStore(data, Protocol.standard(), Clock.systemUTC(), QuestionWording::of);
  }

  private static StoreArchive archive(Path data) {
    return new StoreArchive(data, ITERATIONS);
  }

  @BeforeEach
  void someRecords() throws IOException {
    data = folder.resolve("data");
    file = folder.resolve("all.tiptoe");
    for (String label : List.of("one", "two")) {
      try (OpenExam open = store(data).create(label, "test", null, null)) {
        Path sound = Files.createDirectories(open.folder().audio());
        byte[] noise = new byte[150_000];
        new Random(label.length()).nextBytes(noise);
        Files.write(sound.resolve("noise-" + label + ".wav"), noise);
        if (label.equals("one")) {
          Files.delete(sound.resolve("noise-one.wav"));
          open.sign("Rowan Reed", "registrar", Signer.NAME_ONLY, KeepAudio.ALWAYS);
        }
      }
    }
  }

  private static List<String> tree(Path root) throws IOException {
    try (Stream<Path> paths = Files.walk(root)) {
      return paths
          .filter(Files::isRegularFile)
          .filter(path -> !path.endsWith("lock") && !path.endsWith("reserve"))
          .map(path -> root.relativize(path) + " " + hash(path))
          .sorted()
          .toList();
    }
  }

  private static int hash(Path path) {
    try {
      return Arrays.hashCode(Files.readAllBytes(path));
    } catch (IOException e) {
      throw new AssertionError(e);
    }
  }

  private List<ExamFolder> exams() throws IOException {
    return store(data).list();
  }

  @Test
  void whatComesBackIsWhatWasKept() throws IOException {
    StoreArchive.Outcome written = archive(data).write(file, exams(), SECRET);
    assertEquals(2, written.done().size());
    assertEquals(List.of(), written.left());
    assertFalse(
        new String(Files.readAllBytes(file), StandardCharsets.ISO_8859_1).contains("Rowan Reed"));
    Path elsewhere = folder.resolve("elsewhere");
    StoreArchive.Outcome restored = archive(elsewhere).restore(file, SECRET);
    assertEquals(2, restored.done().size());
    assertEquals(tree(data), tree(elsewhere));
    for (ExamFolder exam : store(elsewhere).list()) {
      assertEquals(List.of(), store(elsewhere).read(exam, null).breaks());
    }
    try (Stream<Path> left = Files.list(elsewhere)) {
      assertTrue(left.noneMatch(path -> path.getFileName().toString().startsWith(".")));
    }
  }

  @Test
  void whatIsHereStaysAsItIs() throws IOException {
    archive(data).write(file, exams(), SECRET);
    List<String> before = tree(data);
    StoreArchive.Outcome again = archive(data).restore(file, SECRET);
    assertEquals(List.of(), again.done());
    assertTrue(again.left().stream().allMatch(one -> one.endsWith("is here already")));
    Path journal = exams().get(0).journal();
    Files.writeString(journal, Files.readString(journal) + "{}\n");
    List<String> changed = tree(data);
    assertTrue(
        archive(data).restore(file, SECRET).left().stream()
            .anyMatch(one -> one.endsWith("is here, and differs")));
    assertEquals(changed, tree(data));
    assertFalse(before.equals(changed));
    byte[] bytes = Files.readAllBytes(file);
    assertThrows(
        FileAlreadyExistsException.class, () -> archive(data).write(file, exams(), SECRET));
    assertArrayEquals(bytes, Files.readAllBytes(file));
  }

  @Test
  void aRecordThatIsBeingWrittenIsLeftOutAndTold() throws IOException {
    List<ExamFolder> exams = exams();
    try (FolderLock held = FolderLock.take(exams.get(0))) {
      StoreArchive.Outcome written = archive(data).write(file, exams, SECRET);
      assertEquals(List.of(exams.get(1).name()), written.done());
      assertTrue(written.left().get(0).startsWith(exams.get(0).name()), written::toString);
      assertTrue(held != null);
    }
  }

  /** Seed 11: each byte of the header and 300 others flipped; cut at 300 places; grown. */
  @Test
  void noChangeAndNoCutEndIsTakenForWhole() throws IOException {
    archive(data).write(file, exams(), SECRET);
    byte[] whole = Files.readAllBytes(file);
    Random random = new Random(11);
    Path target = folder.resolve("target");
    Path broken = folder.resolve("broken");
    for (int turn = 0; turn < 300; turn++) {
      byte[] flipped = whole.clone();
      flipped[turn < 60 ? turn * 5 : random.nextInt(whole.length)] ^=
          (byte) (1 << random.nextInt(8));
      refused(target, broken, flipped, "flip " + turn);
      refused(target, broken, Arrays.copyOf(whole, random.nextInt(whole.length)), "cut " + turn);
    }
    refused(target, broken, Arrays.copyOf(whole, whole.length - 1), "one byte short");
    refused(target, broken, Arrays.copyOf(whole, whole.length + 1), "one byte more");
    refused(target, broken, new byte[0], "empty");
    Files.write(broken, whole);
    IOException wrong =
        assertThrows(
            IOException.class, () -> archive(target).restore(broken, "wrong".toCharArray()));
    assertEquals("the passphrase is wrong", wrong.getMessage());
  }

  private static void refused(Path target, Path broken, byte[] bytes, String how)
      throws IOException {
    Files.write(broken, bytes);
    assertThrows(IOException.class, () -> archive(target).restore(broken, SECRET), how);
    try (Stream<Path> left = Files.list(target)) {
      assertEquals(List.of(), left.toList(), how);
    }
  }

  @Test
  void piecesCannotBeMovedOrLeftOut() throws IOException {
    archive(data).write(file, exams(), SECRET);
    ByteBuffer all = ByteBuffer.wrap(Files.readAllBytes(file));
    while (all.get() != '\n') {}
    int start = all.position();
    int first = 4 + all.getInt(start);
    int second = 4 + all.getInt(start + first);
    byte[] bytes = all.array();
    Path target = folder.resolve("target");
    Path broken = folder.resolve("broken");
    byte[] without = new byte[bytes.length - first];
    System.arraycopy(bytes, 0, without, 0, start);
    System.arraycopy(bytes, start + first, without, start, without.length - start);
    refused(target, broken, without, "without the first");
    byte[] swapped = bytes.clone();
    System.arraycopy(bytes, start + first, swapped, start, second);
    System.arraycopy(bytes, start, swapped, start + second, first);
    refused(target, broken, swapped, "swapped");
  }

  @Test
  void aNameThatLeadsElsewhereIsRefused() throws IOException {
    for (String name :
        List.of(
            "../x", "examinations/../../x", "/etc/x", "examinations/a/b/c", "examinations/a/..")) {
      DataKey key = DataKey.create(SECRET, ITERATIONS);
      ByteArrayOutputStream out = new ByteArrayOutputStream();
      out.write(key.header());
      out.write('\n');
      try (ZipOutputStream zip = new ZipOutputStream(new SealedPieces.Out(out, key))) {
        zip.putNextEntry(new ZipEntry(name));
        zip.write(1);
      }
      refused(folder.resolve("target"), folder.resolve("broken"), out.toByteArray(), name);
    }
    assertFalse(Files.exists(folder.resolve("x")));
  }
}
