package gradepost;

import static org.assertj.core.api.Assertions.assertThat;

import com.sun.source.tree.ClassTree;
import com.sun.source.tree.CompilationUnitTree;
import com.sun.source.tree.MethodTree;
import com.sun.source.tree.ModifiersTree;
import com.sun.source.tree.Tree;
import com.sun.source.tree.VariableTree;
import com.sun.source.util.DocTrees;
import com.sun.source.util.JavacTask;
import com.sun.source.util.TreePath;
import com.sun.source.util.TreePathScanner;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import javax.lang.model.element.Modifier;
import javax.tools.JavaCompiler;
import javax.tools.StandardJavaFileManager;
import javax.tools.ToolProvider;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Property: every public type and every public method has Javadoc. One that overrides another, or
 * gives a component of a record, has what is said there.
 */
class JavadocTest {
  @Test
  void everyPublicTypeAndMethodHasJavadoc() throws IOException {
    try (Stream<Path> files = Files.walk(Path.of("src/main/java"))) {
      List<Path> sources = files.filter(f -> f.toString().endsWith(".java")).sorted().toList();
      assertThat(sources).hasSizeGreaterThan(100);
      assertThat(without(sources)).isEmpty();
    }
  }

  @Test
  void whatHasNoneIsFound(@TempDir Path folder) throws IOException {
    Path source = folder.resolve("Some.java");
    Files.writeString(
        source,
        """
        /** Some. */
        public interface Some {
          int bare();

          /** Said. */
          int said();

          record Held(int a) implements Some {
            @Override
            public int bare() {
              return a;
            }

            public int a() {
              return a;
            }

            public int twice() {
              return 2 * a;
            }

            int hidden() {
              return 1;
            }
          }

          /** A class that others do not see. */
          final class Kept {
            private Kept() {}

            static class Inner {
              public void unseen() {}
            }
          }
        }
        """);
    assertThat(without(List.of(source)))
        .containsExactly("Some.java:3 bare", "Some.java:8 Held", "Some.java:18 twice");
  }

  private static List<String> without(List<Path> sources) throws IOException {
    JavaCompiler compiler = ToolProvider.getSystemJavaCompiler();
    try (StandardJavaFileManager files = compiler.getStandardFileManager(null, null, null)) {
      JavacTask task =
          (JavacTask)
              compiler.getTask(
                  null,
                  files,
                  null,
                  List.of("-proc:none"),
                  null,
                  files.getJavaFileObjects(sources.toArray(Path[]::new)));
      Scan scan = new Scan(DocTrees.instance(task));
      for (CompilationUnitTree unit : task.parse()) {
        scan.scan(unit, null);
      }
      return scan.found;
    }
  }

  /** Walks through what others see. */
  private static final class Scan extends TreePathScanner<Void, Void> {
    private final DocTrees trees;
    private final List<String> found = new ArrayList<>();

    private Scan(DocTrees trees) {
      this.trees = trees;
    }

    @Override
    public Void visitClass(ClassTree type, Void nothing) {
      boolean unnamed = type.getSimpleName().isEmpty();
      if (unnamed || !isPublic(type.getModifiers())) {
        return null;
      }
      ask(type.getSimpleName().toString());
      return super.visitClass(type, null);
    }

    @Override
    public Void visitMethod(MethodTree method, Void nothing) {
      ClassTree type = (ClassTree) getCurrentPath().getParentPath().getLeaf();
      boolean constructs = method.getReturnType() == null;
      if (isPublic(method.getModifiers())
          && !constructs
          && !overrides(method)
          && !isComponent(type, method)) {
        ask(method.getName().toString());
      }
      return null;
    }

    private boolean isPublic(ModifiersTree modifiers) {
      TreePath around = getCurrentPath().getParentPath();
      boolean ofInterface =
          around.getLeaf() instanceof ClassTree type
              && (type.getKind() == Tree.Kind.INTERFACE
                  || type.getKind() == Tree.Kind.ANNOTATION_TYPE)
              && !modifiers.getFlags().contains(Modifier.PRIVATE);
      return ofInterface || modifiers.getFlags().contains(Modifier.PUBLIC);
    }

    private static boolean overrides(MethodTree method) {
      return method.getModifiers().getAnnotations().stream()
          .anyMatch(a -> a.getAnnotationType().toString().equals("Override"));
    }

    private static boolean isComponent(ClassTree type, MethodTree method) {
      return type.getKind() == Tree.Kind.RECORD
          && method.getParameters().isEmpty()
          && type.getMembers().stream()
              .anyMatch(
                  m ->
                      m instanceof VariableTree field
                          && !field.getModifiers().getFlags().contains(Modifier.STATIC)
                          && field.getName().equals(method.getName()));
    }

    private void ask(String name) {
      if (trees.getDocComment(getCurrentPath()) == null) {
        CompilationUnitTree unit = getCurrentPath().getCompilationUnit();
        long at = trees.getSourcePositions().getStartPosition(unit, getCurrentPath().getLeaf());
        String file = Path.of(unit.getSourceFile().getName()).getFileName().toString();
        found.add(file + ":" + unit.getLineMap().getLineNumber(at) + " " + name);
      }
    }
  }
}
