package bootmend.earlier;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** Texts by their lines, to tell in steady time whether some lines stand side by side in one of them. */
final class KnownTexts {

    private final Map<String, Integer> numbers = new HashMap<>();
    private final List<int[]> texts = new ArrayList<>();
    /** The texts that have a line, by its number. */
    private final Map<Integer, List<Integer>> byLine = new HashMap<>();

    void add(byte[] text) {
        int[] lines = lines(text);
        for (int line : lines) {
            List<Integer> having = byLine.computeIfAbsent(line, none -> new ArrayList<>());
            if (having.isEmpty() || having.get(having.size() - 1) != texts.size()) {
                having.add(texts.size());
            }
        }
        texts.add(lines);
    }

    /** Whether all lines of {@code part} stand in one of the texts, in that order and with nothing between. */
    boolean contain(byte[] part) {
        int[] lines = lines(part);
        List<Integer> fewest = List.of();
        for (int i = 0; i < lines.length; i++) {
            List<Integer> having = byLine.getOrDefault(lines[i], List.of());
            if (having.isEmpty()) {
                return false;
            }
            fewest = i == 0 || having.size() < fewest.size() ? having : fewest;
        }
        int[] fallback = fallback(lines);
        return fewest.stream().anyMatch(text -> contains(texts.get(text), lines, fallback));
    }

    private int[] lines(byte[] text) {
        return new String(text, StandardCharsets.ISO_8859_1)
                .lines()
                .mapToInt(line -> numbers.computeIfAbsent(line, none -> numbers.size()))
                .toArray();
    }

    /** How far to fall back at each place of a pattern; the search by Knuth, Morris and Pratt, SIAM J. Comput. 6 (1977). */
    private static int[] fallback(int[] pattern) {
        int[] fallback = new int[pattern.length];
        for (int i = 1, k = 0; i < pattern.length; i++) {
            while (k > 0 && pattern[i] != pattern[k]) {
                k = fallback[k - 1];
            }
            k += pattern[i] == pattern[k] ? 1 : 0;
            fallback[i] = k;
        }
        return fallback;
    }

    private static boolean contains(int[] text, int[] pattern, int[] fallback) {
        int k = 0;
        for (int line : text) {
            while (k > 0 && line != pattern[k]) {
                k = fallback[k - 1];
            }
            k += line == pattern[k] ? 1 : 0;
            if (k == pattern.length) {
                return true;
            }
        }
        return false;
    }
}
