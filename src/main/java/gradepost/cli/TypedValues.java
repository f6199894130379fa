package gradepost.cli;

import gradepost.units.MomentStyle;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.format.DateTimeParseException;
import picocli.CommandLine;
import picocli.CommandLine.TypeConversionException;

/** Values as they are typed behind an option, and what is said where one cannot be read. */
final class TypedValues {
  /** For a command with all its subcommands. */
  static void understoodBy(CommandLine commandLine) {
    commandLine.registerConverter(LocalDate.class, TypedValues::day);
    commandLine.registerConverter(LocalDateTime.class, TypedValues::moment);
    commandLine.registerConverter(int.class, text -> Math.toIntExact(number(text)));
    commandLine.registerConverter(long.class, TypedValues::number);
  }

  private static LocalDate day(String text) {
    try {
      return LocalDate.parse(text);
    } catch (DateTimeParseException e) {
      throw refused(text, "is not a day; allowed: a day, such as 2026-11-30", e);
    }
  }

  private static LocalDateTime moment(String text) {
    try {
      return LocalDateTime.parse(text, MomentStyle.MOMENT);
    } catch (DateTimeParseException e) {
      throw refused(
          text, "is not a date and hour; allowed: a date and hour, such as '2026-11-30 04:00'", e);
    }
  }

  /** Of so many nobody ever types more: days, seconds, packs at once. */
  private static long number(String text) {
    if (!text.matches("\\d{1,9}")) {
      throw new TypeConversionException(
          "\"%s\" is not a number; allowed: a whole number, such as 28".formatted(text));
    }
    return Long.parseLong(text);
  }

  private static TypeConversionException refused(String text, String why, Exception cause) {
    TypeConversionException refused = new TypeConversionException("\"%s\" %s".formatted(text, why));
    refused.initCause(cause);
    return refused;
  }

  private TypedValues() {}
}
