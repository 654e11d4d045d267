package bootmend.gui;

import bootmend.CardException;
import bootmend.config.VisibleText;
import bootmend.gui.model.StepPlaces;
import bootmend.gui.text.Words;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
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

    /** The command line's exit codes. */
    private static final int WRONG_USAGE = 2;

    private static final int REFUSED = 4;

    private Main() {}

    public static void main(String[] arguments) {
        List<String> given = List.of(arguments);
        if (given.contains("--help")) {
            System.out.print(USAGE);
            return;
        }
        List<String> wished = new ArrayList<>();
        try {
            StartWish wish = StartWish.of(given);
            if (wish.demo()) {
                // Here, where what is wrong with it can still be told to the one who typed it.
                wished.addAll(List.of("--demo", wish.demoFolder().toString()));
            } else {
                wished.addAll(given);
            }
        } catch (CardException e) {
            System.err.println("bootmend: " + VisibleText.of(e.getMessage()) + ". "
                    + new StepPlaces(new Words(Locale.getDefault())).remedy(e));
            System.exit(e.kind() == CardException.Kind.USAGE ? WRONG_USAGE : REFUSED);
        }
        // The toolkit warns of being started from a jar, of which a user need not know.
        TOOLKIT.setLevel(Level.SEVERE);
        Application.launch(WindowApp.class, wished.toArray(String[]::new));
    }
}
