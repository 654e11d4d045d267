package bootmend.config;

import java.util.Optional;
import java.util.OptionalLong;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Reads section lines; names are case-sensitive, and what is not in the grammar is {@link Filter.Unknown}. */
public final class FilterParser {

    private static final long MAX_NUMBER = 0xFFFF_FFFFL;
    private static final int MAX_BYTE = 0xFF;

    private static final String NUMBER = "(0[xX][0-9a-fA-F]{1,8}|[0-9]{1,10})";
    private static final Pattern PIN = Pattern.compile("gpio([0-9]{1,3})=([01])");
    private static final Pattern BOARD_TYPE = Pattern.compile("board-type=" + NUMBER);
    private static final Pattern SERIAL = Pattern.compile("0[xX]([0-9a-fA-F]{1,8})");
    private static final Pattern MONITOR = Pattern.compile("EDID=(.+)");
    private static final Pattern PORT = Pattern.compile("HDMI:([01])");
    private static final Pattern VARIABLE = Pattern.compile(
            "(" + String.join("|", Filter.BootVariable.NAMES) + ")(?:&" + NUMBER + ")?(?:([=<>])" + NUMBER + ")?");

    private final Set<String> models;

    /** A parser that knows these model filters, such as {@code pi4}. */
    public FilterParser(Set<String> models) {
        this.models = Set.copyOf(models);
    }

    /** Reads a section line as {@link LineKind.Section#raw()} gives it, brackets included; never fails. */
    public Filter parse(String raw) {
        if (raw.length() < 2 || raw.charAt(0) != '[' || raw.indexOf(']') != raw.length() - 1) {
            return new Filter.Unknown(raw);
        }
        String text = raw.substring(1, raw.length() - 1);
        return word(text).or(() -> numbered(text)).or(() -> variable(text)).orElseGet(() -> new Filter.Unknown(raw));
    }

    private Optional<Filter> word(String text) {
        return switch (text) {
            case "all" -> Optional.of(new Filter.All());
            case "none" -> Optional.of(new Filter.None());
            case "tryboot" -> Optional.of(new Filter.Tryboot());
            default -> models.contains(text) ? Optional.of(new Filter.Model(text)) : Optional.empty();
        };
    }

    private static Optional<Filter> numbered(String text) {
        Matcher pin = PIN.matcher(text);
        if (pin.matches() && Integer.parseInt(pin.group(1)) <= MAX_BYTE) {
            return Optional.of(
                    new Filter.Pin(Integer.parseInt(pin.group(1)), pin.group(2).equals("1")));
        }
        Matcher type = BOARD_TYPE.matcher(text);
        if (type.matches() && number(type.group(1)).orElse(MAX_NUMBER) <= MAX_BYTE) {
            return Optional.of(new Filter.BoardType((int) number(type.group(1)).getAsLong()));
        }
        Matcher serial = SERIAL.matcher(text);
        if (serial.matches()) {
            return Optional.of(new Filter.Serial(Long.parseLong(serial.group(1), 16)));
        }
        Matcher monitor = MONITOR.matcher(text);
        if (monitor.matches()) {
            return Optional.of(new Filter.Monitor(monitor.group(1)));
        }
        Matcher port = PORT.matcher(text);
        return port.matches() ? Optional.of(new Filter.Hdmi(Integer.parseInt(port.group(1)))) : Optional.empty();
    }

    private static Optional<Filter> variable(String text) {
        Matcher matcher = VARIABLE.matcher(text);
        if (!matcher.matches()) {
            return Optional.empty();
        }
        String sign = matcher.group(3);
        boolean masked = matcher.group(2) != null;
        OptionalLong mask = masked ? number(matcher.group(2)) : OptionalLong.of(Filter.BootVariable.NO_MASK);
        OptionalLong value = sign != null ? number(matcher.group(4)) : OptionalLong.of(0);
        boolean inGrammar = sign == null ? masked : !masked || sign.equals("=");
        if (!inGrammar || mask.isEmpty() || value.isEmpty()) {
            return Optional.empty();
        }
        return Optional.of(
                new Filter.BootVariable(matcher.group(1), mask.getAsLong(), comparison(sign), value.getAsLong()));
    }

    private static Filter.Comparison comparison(String sign) {
        if (sign == null) {
            return Filter.Comparison.NOT_ZERO;
        }
        return switch (sign) {
            case "<" -> Filter.Comparison.LESS;
            case ">" -> Filter.Comparison.GREATER;
            default -> Filter.Comparison.EQUAL;
        };
    }

    /** Decimal or hexadecimal, empty above 32 bits. */
    private static OptionalLong number(String text) {
        long number = Long.decode(text.replaceFirst("^0+(?=[0-9])", ""));
        return number <= MAX_NUMBER ? OptionalLong.of(number) : OptionalLong.empty();
    }
}
