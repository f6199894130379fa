package gradepost.app;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.networknt.schema.JsonSchema;
import com.networknt.schema.JsonSchemaFactory;
import com.networknt.schema.SpecVersion;
import gradepost.app.export.SchemaText;
import gradepost.source.Frozen;
import gradepost.source.file.FileKind;
import java.io.IOException;
import java.io.StringReader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.yaml.snakeyaml.LoaderOptions;
import org.yaml.snakeyaml.Yaml;
import org.yaml.snakeyaml.constructor.SafeConstructor;
import org.yaml.snakeyaml.nodes.MappingNode;
import org.yaml.snakeyaml.nodes.Node;
import org.yaml.snakeyaml.nodes.NodeTuple;
import org.yaml.snakeyaml.nodes.ScalarNode;
import org.yaml.snakeyaml.nodes.SequenceNode;

/** The schemas by another's validator (draft 07): what the reader takes, they take. */
class SchemaTest {
  private static final Path SCHEMAS = Path.of("src/main/resources/gradepost/schema");
  private static final Path FIXTURES = Path.of("src/test/resources/gradepost/source");

  /** After a change of a key table: {@code gradepost schema KIND > …/KIND.schema.json}. */
  @ParameterizedTest
  @EnumSource
  void thePublishedCopyIsWhatTheKeyTablesSay(FileKind kind) throws IOException {
    String published = Files.readString(SCHEMAS.resolve(SchemaText.fileName(kind)));
    assertThat(published.equals(SchemaText.of(kind))).as("schema of %s", kind).isTrue();
  }

  @Test
  void theDemoFilesReferToTheirSchemaAndKeepIt() throws IOException {
    List<Path> files = yamlBelow(Path.of("routes"));
    assertThat(files).hasSize(10);
    for (Path file : files) {
      String first = Files.readAllLines(file).get(0);
      String prefix = "# yaml-language-server: $schema=";
      assertThat(first).as(file.toString()).startsWith(prefix);
      assertThat(file.resolveSibling(first.substring(prefix.length()))).exists();
      assertThat(faults(file)).as(file.toString()).isEmpty();
    }
  }

  @ParameterizedTest
  @EnumSource
  void theFixturesKeepTheirSchema(FileKind kind) throws IOException {
    for (Path file : yamlBelow(FIXTURES)) {
      if (file.getFileName().toString().startsWith(kind.word())) {
        assertThat(faults(file)).as(file.toString()).isEmpty();
      }
    }
  }

  @Test
  void theFrozenFilesKeepTheirSchema() throws IOException {
    for (Path file : yamlBelow(Frozen.FOLDER)) {
      assertThat(faults(file)).as(file.toString()).isEmpty();
    }
  }

  /** A key misspelt, a key left out, a quantity without its unit: the schema sees each of them. */
  @ParameterizedTest
  @EnumSource
  void whatTheReaderRefusesByItsKeyTheSchemaRefuses(FileKind kind) throws IOException {
    JsonSchema schema = schema(kind);
    ObjectNode good = (ObjectNode) json(Files.readString(FIXTURES.resolve(kind.word() + ".yaml")));
    int groups = 0;
    for (ObjectNode group : groups(good)) {
      if (group.fieldNames().next().matches("[A-Z].*")) {
        continue; // a group whose keys are names of the route
      }
      groups++;
      group.put("unheard-of", 1);
      assertThat(schema.validate(good)).as("%s", group).isNotEmpty();
      group.remove("unheard-of");
      for (String key : new String[] {"radius", "at", "speed", "length", "from"}) {
        if (group.has(key)) {
          JsonNode value = group.get(key);
          group.put(key, 17);
          assertThat(schema.validate(good)).as("%s", group).isNotEmpty();
          group.set(key, value);
        }
      }
    }
    assertThat(groups).isGreaterThan(2);
    assertThat(schema.validate(good)).isEmpty();
  }

  @ParameterizedTest
  @EnumSource
  void everyKeyIsExplained(FileKind kind) throws IOException {
    JsonNode schema =
        new com.fasterxml.jackson.databind.ObjectMapper().readTree(SchemaText.of(kind));
    for (JsonNode properties : schema.findValues("properties")) {
      properties
          .fieldNames()
          .forEachRemaining(
              name ->
                  assertThat(
                          properties.get(name).has("description")
                              || properties.get(name).has("const"))
                      .as(name)
                      .isTrue());
    }
  }

  private static List<ObjectNode> groups(JsonNode node) {
    List<ObjectNode> groups = new ArrayList<>();
    if (node instanceof ObjectNode group && group.size() > 0) {
      groups.add(group);
    }
    node.forEach(child -> groups.addAll(groups(child)));
    return groups;
  }

  private static List<Path> yamlBelow(Path folder) throws IOException {
    try (Stream<Path> walk = Files.walk(folder)) {
      return walk.filter(p -> p.toString().endsWith(".yaml")).sorted().toList();
    }
  }

  static List<String> faults(Path file) throws IOException {
    JsonNode data = json(Files.readString(file));
    FileKind kind = FileKind.valueOf(data.get("gradepost").asText().toUpperCase(Locale.ROOT));
    return schema(kind).validate(data).stream().map(String::valueOf).toList();
  }

  private static JsonSchema schema(FileKind kind) {
    return JsonSchemaFactory.getInstance(SpecVersion.VersionFlag.V7).getSchema(SchemaText.of(kind));
  }

  private static JsonNode json(String yaml) {
    Node root = new Yaml(new SafeConstructor(new LoaderOptions())).compose(new StringReader(yaml));
    return json(root);
  }

  /** As an editor that follows YAML 1.2 sees it. */
  private static JsonNode json(Node node) {
    JsonNodeFactory make = JsonNodeFactory.instance;
    if (node instanceof MappingNode mapping) {
      ObjectNode object = make.objectNode();
      for (NodeTuple tuple : mapping.getValue()) {
        object.set(((ScalarNode) tuple.getKeyNode()).getValue(), json(tuple.getValueNode()));
      }
      return object;
    } else if (node instanceof SequenceNode sequence) {
      ArrayNode array = make.arrayNode();
      sequence.getValue().forEach(each -> array.add(json(each)));
      return array;
    }
    ScalarNode scalar = (ScalarNode) node;
    String text = scalar.getValue();
    boolean plain = scalar.isPlain();
    if (plain && text.matches("-?\\d{1,9}")) {
      return make.numberNode(Integer.parseInt(text));
    } else if (plain && text.matches("-?\\d*\\.\\d+")) {
      return make.numberNode(Double.parseDouble(text));
    } else if (plain && text.matches("true|false")) {
      return make.booleanNode(Boolean.parseBoolean(text));
    }
    return make.textNode(text);
  }
}
