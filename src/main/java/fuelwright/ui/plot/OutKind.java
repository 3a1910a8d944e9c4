package fuelwright.ui.plot;

import fuelwright.ui.theme.Palette;
import javafx.scene.paint.Color;

/** Reasons for which readings don't count: a colour for each family, and a pattern that no other has: never by colour alone. */
public enum OutKind {
    /** Not running, too cold. */
    ENGINE("out-0", Pattern.SLANT, 8),
    FUEL_CUT("out-1", Pattern.BACK, 6),
    AFTER_FUEL_CUT("out-1", Pattern.DOTS, 5),
    THROTTLE_MOVING("out-2", Pattern.UPRIGHT, 6),
    SPEED_MOVING("out-2", Pattern.PAIRS, 9),
    GEAR_CHANGE("out-2", Pattern.GRID, 5),
    /** At its limit, frozen, spikes. */
    SENSOR("out-3", Pattern.CROSS, 8),
    /** Nothing wrong with the ride: nothing to learn from here. */
    DATA("out-4", Pattern.LEVEL, 6);

    /** How the lines run. */
    private enum Pattern {
        SLANT,
        BACK,
        UPRIGHT,
        PAIRS,
        GRID,
        CROSS,
        LEVEL,
        DOTS
    }

    private final String colour;
    private final Pattern pattern;
    private final double step;

    OutKind(String colour, Pattern pattern, double step) {
        this.colour = colour;
        this.pattern = pattern;
        this.step = step;
    }

    /** Its colour. */
    public Color colour(Palette palette) {
        return palette.role(colour);
    }

    /** Its pattern over a pale ground, strong as said from 0 to 1. */
    public void paint(Ink g, Palette palette, double x, double y, double w, double h, double strength) {
        Color color = colour(palette);
        g.setFill(faint(color, 0.18 * strength));
        g.fillRect(x, y, w, h);
        if (w < 4) {
            return;
        }
        Color line = faint(color, 0.6 * strength);
        g.setFill(line);
        switch (pattern) {
            case SLANT:
                Hatch.paint(g, x, y, w, h, step, line);
                break;
            case BACK:
                Hatch.back(g, x, y, w, h, step, line);
                break;
            case CROSS:
                Hatch.paint(g, x, y, w, h, step, line);
                Hatch.back(g, x, y, w, h, step, line);
                break;
            case LEVEL:
                level(g, x, y, w, h);
                break;
            case GRID:
                level(g, x, y, w, h);
                upright(g, x, y, w, h, 0);
                break;
            case PAIRS:
                upright(g, x, y, w, h, 0);
                upright(g, x, y, w, h, 2);
                break;
            case DOTS:
                dots(g, line, x, y, w, h);
                break;
            default:
                upright(g, x, y, w, h, 0);
                break;
        }
    }

    private void level(Ink g, double x, double y, double w, double h) {
        for (double at = Math.ceil(y / step) * step; at < y + h; at += step) {
            g.fillRect(x, at, w, 1);
        }
    }

    private void upright(Ink g, double x, double y, double w, double h, double beside) {
        for (double at = Math.ceil((x - beside) / step) * step + beside; at < x + w; at += step) {
            g.fillRect(at, y, 1, h);
        }
    }

    /** Each row between the dots of the row above; a row is one dashed line, however wide. */
    private void dots(Ink g, Color line, double x, double y, double w, double h) {
        boolean odd = Math.round(Math.ceil(y / step)) % 2 != 0;
        g.setStroke(line);
        g.setLineWidth(2);
        g.setLineDashes(2, step - 2);
        for (double top = Math.ceil(y / step) * step; top < y + h; top += step) {
            double first = Math.ceil(x / step) * step + (odd ? Math.floor(step / 2) : 0);
            if (first < x + w) {
                g.strokeLine(first, top + 1, x + w, top + 1);
            }
            odd = !odd;
        }
        g.setLineDashes();
    }

    private static Color faint(Color color, double opacity) {
        return Color.color(color.getRed(), color.getGreen(), color.getBlue(), Math.min(1, opacity));
    }
}
