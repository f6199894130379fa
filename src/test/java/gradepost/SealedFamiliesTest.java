package gradepost;

import static com.tngtech.archunit.thirdparty.org.objectweb.asm.Opcodes.ACC_SYNTHETIC;
import static com.tngtech.archunit.thirdparty.org.objectweb.asm.Opcodes.ALOAD;
import static com.tngtech.archunit.thirdparty.org.objectweb.asm.Opcodes.ASM9;
import static com.tngtech.archunit.thirdparty.org.objectweb.asm.Opcodes.CHECKCAST;
import static com.tngtech.archunit.thirdparty.org.objectweb.asm.Opcodes.INSTANCEOF;
import static org.assertj.core.api.Assertions.assertThat;

import com.tngtech.archunit.thirdparty.org.objectweb.asm.ClassReader;
import com.tngtech.archunit.thirdparty.org.objectweb.asm.ClassVisitor;
import com.tngtech.archunit.thirdparty.org.objectweb.asm.Handle;
import com.tngtech.archunit.thirdparty.org.objectweb.asm.Label;
import com.tngtech.archunit.thirdparty.org.objectweb.asm.MethodVisitor;
import com.tngtech.archunit.thirdparty.org.objectweb.asm.Type;
import gradepost.plan.fallback.Met;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;

