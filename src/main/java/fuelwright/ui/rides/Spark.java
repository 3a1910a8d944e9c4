package fuelwright.ui.rides;

import fuelwright.ui.theme.Palette;
import javafx.scene.canvas.Canvas;
import javafx.scene.canvas.GraphicsContext;

/** A channel in little: the whole ride from left to right, least to greatest value in each piece. */
final class Spark {

    private static final double HEIGHT = 22;

    private Spark() {}

    static Canvas of(RidePicture.Spark spark, Palette palette, boolean used) {
        Canvas canvas = new Canvas(RidePicture.WIDTH, HEIGHT);
        canvas.setMouseTransparent(true);
        GraphicsContext g = canvas.getGraphicsContext2D();
        double[] least = spark.least();
        double[] most = spark.most();
        double low = Double.POSITIVE_INFINITY;
        double high = Double.NEGATIVE_INFINITY;
        for (int i = 0; i < least.length; i++) {
            if (!Double.isNaN(least[i])) {
                low = Math.min(low, least[i]);
                high = Math.max(high, most[i]);
            }
        }
        double room = high > low ? (HEIGHT - 4) / (high - low) : 0;
        g.setFill(used ? palette.accent() : palette.muted());
        for (int i = 0; i < least.length; i++) {
            if (!Double.isNaN(least[i])) {
                double top = high > low ? 2 + (high - most[i]) * room : HEIGHT / 2;
                g.fillRect(i, top, 1, Math.max(1.5, (most[i] - least[i]) * room));
            }
        }
        return canvas;
    }
}
