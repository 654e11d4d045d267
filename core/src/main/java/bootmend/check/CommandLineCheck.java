package bootmend.check;

import bootmend.check.BootFile.Kind;
import bootmend.fat.FileSample;
import bootmend.finding.Place;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;

/** The kernel's command line: one line with something on it. Its absence is told by {@link BootFileCheck}. */
record CommandLineCheck() implements Check {

    @Override
    public List<Remark> look(CardContent card) {
        List<Remark> remarks = new ArrayList<>();
        card.bootFiles().forEach((entry, uses) -> {
            FileSample sample = card.samples().get(entry.path());
            boolean own = uses.stream().anyMatch(use -> use.file().kind() == Kind.COMMAND_LINE);
            if (own && sample != null && sample.doubts().isEmpty()) {
                Set<String> boards = new TreeSet<>();
                uses.forEach(use -> boards.addAll(use.boards()));
                look(Place.file(entry.path()), sample, boards, remarks);
            }
        });
        return remarks;
    }

    private static void look(Place where, FileSample sample, Set<String> boards, List<Remark> remarks) {
        String text = new String(sample.head(), StandardCharsets.ISO_8859_1);
        // Zeros are what a crash leaves; they say nothing to the kernel.
        String said = text.replace('\0', ' ').strip();
        if (said.isEmpty()) {
            remarks.add(new Remark(
                    "cmdline-empty",
                    where,
                    sample.size() == 0
                            ? "The file has no byte."
                            : "The file has " + sample.size()
                                    + " bytes, blanks, line ends or zeros all that were read.",
                    boards));
        } else if (said.lines().count() > 1) {
            remarks.add(new Remark(
                    "cmdline-several-lines",
                    where,
                    "The file has " + said.lines().count() + " lines; it may have one.",
                    boards));
        }
    }
}
