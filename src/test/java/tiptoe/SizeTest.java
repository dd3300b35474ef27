package tiptoe;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.sun.source.tree.CompilationUnitTree;
import com.sun.source.tree.MethodTree;
import com.sun.source.tree.Tree;
import com.sun.source.util.JavacTask;
import com.sun.source.util.SourcePositions;
import com.sun.source.util.TreeScanner;
import com.sun.source.util.Trees;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import javax.tools.JavaCompiler;
import javax.tools.StandardJavaFileManager;
import javax.tools.ToolProvider;
import org.junit.jupiter.api.Test;

/** What outgrows a screen or two is split along what it knows; there is no exception. */
class SizeTest {
  private static final int LINES_OF_A_CLASS = 300;
  private static final int LINES_OF_A_METHOD = 40;

  @Test
  void noClassIsLongerThanCanBeReadAtOneSitting() throws IOException {
    List<String> tooLong = new ArrayList<>();
    for (Path source : sources()) {
      long lines = Files.readAllLines(source).size();
      if (lines > LINES_OF_A_CLASS) {
        tooLong.add(source.getFileName() + ": " + lines + " lines");
      }
    }
    assertEquals(List.of(), tooLong);
  }

  @Test
  void noMethodIsLongerThanAScreen() throws IOException {
    List<Method> methods = methods();
    assertTrue(methods.stream().anyMatch(method -> method.lines() > 1), "no method was read");
    assertEquals(
        List.of(), methods.stream().filter(method -> method.lines() > LINES_OF_A_METHOD).toList());
  }

  private record Method(String file, String name, long lines) {}

  private static List<Path> sources() throws IOException {
    try (Stream<Path> files = Files.walk(Path.of("src/main/java"))) {
      return files.filter(file -> file.toString().endsWith(".java")).toList();
    }
  }

  private static List<Method> methods() throws IOException {
    JavaCompiler compiler = ToolProvider.getSystemJavaCompiler();
    List<Method> methods = new ArrayList<>();
    try (StandardJavaFileManager files = compiler.getStandardFileManager(null, null, null)) {
      JavacTask task =
          (JavacTask)
              compiler.getTask(
                  null,
                  files,
                  null,
                  List.of("-proc:none"),
                  null,
                  files.getJavaFileObjectsFromPaths(sources()));
      SourcePositions positions = Trees.instance(task).getSourcePositions();
      for (CompilationUnitTree unit : task.parse()) {
        new TreeScanner<Void, Void>() {
          @Override
          public Void visitMethod(MethodTree method, Void nothing) {
            methods.add(
                new Method(
                    Path.of(unit.getSourceFile().getName()).getFileName().toString(),
                    method.getName().toString(),
                    lines(unit, positions, method)));
            return super.visitMethod(method, nothing);
          }
        }.scan(unit, null);
      }
    }
    return methods;
  }

  private static long lines(CompilationUnitTree unit, SourcePositions positions, Tree tree) {
    long first = unit.getLineMap().getLineNumber(positions.getStartPosition(unit, tree));
    long last = unit.getLineMap().getLineNumber(positions.getEndPosition(unit, tree));
    return last - first + 1;
  }
}
