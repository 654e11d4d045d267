package bootmend.fat.check;

/** Numbers of things in words. */
final class Counted {

    private Counted() {}

    /** {@code 1 cluster}, {@code 3 clusters}. */
    static String of(long n, String thing) {
        return n + " " + thing + (n == 1 ? "" : "s");
    }
}
