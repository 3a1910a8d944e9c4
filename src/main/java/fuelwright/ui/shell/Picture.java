package fuelwright.ui.shell;

import fuelwright.ui.plot.CanvasInk;
import fuelwright.ui.plot.HeatGrid;
import fuelwright.ui.plot.Ink;
import fuelwright.ui.plot.Plot;
import fuelwright.ui.plot.SurfacePlot;
import fuelwright.ui.plot.SvgInk;
import fuelwright.ui.theme.Theme;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;
import javafx.scene.Node;
import javafx.scene.Parent;
import javafx.scene.SnapshotParameters;
import javafx.scene.canvas.Canvas;
import javafx.scene.image.WritableImage;
import javafx.scene.input.Clipboard;
import javafx.scene.input.ClipboardContent;
import javafx.scene.transform.Transform;
import javax.imageio.ImageIO;

/** The plot that a page shows, as a picture: lines and letters (SVG) or dots (PNG), for a file or the clipboard. */
final class Picture {

    /** Dots for each pixel of the screen, so that a printed picture is sharp. */
    private static final double SHARPNESS = 2;

    private final Plot plot;
    private final StopStrip stops;
    private final Theme theme;

    private Picture(Plot plot, StopStrip stops, Theme theme) {
        this.plot = plot;
        this.stops = stops;
        this.theme = theme;
    }

    /**
     * The largest plot that is visible within a page; empty where it shows none.
     *
     * @param stops the Stop cautions that stand against the tables, each in one line: written below a picture of a table
     */
    static Optional<Picture> of(Parent page, Theme theme, List<String> stops) {
        return plots(page)
                .max(Comparator.comparingDouble(p -> p.getWidth() * p.getHeight()))
                .map(p -> new Picture(
                        p,
                        StopStrip.of(
                                p instanceof HeatGrid || p instanceof SurfacePlot ? stops : List.of(), p.getWidth()),
                        theme));
    }

    private static Stream<Plot> plots(Node node) {
        if (!node.isVisible()) {
            return Stream.empty();
        }
        if (node instanceof Plot plot) {
            return Stream.of(plot);
        }
        return node instanceof Parent parent
                ? parent.getChildrenUnmodifiable().stream().flatMap(Picture::plots)
                : Stream.empty();
    }

    String svg() {
        SvgInk ink = new SvgInk(plot.getWidth(), height(), theme.palette().surface());
        paint(ink);
        return ink.document();
    }

    private double height() {
        return plot.getHeight() + stops.height();
    }

    private void paint(Ink ink) {
        plot.paint(ink, plot.getWidth(), plot.getHeight());
        stops.paint(ink, plot.getHeight(), theme.palette());
    }

    private WritableImage dots() {
        SnapshotParameters how = new SnapshotParameters();
        how.setFill(theme.palette().surface());
        how.setTransform(Transform.scale(SHARPNESS, SHARPNESS));
        // A grid that scrolls has its axes once more where its edges in sight are.
        if (stops.height() == 0 && !(plot instanceof HeatGrid)) {
            return ((Node) plot).snapshot(how, null);
        }
        Canvas canvas = new Canvas(plot.getWidth(), height());
        paint(CanvasInk.on(canvas));
        return canvas.snapshot(how, null);
    }

    /** Writes a picture that was taken. May be called on any thread. */
    @FunctionalInterface
    interface Taken {
        void write() throws IOException;
    }

    /** Takes it now, to be written later: of the kind that the file's name ends in, PNG where that says nothing. */
    Taken take(Path file) {
        if (file.toString().toLowerCase(Locale.ROOT).endsWith(".svg")) {
            String svg = svg();
            return () -> Files.writeString(file, svg, StandardCharsets.UTF_8);
        }
        WritableImage dots = dots();
        return () -> ImageIO.write(buffered(dots), "png", file.toFile());
    }

    private static BufferedImage buffered(WritableImage image) {
        int width = (int) image.getWidth();
        int height = (int) image.getHeight();
        BufferedImage copy = new BufferedImage(width, height, BufferedImage.TYPE_INT_ARGB);
        int[] row = new int[width];
        for (int y = 0; y < height; y++) {
            image.getPixelReader()
                    .getPixels(0, y, width, 1, javafx.scene.image.PixelFormat.getIntArgbInstance(), row, 0, width);
            copy.setRGB(0, y, width, 1, row, 0, width);
        }
        return copy;
    }

    /** Onto the clipboard: dots for whoever takes a picture, SVG for whoever takes text. */
    void copy() {
        ClipboardContent content = new ClipboardContent();
        content.putImage(dots());
        content.putString(svg());
        Clipboard.getSystemClipboard().setContent(content);
    }
}
