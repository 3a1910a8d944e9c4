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

    /** The gap between a figure and its unit. */
    private static final Pattern BEFORE_UNIT = Pattern.compile(
            "(?<=\\d) (?=(?:%|rpm|ms|s|min|h|mm|cm³|kPa|°C|°F|psi|inHg|km/h|mph|g/s|kW|hp|Nm|K|m|ft|Hz)(?![\\p{L}\\d]))");

    private Words() {}

    /** A sentence in which no line ends between a figure and its unit. */
    public static String together(String sentence) {
        return BEFORE_UNIT.matcher(sentence).replaceAll("\u00a0");
    }

    /** A sentence of the layers below, with where to click in place of an option of the command line. */
    public static String inWindow(String sentence) {
        if (sentence == null) {
            return null;
        }
        return together(
                sentence.contains("(--")
                        ? OPTION.matcher(sentence).replaceAll(option -> {
                            String key = "option." + option.group(1);
                            return has(key) ? Matcher.quoteReplacement(" (" + of(key) + ")") : "";
                        })
                        : sentence);
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
        return together(new MessageFormat(BUNDLE.getString(key), Locale.ROOT).format(gaps));
    }

    /** Whether there is a sentence of that key. */
    public static boolean has(String key) {
        return BUNDLE.containsKey(key);
    }
}
