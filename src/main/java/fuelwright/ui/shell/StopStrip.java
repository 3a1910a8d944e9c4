package fuelwright.ui.shell;

import fuelwright.ui.plot.Ink;
import fuelwright.ui.theme.Fonts;
import fuelwright.ui.theme.Palette;
import java.util.ArrayList;
import java.util.List;
import javafx.geometry.VPos;
import javafx.scene.text.Font;
import javafx.scene.text.TextAlignment;

/** Stop cautions below a picture: a picture of a table is a table that leaves the program. */
final class StopStrip {

    private static final double TEXT = 13;
    private static final double LINE = 18;
    private static final double MARGIN = 12;
    private static final double BAR = 4;

    private final double width;
    private final List<String> lines = new ArrayList<>();

    private StopStrip(double width) {
        this.width = width;
    }

    /** @param stops each in one sentence or more, to be cut into lines of that width */
    static StopStrip of(List<String> stops, double width) {
        StopStrip strip = new StopStrip(width);
        stops.forEach(strip::add);
        return strip;
    }

    private void add(String stop) {
        double room = width - 2 * MARGIN - 2 * BAR;
        String line = "";
        for (String word : stop.split(" ")) {
            String longer = line.isEmpty() ? word : line + " " + word;
            if (!line.isEmpty() && Fonts.width(longer, font()) > room) {
                lines.add(line);
                line = word;
            } else {
                line = longer;
            }
        }
        lines.add(line);
    }

    private static Font font() {
        return Fonts.text(TEXT, true);
    }

    /** 0 where nothing is to be said. */
    double height() {
        return lines.isEmpty() ? 0 : 2 * MARGIN + LINE * lines.size();
    }

    void paint(Ink ink, double top, Palette palette) {
        if (lines.isEmpty()) {
            return;
        }
        ink.setFill(palette.surface());
        ink.fillRect(0, top, width, height());
        ink.setFill(palette.role("stop"));
        ink.fillRect(MARGIN, top + MARGIN, BAR, LINE * lines.size());
        ink.setFill(palette.ink());
        ink.setFont(font());
        ink.setTextAlign(TextAlignment.LEFT);
        ink.setTextBaseline(VPos.CENTER);
        for (int i = 0; i < lines.size(); i++) {
            ink.fillText(lines.get(i), MARGIN + 2 * BAR, top + MARGIN + LINE * (i + 0.5));
        }
    }
}
