package fuelwright.ui.plot;

import java.util.Objects;
import javafx.scene.paint.Color;

/**
 * One cell as it is drawn.
 *
 * @param figure the figure; empty where there is none
 * @param below the small figure below it; may be empty
 * @param fill what is behind them; opaque
 * @param weight how heavy the figure is: doubt makes it lighter and smaller
 * @param hatched whether nobody rode here
 * @param stop whether a Stop caution concerns it: thick frame and a mark in the corner
 * @param mark what the user fixed here
 * @param highLoad whether it is at high load: a line separates such cells from the others
 * @param words the cell in words, for those who can't see it
 */
public record HeatCell(
        String figure,
        String below,
        Color fill,
        Weight weight,
        boolean hatched,
        boolean stop,
        Mark mark,
        boolean highLoad,
        String words) {

    /** How heavy a figure is. */
    public enum Weight {
        STRONG,
        NORMAL,
        SMALL
    }

    /** What the user fixed. */
    public enum Mark {
        NONE,
        HELD,
        SET,
        /** Held, and leaner by that than it should be. */
        HELD_LEAN,
        /** Set, and leaner by that than it should be. */
        SET_LEAN,
        /** Set far from all that is known: asked about. */
        FAR
    }

    public HeatCell {
        Objects.requireNonNull(figure, "figure");
        Objects.requireNonNull(below, "below");
        Objects.requireNonNull(fill, "fill");
        Objects.requireNonNull(weight, "weight");
        Objects.requireNonNull(mark, "mark");
        Objects.requireNonNull(words, "words");
    }

    /** Whether what the user fixed leaves the cell lean. */
    public boolean isLeftLean() {
        return mark == Mark.HELD_LEAN || mark == Mark.SET_LEAN;
    }

    /** A cell with a figure and nothing more to say. */
    public static HeatCell plain(String figure, Color fill, String words) {
        return new HeatCell(figure, "", fill, Weight.NORMAL, false, false, Mark.NONE, false, words);
    }

    /** The same with the line around high load. */
    public HeatCell atHighLoad(boolean high) {
        return new HeatCell(figure, below, fill, weight, hatched, stop, mark, high, words);
    }
}
