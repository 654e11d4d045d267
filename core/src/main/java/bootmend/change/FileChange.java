package bootmend.change;

/** One file's whole content before and after a change; the arrays are not to be changed. */
public record FileChange(String path, byte[] before, byte[] after) {

    FileChange reversed() {
        return new FileChange(path, after, before);
    }
}
