package bootmend.gui.view;
final class Sizes { static String of(long b) { return b / (1 << 20) + " MiB"; } }
