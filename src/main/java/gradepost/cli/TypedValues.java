package gradepost.cli;

import gradepost.text.Mistake;
import gradepost.units.MomentStyle;
import java.time.Clock;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.format.DateTimeParseException;
import java.time.temporal.ChronoUnit;
import picocli.CommandLine;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.TypeConversionException;

/** Values as they are typed behind an option, and what is said where one cannot be read. */
final class TypedValues {
  private static final int DAY_LETTERS = "2026-11-30".length();

  /** For a command with all its subcommands. */
  static void understoodBy(CommandLine commandLine) {
    commandLine.registerConverter(LocalDate.class, TypedValues::day);
    commandLine.registerConverter(LocalDateTime.class, TypedValues::moment);
    commandLine.registerConverter(int.class, TypedValues::whole);
    // One lambda for both: a Java runtime that stores two alike of so old a type crashes.
    ITypeConverter<Long> number = TypedValues::number;
    commandLine.registerConverter(long.class, number);
    commandLine.registerConverter(Long.class, number);
  }

  private static LocalDate day(String text) {
    try {
      return LocalDate.parse(text);
    } catch (DateTimeParseException e) {
      throw refused(CliText.NO_DAY.with(text), e);
    }
  }

  private static LocalDateTime moment(String text) {
    try {
      return LocalDateTime.parse(text, MomentStyle.MOMENT);
    } catch (DateTimeParseException e) {
      throw refused(CliText.NO_MOMENT.with(text), e);
    }
  }

  /**
   * A date, with an hour or without: the day of the clock means its moment, another its beginning.
   *
   * @throws ParameterException if it is neither
   */
  static LocalDateTime dayOrMoment(String text, Clock clock, CommandSpec command) {
    try {
      LocalDateTime now = LocalDateTime.now(clock).truncatedTo(ChronoUnit.MINUTES);
      if (text.strip().length() > DAY_LETTERS) {
        return moment(text);
      }
      LocalDate day = day(text);
      return day.equals(now.toLocalDate()) ? now : day.atStartOfDay();
    } catch (TypeConversionException e) {
      throw new ParameterException(command.commandLine(), e.getMessage(), e);
    }
  }

  /** The same as {@link #number}; a refusal names what is allowed. */
  static int whole(String text) {
    return Math.toIntExact(number(text));
  }

  /** Of so many nobody ever types more: days, seconds, packs at once. */
  private static long number(String text) {
    if (!text.matches("\\d{1,9}")) {
      throw new TypeConversionException(CliText.NO_NUMBER.with(text).inWords());
    }
    return Long.parseLong(text);
  }

  private static TypeConversionException refused(Mistake mistake, Exception cause) {
    TypeConversionException refused = new TypeConversionException(mistake.inWords());
    refused.initCause(cause);
    return refused;
  }

  private TypedValues() {}
}
