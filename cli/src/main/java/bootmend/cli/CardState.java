package bootmend.cli;

import com.fasterxml.jackson.annotation.JsonValue;

/** What became of one card of a batch. */
enum CardState {
    CHANGED("changed"),
    PLANNED("to change"),
    NOTHING("nothing to do"),
    SEEN("read"),
    READY("ready"),
    NOT_READY("not ready"),
    FAILED("failed"),
    NOT_STARTED("not started");

    private final String words;

    CardState(String words) {
        this.words = words;
    }

    @JsonValue
    String words() {
        return words;
    }
}
