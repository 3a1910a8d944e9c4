package fuelwright.ui.machine;

import fuelwright.ui.theme.Fonts;
import java.util.ArrayList;
import java.util.List;
import javafx.geometry.Insets;
import javafx.geometry.VPos;
import javafx.scene.Node;
import javafx.scene.control.Label;
import javafx.scene.layout.ColumnConstraints;
import javafx.scene.layout.GridPane;
import javafx.scene.layout.Priority;

/**
 * Fields in equal columns, each below its name and above what is wrong with it; in fewer columns where there is too little room. Names,
 * fields and messages are rows of their own: where a name takes two lines the fields still stand level.
 */
final class FieldGrid extends GridPane {

    private static final int NARROW = 2;
    /** A narrower field cuts off what stands in it. */
    private static final double LEAST_FIELD = 100;

    private static final double ROW_GAP = 6;
    private static final double GAP = 12;

    /** What stands in one place, and how many columns it takes. */
    private record Item(int span, List<Node> parts) {}

    private final List<Item> items = new ArrayList<>();
    private final int most;
    private int columns;

    /** @param columns where there is room for them */
    FieldGrid(int columns) {
        this.most = columns;
        setHgap(GAP);
        setVgap(4);
        widthProperty().addListener((p, old, now) -> arrange());
    }

    /** @param parts a name, a field and, where there can be one, a message */
    void add(int span, Node... parts) {
        items.add(new Item(span, List.of(parts)));
        getChildren().addAll(parts);
        columns = 0;
        arrange();
    }

    private void arrange() {
        boolean narrow = getWidth() > 0 && getWidth() < most * (Fonts.grown(LEAST_FIELD) + GAP);
        int now = narrow ? NARROW : most;
        if (now == columns) {
            return;
        }
        columns = now;
        getColumnConstraints().clear();
        for (int i = 0; i < now; i++) {
            ColumnConstraints column = new ColumnConstraints();
            column.setHgrow(Priority.ALWAYS);
            column.setPercentWidth(100.0 / now);
            getColumnConstraints().add(column);
        }
        int row = 0;
        int column = 0;
        for (Item item : items) {
            if (column + item.span() > now) {
                column = 0;
                row++;
            }
            place(item, column, row);
            column += item.span();
        }
    }

    private static void place(Item item, int column, int row) {
        int parts = 3;
        for (int i = 0; i < item.parts().size(); i++) {
            Node part = item.parts().get(i);
            GridPane.setConstraints(part, column, parts * row + i, item.span(), 1);
            if (part instanceof Label && i == 0) {
                GridPane.setValignment(part, VPos.BOTTOM);
                GridPane.setMargin(part, new Insets(row == 0 ? 0 : ROW_GAP, 0, 0, 0));
            }
        }
    }
}
