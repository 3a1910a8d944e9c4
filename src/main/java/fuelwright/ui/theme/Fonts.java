package fuelwright.ui.theme;

import java.util.List;
import javafx.scene.text.Font;
import javafx.scene.text.FontWeight;
import javafx.scene.text.Text;

/**
 * The best family that this computer has; figures in cells take a narrow one where there is one. Sizes are those of normal text; what is
 * drawn grows with the text size chosen, of which there is one for the whole program.
 */
public final class Fonts {

    private static final List<String> TEXT = List.of(
            "Inter", "Segoe UI", "SF Pro Text", "Helvetica Neue", "Noto Sans", "Cantarell", "Ubuntu", "DejaVu Sans");
    private static final List<String> NARROW = List.of("Inter", "Segoe UI", "Helvetica Neue", "DejaVu Sans Condensed");

    private static final String TEXT_FAMILY = first(TEXT);
    private static final String FIGURE_FAMILY = first(NARROW);

    private static volatile double factor = 1;

    private Fonts() {}

    /** From now on everything is drawn at this size. */
    public static void use(TextSize size) {
        factor = size.factor();
    }

    /** A length that grows with text. */
    public static double grown(double length) {
        return length * factor;
    }

    private static String first(List<String> wanted) {
        List<String> there = Font.getFamilies();
        return wanted.stream().filter(there::contains).findFirst().orElse("System");
    }

    /** The family of all text. */
    public static String family() {
        return TEXT_FAMILY;
    }

    public static Font text(double size, boolean bold) {
        return Font.font(TEXT_FAMILY, bold ? FontWeight.BOLD : FontWeight.NORMAL, size * factor);
    }

    public static Font figure(double size, boolean bold) {
        return Font.font(FIGURE_FAMILY, bold ? FontWeight.BOLD : FontWeight.NORMAL, size * factor);
    }

    /** For figures that are fitted into a space of their own: they don't grow with the text size. */
    public static Font fitted(double size, boolean bold) {
        return Font.font(FIGURE_FAMILY, bold ? FontWeight.BOLD : FontWeight.NORMAL, size);
    }

    /** How wide a text is in a font, pixels. */
    public static double width(String text, Font font) {
        Text measured = new Text(text);
        measured.setFont(font);
        return measured.getLayoutBounds().getWidth();
    }
}
