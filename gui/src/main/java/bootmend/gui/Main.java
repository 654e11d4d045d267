package bootmend.gui;

import java.io.IOException;
import java.util.List;
import java.util.logging.Level;
import java.util.logging.Logger;
import javafx.application.Application;

/** Starts the window; kept apart from the application class so that it starts from a plain jar. */
public final class Main {

    private static final String USAGE = """
            usage: java -jar bootmend-window.jar [--demo [DIR] | CARD...]
              CARD         card images, block devices or mounted boot folders to open
              --demo [DIR] opens demo cards, made in DIR (default: a new folder among the temporary ones)
            """;
    // Kept, because loggers that nobody holds forget their level.
    private static final Logger TOOLKIT = Logger.getLogger("javafx");

    private Main() {}

    public static void main(String[] arguments) throws IOException {
        List<String> given = List.of(arguments);
        if (given.contains("--help")
                || given.stream().anyMatch(each -> each.startsWith("--") && !each.equals("--demo"))) {
            System.out.print(USAGE);
            System.exit(given.contains("--help") ? 0 : 2);
        }
        // The toolkit warns of being started from a jar, of which a user need not know.
        TOOLKIT.setLevel(Level.SEVERE);
        Application.launch(WindowApp.class, arguments);
    }
}
