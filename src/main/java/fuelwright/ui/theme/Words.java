package fuelwright.ui.theme;

import java.text.MessageFormat;
import java.util.Locale;
import java.util.ResourceBundle;

/** Every sentence of the window, from one resource bundle. */
public final class Words {

    private static final ResourceBundle BUNDLE = ResourceBundle.getBundle("fuelwright.ui.window", Locale.ROOT);

    private Words() {}

    /**
     * The sentence of that key with its gaps filled.
     *
     * @throws java.util.MissingResourceException if there is none
     */
    public static String of(String key, Object... gaps) {
        return new MessageFormat(BUNDLE.getString(key), Locale.ROOT).format(gaps);
    }

    /** Whether there is a sentence of that key. */
    public static boolean has(String key) {
        return BUNDLE.containsKey(key);
    }
}
