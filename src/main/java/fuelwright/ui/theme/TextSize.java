package fuelwright.ui.theme;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Base64;
import java.util.Locale;
import java.util.regex.Pattern;

/** How large text is. Every font size of the window's stylesheet is scaled, so their proportions stay. */
public enum TextSize {
    SMALL(0.92),
    NORMAL(1),
    LARGE(1.2),
    LARGEST(1.4);

    private static final Pattern SIZE = Pattern.compile("(-fx-font-size:\\s*)([0-9.]+)px");

    private final double factor;

    TextSize(double factor) {
        this.factor = factor;
    }

    public double factor() {
        return factor;
    }

    public String words() {
        return Words.of("textsize." + name().toLowerCase(Locale.ROOT));
    }

    /** The next larger one; the largest stays. */
    public TextSize larger() {
        return values()[Math.min(ordinal() + 1, values().length - 1)];
    }

    /** The next smaller one; the smallest stays. */
    public TextSize smaller() {
        return values()[Math.max(ordinal() - 1, 0)];
    }

    /** Where a scene finds that stylesheet with its font sizes scaled. */
    String stylesheet(String file) {
        if (this == NORMAL) {
            return TextSize.class.getResource(file).toExternalForm();
        }
        try (InputStream in = TextSize.class.getResourceAsStream(file)) {
            String css = scaled(new String(in.readAllBytes(), StandardCharsets.UTF_8));
            return "data:text/css;base64," + Base64.getEncoder().encodeToString(css.getBytes(StandardCharsets.UTF_8));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    String scaled(String css) {
        return SIZE.matcher(css)
                .replaceAll(m ->
                        m.group(1) + String.format(Locale.ROOT, "%.1fpx", Double.parseDouble(m.group(2)) * factor));
    }
}
