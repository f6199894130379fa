package gradepost.app.queue;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.github.kagkarlsson.scheduler.serializer.Serializer;
import gradepost.app.store.Answer;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.List;

/** What the scheduler and the jobs keep, as JSON. */
final class Json implements Serializer {
  private static final ObjectMapper MAPPER = new ObjectMapper();

  /** What is told of an issue; files that were written are not. */
  record Told(List<String> said, List<String> problems, boolean good) {}

  static String of(Answer answer) {
    try {
      return MAPPER.writeValueAsString(new Told(answer.said(), answer.problems(), answer.good()));
    } catch (JsonProcessingException e) {
      throw new UncheckedIOException(e);
    }
  }

  static Answer answer(String json) throws IOException {
    Told told = MAPPER.readValue(json, Told.class);
    return new Answer(told.said(), List.of(), told.problems(), told.good());
  }

  @Override
  public byte[] serialize(Object task) {
    try {
      return MAPPER.writeValueAsBytes(task);
    } catch (JsonProcessingException e) {
      throw new UncheckedIOException(e);
    }
  }

  @Override
  public <T> T deserialize(Class<T> type, byte[] bytes) {
    try {
      return MAPPER.readValue(bytes, type);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
