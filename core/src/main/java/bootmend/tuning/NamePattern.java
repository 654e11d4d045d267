package bootmend.tuning;

import java.util.List;

/**
 * A name in which {@code *} stands for any run of lower-case letters, digits and {@code _ . -}.
 *
 * @param parts what stands before, between and after the stars
 */
record NamePattern(List<String> parts) {

    static final String ANY = "*";

    static NamePattern of(String text) {
        return new NamePattern(List.of(text.split("\\*", -1)));
    }

    boolean fits(String name) {
        String first = parts.get(0);
        String last = parts.get(parts.size() - 1);
        if (name.length() < first.length() + last.length() || !name.startsWith(first) || !name.endsWith(last)) {
            return false;
        }
        int at = first.length();
        int end = name.length() - last.length();
        for (String part : parts.subList(1, parts.size() - 1)) {
            int found = name.indexOf(part, at);
            if (found < 0 || found + part.length() > end || !isPlain(name, at, found)) {
                return false;
            }
            at = found + part.length();
        }
        return isPlain(name, at, end);
    }

    private static boolean isPlain(String name, int from, int to) {
        for (int i = from; i < to; i++) {
            char each = name.charAt(i);
            boolean plain = each >= 'a' && each <= 'z' || each >= '0' && each <= '9' || "_.-".indexOf(each) >= 0;
            if (!plain) {
                return false;
            }
        }
        return true;
    }
}
