package bootmend.cli.option;

import bootmend.finding.Purpose;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/** Reads a purpose as a user writes it. */
public final class PurposeConverter implements ITypeConverter<Purpose> {

    @Override
    public Purpose convert(String word) {
        return Stream.of(Purpose.values())
                .filter(purpose -> purpose.word().equals(word))
                .findFirst()
                .orElseThrow(() -> new TypeConversionException("\"" + word + "\" is no purpose; one of "
                        + Stream.of(Purpose.values()).map(Purpose::word).collect(Collectors.joining(", ")) + " is"));
    }
}
