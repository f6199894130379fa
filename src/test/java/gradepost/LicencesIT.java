package gradepost;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Set;
import java.util.jar.JarEntry;
import java.util.jar.JarFile;
import java.util.stream.Collectors;
import java.util.stream.StreamSupport;
import org.junit.jupiter.api.Test;

/**
 * Property: what is shipped may be shipped, and says whose it is. The build itself stops at a
 * licence that is not allowed; here the lists are held against the class path of the jar.
 */
class LicencesIT {
  private static final Set<String> ALLOWED =
      Set.of("Apache-2.0", "BSD-2-Clause", "BSD-3-Clause", "EPL-2.0", "MIT", "LGPL-2.1-or-later");
  private static final Path TARGET = Path.of("target");

  private static String text(JarFile jar, String name) throws IOException {
    JarEntry entry = jar.getJarEntry(name);
    assertThat(entry).as(name).isNotNull();
    return new String(jar.getInputStream(entry).readAllBytes(), StandardCharsets.UTF_8);
  }

  /** Names with versions, such as "pdfbox-3.0.8". */
  private static List<String> libraries(JarFile jar) throws IOException {
    String path = jar.getManifest().getMainAttributes().getValue("Class-Path");
    return Arrays.stream(path.split(" "))
        .map(p -> p.substring(p.lastIndexOf('/') + 1).replaceFirst("\\.jar$", ""))
        .toList();
  }

  private static String artifact(String library) {
    return library.replaceFirst("-\\d[\\d.]*$", "");
  }

  @Test
  void everyLibraryIsNamedWithItsLicence() throws IOException {
    String readme = Files.readString(Path.of("README.md"));
    try (JarFile jar = new JarFile(TARGET.resolve("gradepost.jar").toFile())) {
      String listed = text(jar, "META-INF/THIRD-PARTY.txt");
      String notice = text(jar, "META-INF/NOTICE");
      assertThat(text(jar, "META-INF/LICENSE")).contains("Apache License");
      assertThat(TARGET.resolve("NOTICE")).hasContent(notice);
      assertThat(TARGET.resolve("LICENSE")).exists();
      assertThat(libraries(jar)).hasSizeGreaterThan(15);
      for (String library : libraries(jar)) {
        String artifact = artifact(library);
        String version = library.substring(artifact.length() + 1);
        assertThat(listed).contains(":" + artifact + ":" + version + " - ");
        assertThat(notice).containsPattern("(?m)(^|[ ;,])" + artifact + "([;, ]|$)");
        assertThat(readme.substring(readme.indexOf("| licence |")))
            .containsPattern("[ |]" + artifact + "[ ,:]");
      }
      assertThat(listed.lines().filter(l -> l.matches(" {4}\\S.*:")).map(l -> l.strip()))
          .isNotEmpty()
          .allMatch(l -> ALLOWED.contains(l.substring(0, l.length() - 1)));
    }
  }

  /**
   * What is under the LGPL may be replaced by whoever has it: it lies beside the jar, not in it.
   */
  @Test
  void noCodeOfOthersIsInTheJar() throws IOException {
    try (JarFile jar = new JarFile(TARGET.resolve("gradepost.jar").toFile())) {
      assertThat(jar.stream().map(JarEntry::getName).filter(n -> n.endsWith(".class")))
          .isNotEmpty()
          .allMatch(n -> n.startsWith("gradepost/"));
    }
  }

  @Test
  void theBillOfMaterialsHasTheLibrariesAndNoMoment() throws IOException {
    Path file = TARGET.resolve("gradepost-sbom.json");
    assumeTrue(Files.exists(file), "Maven makes no bill of materials offline");
    JsonNode bom = new ObjectMapper().readTree(file.toFile());
    assertThat(bom.path("bomFormat").asText()).isEqualTo("CycloneDX");
    assertThat(bom.has("serialNumber")).isFalse();
    assertThat(bom.path("metadata").has("timestamp")).isFalse();
    List<JsonNode> all = StreamSupport.stream(bom.path("components").spliterator(), false).toList();
    assertThat(all)
        .allMatch(c -> ALLOWED.contains(c.at("/licenses/0/license/id").asText()))
        .allMatch(c -> c.path("hashes").size() > 0);
    try (JarFile jar = new JarFile(TARGET.resolve("gradepost.jar").toFile())) {
      assertThat(
              all.stream()
                  .map(c -> c.path("name").asText() + "-" + c.path("version").asText())
                  .collect(Collectors.toSet()))
          .containsExactlyInAnyOrderElementsOf(libraries(jar));
    }
  }
}
