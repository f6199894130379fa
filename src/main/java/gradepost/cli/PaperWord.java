package gradepost.cli;

import gradepost.pack.PaperKind;
import java.util.Arrays;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/** A kind of paper as it is typed on the command line. */
final class PaperWord implements ITypeConverter<PaperKind> {
  @Override
  public PaperKind convert(String word) {
    return Arrays.stream(PaperKind.values())
        .filter(kind -> kind.word().equals(word))
        .findFirst()
        .orElseThrow(
            () ->
                new TypeConversionException(
                    CliText.NO_PAPERS
                        .with(word, Arrays.stream(PaperKind.values()).map(PaperKind::word).toList())
                        .inWords()));
  }
}
