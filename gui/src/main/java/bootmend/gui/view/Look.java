package bootmend.gui.view;

import atlantafx.base.theme.PrimerDark;
import atlantafx.base.theme.PrimerLight;
import javafx.application.Application;
import javafx.scene.Scene;

/** The window's colours, light or dark. */
final class Look {

    private static final String SHAPES = "window.css";

    private final Scene scene;

    Look(Scene scene) {
        this.scene = scene;
    }

    void set(boolean dark) {
        Application.setUserAgentStylesheet((dark ? new PrimerDark() : new PrimerLight()).getUserAgentStylesheet());
        scene.getStylesheets().setAll(sheet(dark ? "dark.css" : "light.css"), sheet(SHAPES));
    }

    private static String sheet(String name) {
        return Look.class.getResource(name).toExternalForm();
    }
}
