package bootmend.boot;

import bootmend.tuning.DataFile;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.stream.Collectors;

/** A file of a waiting update of the boot memory. */
record UpdateFile(String name, Role role) {

    /** What it is for. */
    enum Role {
        RUNS("runs"),
        RENAMED("renamed"),
        KEPT("kept"),
        DIGEST("digest"),
        CONTROLLER("controller"),
        CONTROLLER_DIGEST("controller-digest");

        private final String word;

        Role(String word) {
            this.word = word;
        }
    }

    private static final Map<String, Role> ROLES =
            Arrays.stream(Role.values()).collect(Collectors.toMap(role -> role.word, Function.identity()));

    static List<UpdateFile> load() {
        return DataFile.resource(UpdateFile.class, "update-files.csv")
                .withColumns("file", "role")
                .map(row -> new UpdateFile(row.required("file"), row.choice("role", ROLES)), UpdateFile::name);
    }
}
