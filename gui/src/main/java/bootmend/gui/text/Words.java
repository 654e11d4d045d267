package bootmend.gui.text;

import java.text.ChoiceFormat;
import java.text.MessageFormat;
import java.util.Locale;
import java.util.ResourceBundle;

/** The window's words in one language, from the bundle {@code window.properties} and its translations. */
public final class Words {

    private static final String BUNDLE = "bootmend.gui.text.window";

    private final ResourceBundle bundle;
    private final Locale locale;

    /** @param locale whose translation is taken, where there is one */
    public Words(Locale locale) {
        this.bundle = ResourceBundle.getBundle(
                BUNDLE, locale, ResourceBundle.Control.getNoFallbackControl(ResourceBundle.Control.FORMAT_PROPERTIES));
        this.locale = locale;
    }

    /**
     * The text under a key, with arguments put in where it names them.
     *
     * <p>Texts are patterns of {@link MessageFormat}, even those that take no argument; a number may choose between
     * singular and plural there, see {@link ChoiceFormat}.
     *
     * @throws java.util.MissingResourceException where there is no such key
     */
    public String of(String key, Object... arguments) {
        return new MessageFormat(bundle.getString(key), locale).format(arguments);
    }

    /** Whether there is a text under that key. */
    public boolean has(String key) {
        return bundle.containsKey(key);
    }
}
