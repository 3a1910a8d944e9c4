package fuelwright.ui.theme;

import javafx.geometry.Pos;
import javafx.scene.Node;
import javafx.scene.control.Label;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.VBox;

/** A page that lies over the work area until Escape is pressed. */
public abstract class OverPage extends VBox {

    /**
     * @param id of the node
     * @param title key of its title
     * @param below key of the line below the title
     */
    protected OverPage(String id, String title, String below) {
        super(12);
        setId(id);
        setStyle("-fx-background-color: -fw-surface; -fx-padding: 16;");
        VBox heading = Parts.heading(new Label(Words.of(title)), new Label(Words.of(below)));
        HBox.setHgrow(heading, Priority.ALWAYS);
        HBox head = Parts.row(16, heading, Parts.button("page.close", this::leave, "compact"));
        head.setAlignment(Pos.TOP_LEFT);
        getChildren().add(head);
        addEventFilter(KeyEvent.KEY_PRESSED, e -> {
            if (e.getCode() == KeyCode.ESCAPE) {
                leave();
                e.consume();
            }
        });
        setVisible(false);
        managedProperty().bind(visibleProperty());
    }

    /** What fills the page below its heading. */
    protected void fill(Node body) {
        VBox.setVgrow(body, Priority.ALWAYS);
        getChildren().add(body);
    }

    /** Shows the page. */
    public void open() {
        setVisible(true);
        toFront();
    }

    /** Gives the work area back. */
    public final void leave() {
        setVisible(false);
    }
}
