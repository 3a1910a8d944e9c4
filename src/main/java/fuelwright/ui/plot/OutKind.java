package fuelwright.ui.plot;

import fuelwright.ui.theme.Palette;
import javafx.scene.paint.Color;

/** Families of reasons for which readings don't count, each with a colour and a pattern of lines of its own: never by colour alone. */
public enum OutKind {
    /** Not running, too cold. */
    ENGINE("out-0", 8, 1),
    /** Fuel cut and what follows it. */
    FUEL_CUT("out-1", 8, -1),
    /** Throttle, engine speed or gear moving. */
    MOVEMENT("out-2", 6, 0),
    /** At its limit, frozen, spikes. */
    SENSOR("out-3", 8, 2),
    /** Nothing wrong with the ride: nothing to learn from here. */
    DATA("out-4", 6, 3);

    private final String colour;
    private final double step;
    private final int slant;

    OutKind(String colour, double step, int slant) {
        this.colour = colour;
        this.step = step;
        this.slant = slant;
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
        switch (slant) {
            case 1:
                Hatch.paint(g, x, y, w, h, step, line);
                break;
            case -1:
                Hatch.back(g, x, y, w, h, step, line);
                break;
            case 2:
                Hatch.paint(g, x, y, w, h, step, line);
                Hatch.back(g, x, y, w, h, step, line);
                break;
            case 3:
                g.setFill(line);
                for (double at = Math.ceil(y / step) * step; at < y + h; at += step) {
                    g.fillRect(x, at, w, 1);
                }
                break;
            default:
                g.setFill(line);
                for (double at = Math.ceil(x / step) * step; at < x + w; at += step) {
                    g.fillRect(at, y, 1, h);
                }
                break;
        }
    }

    private static Color faint(Color color, double opacity) {
        return Color.color(color.getRed(), color.getGreen(), color.getBlue(), Math.min(1, opacity));
    }
}
