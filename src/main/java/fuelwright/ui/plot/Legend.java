package fuelwright.ui.plot;

import fuelwright.ui.theme.Parts;
import fuelwright.ui.theme.Words;
import javafx.geometry.VPos;
import javafx.scene.Node;
import javafx.scene.control.Label;
import javafx.scene.control.Tooltip;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Region;

/** What stands below a map: its colours and its signs. */
public final class Legend {

    private Legend() {}

    /** They stand side by side while there is room. */
    public static FlowPane of(Node... parts) {
        FlowPane row = new FlowPane(10, 4, parts);
        row.setRowValignment(VPos.CENTER);
        row.setMinHeight(Region.USE_PREF_SIZE);
        return row;
    }

    /** How heavy the figures of a map of evidence are, and what hatching is. */
    public static Node[] standings() {
        return new Node[] {
            sign("1.2", "legend.measured", "strong"),
            sign("1.2", "legend.thin"),
            inferred(),
            sign("━", "legend.highload")
        };
    }

    /** A hatched cell. */
    public static HBox inferred() {
        HBox sign = sign("▨", "legend.inferred");
        Tooltip.install(sign, new Tooltip(Words.of("legend.inferred.words")));
        return sign;
    }

    /** A sign and what it means. */
    public static HBox sign(String sign, String key, String... styles) {
        Label mark = Parts.label(sign, styles);
        Label words = Parts.label(Words.of(key), "muted", "small");
        words.setMinWidth(Region.USE_PREF_SIZE);
        mark.setMinWidth(Region.USE_PREF_SIZE);
        return Parts.row(4, mark, words);
    }
}
