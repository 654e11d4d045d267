package bootmend.gui;

import bootmend.CardException;
import bootmend.workplace.Workplace;
import java.io.IOException;
import java.nio.file.Path;

/** The demo's trials and profiles, from small cards. */
public final class LabRecords {

    private LabRecords() {}

    /** Fills the data folder; the two cards are left in {@code folder}. */
    public static void fill(Workplace workplace, Path folder) throws CardException, IOException {
        new DemoRecords(workplace)
                .add(
                        SmallCards.write(
                                folder,
                                "cart.img",
                                "[pi4]\narm_freq=1750\nover_voltage=2\ngpu_freq=550\ntemp_limit=80\n"),
                        SmallCards.write(folder, "mast.img", "arm_freq=900\nsdram_freq=450\nover_voltage=2\n"));
    }
}
