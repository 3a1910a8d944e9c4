package fuelwright.ui.theme;

import java.text.MessageFormat;
import java.util.Locale;
import java.util.ResourceBundle;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Every sentence of the window, from one resource bundle. */
public final class Words {

    private static final ResourceBundle BUNDLE = ResourceBundle.getBundle("fuelwright.ui.window", Locale.ROOT);

    /** What is to be given on the command line, as the layers below say it. */
    private static final Pattern OPTION = Pattern.compile(" ?\\(--([a-z][a-z-]*)[^)]*\\)");

    private Words() {}

    /** A sentence of the layers below, with where to click in place of an option of the command line. */
    public static String inWindow(String sentence) {
        return sentence != null && sentence.contains("(--")
                ? OPTION.matcher(sentence).replaceAll(option -> {
                    String key = "option." + option.group(1);
                    return has(key) ? Matcher.quoteReplacement(" (" + of(key) + ")") : "";
                })
                : sentence;
    }

    /** A sentence as it is said on a stage: without the name of that stage, which stands above it. */
    public static String onStage(int number, String name, String sentence) {
        String stage = "stage " + number + ", " + name;
        return inWindow(sentence).replace(stage + ": ", "").replace(" on " + stage, "");
    }

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