/**
 * Property: nobody asks a value of a sealed family which case it is. A case answers for itself, or
 * the family has a {@code match} with an answer for each; so a new case does not compile until it
 * is answered everywhere. {@code instanceof}, a cast from the family to a case, and the class of a
 * case as a value get round that; they stand nowhere but in the file of the family itself.
 *
 * <p>Read from the class files: the compiler does not keep patterns, but what becomes of them.
 */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class SealedFamiliesTest {
  private static final Path CLASSES = Path.of("target", "classes");

  /** Cases by their internal name, each with its family. */
  private final Map<String, String> familyOf = new HashMap<>();

  @BeforeAll
  void families() {
    read(
        CLASSES,
        reader ->
            new ClassVisitor(ASM9) {
              @Override
              public void visitPermittedSubclass(String permitted) {
                familyOf.put(permitted, reader.getClassName());
              }
            });
  }

  @Test
  void thereAreFamilies() {
    assertThat(familyOf.values().stream().distinct().count()).isGreaterThan(20);
  }

  @Test
  void aCaseIsNotAskedFor() {
    assertThat(askedIn(CLASSES)).isEmpty();
  }

  /** The rule sees each way round it: this class has them all. */
  @Test
  void theRuleSees() {
    List<String> asked =
        askedIn(Path.of("target", "test-classes", "gradepost", "SealedFamiliesTest$Curious.class"));
    assertThat(asked.stream().map(line -> line.replaceAll(".*\\.(\\w+)[:$].*", "$1")).distinct())
        .containsExactlyInAnyOrder(
            "byInstanceof", "byPattern", "byCast", "byCastOfCall", "byClass", "lambda");
  }

  /** Asks in every way that the language has. */
  @SuppressWarnings("unused")
  private record Curious(Met met) {

    boolean byInstanceof() {
      return met instanceof Met.At;
    }

    static double byPattern(Met met) {
      return met instanceof Met.At at ? at.shortM() : 0;
    }

    static double byCast(Met met) {
      return ((Met.At) met).shortM();
    }

    double byCastOfCall() {
      return ((Met.At) met()).shortM();
    }

    static long byClass(List<Met> all) {
      return all.stream().filter(Met.At.class::isInstance).count();
    }

    static long byLambda(List<Met> all) {
      return all.stream().filter(met -> met instanceof Met.At).count();
    }

    /** What the compiler casts for a generic type is not asked for. */
    static double allowed(List<Met.At> all) {
      return all.get(0).shortM();
    }
  }

  /** "Class.method:line: what is asked", for everything below a folder, or for one class. */
  private List<String> askedIn(Path classes) {
    List<String> asked = new ArrayList<>();
    read(classes, reader -> new InClass(reader.getClassName(), asked));
    return asked;
  }

  private interface Visit {
    ClassVisitor of(ClassReader reader);
  }

  private static void read(Path classes, Visit visit) {
    try (Stream<Path> files = Files.walk(classes)) {
      for (Path file : files.filter(f -> f.toString().endsWith(".class")).sorted().toList()) {
        ClassReader reader = new ClassReader(Files.readAllBytes(file));
        reader.accept(visit.of(reader), 0);
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** Looks at the methods that somebody wrote. */
  private final class InClass extends ClassVisitor {
    private final String type;
    private final List<String> asked;

    InClass(String type, List<String> asked) {
      super(ASM9);
      this.type = type;
      this.asked = asked;
    }

    @Override
    public MethodVisitor visitMethod(
        int access, String name, String descriptor, String signature, String[] exceptions) {
      boolean bridge = (access & ACC_SYNTHETIC) != 0 && !name.startsWith("lambda$");
      return bridge ? null : new InMethod(type, name, asked);
    }
  }

  /** Remembers what the last instruction left, so that a cast tells what it is from. */
  private final class InMethod extends MethodVisitor {
    private final String type;
    private final String method;
    private final List<String> asked;
    private int line;
    private String left = "";

    InMethod(String type, String method, List<String> asked) {
      super(ASM9);
      this.type = type;
      this.method = method;
      this.asked = asked;
    }

    /** The file of the family, in which a match may be made of anything. */
    private boolean atHome(String ofCase) {
      return outermost(type).equals(outermost(familyOf.getOrDefault(ofCase, "")));
    }

    private static String outermost(String name) {
      return name.replaceAll("\\$.*", "");
    }

    private void asks(String how, String ofCase) {
      if (familyOf.containsKey(ofCase) && !atHome(ofCase)) {
        asked.add("%s.%s:%d: %s %s".formatted(type.replace('/', '.'), method, line, how, ofCase));
      }
    }

    @Override
    public void visitLineNumber(int number, Label start) {
      line = number;
    }

    @Override
    public void visitTypeInsn(int opcode, String of) {
      if (opcode == INSTANCEOF) {
        asks("instanceof", of);
      } else if (opcode == CHECKCAST && isFamilyOf(left, of)) {
        asks("a cast to", of);
      }
      left = "";
    }

    /** A variable has its own type; where it was of a type parameter, the compiler casts a call. */
    private boolean isFamilyOf(String what, String ofCase) {
      String family = familyOf.getOrDefault(ofCase, "");
      return what.equals("a variable")
          || what.equals(family)
          || (!family.isEmpty() && isFamilyOf(what, family));
    }

    @Override
    public void visitLdcInsn(Object value) {
      if (value instanceof Type constant && constant.getSort() == Type.OBJECT) {
        asks("the class of", constant.getInternalName());
      }
      left = "";
    }

    @Override
    public void visitVarInsn(int opcode, int variable) {
      left = opcode == ALOAD ? "a variable" : "";
    }

    @Override
    public void visitMethodInsn(
        int opcode, String owner, String name, String descriptor, boolean isInterface) {
      left = returned(descriptor);
    }

    @Override
    public void visitInvokeDynamicInsn(
        String name, String descriptor, Handle bootstrap, Object... arguments) {
      left = "";
    }

    @Override
    public void visitFieldInsn(int opcode, String owner, String name, String descriptor) {
      left = descriptor.startsWith("L") ? Type.getType(descriptor).getInternalName() : "";
    }

    @Override
    public void visitInsn(int opcode) {
      left = "";
    }

    private static String returned(String descriptor) {
      Type type = Type.getReturnType(descriptor);
      return type.getSort() == Type.OBJECT ? type.getInternalName() : "";
    }
  }
}
