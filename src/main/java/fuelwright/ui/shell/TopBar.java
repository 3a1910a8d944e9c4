package fuelwright.ui.shell;

import fuelwright.ui.session.Session;
import fuelwright.ui.theme.Parts;
import fuelwright.ui.theme.Words;
import javafx.beans.binding.Bindings;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.ToggleButton;
import javafx.scene.control.ToggleGroup;
import javafx.scene.layout.HBox;

/** Which job this is, and what counts everywhere: find an action, undo, redo, notation of mixture, looks. */
final class TopBar extends HBox {

    private final ViewMenu view;

    TopBar(Session session, Runnable find, Runnable begin, Runnable open, Runnable save) {
        super(8);
        view = new ViewMenu(session);
        getStyleClass().add("top-bar");
        setAlignment(javafx.geometry.Pos.CENTER_LEFT);
        Label name = Parts.label("", "muted");
        name.textProperty()
                .bind(Bindings.createStringBinding(
                        () -> session.job().title()
                                + (session.desk().unsavedProperty().get() ? " · " + Words.of("job.unsaved") : ""),
                        session.jobProperty(),
                        session.desk().unsavedProperty()));
        name.setMinWidth(40);
        Button undo = Parts.button("top.undo", session::undo, "compact");
        undo.disableProperty().bind(session.canUndoProperty().not());
        Button redo = Parts.button("top.redo", session::redo, "compact");
        redo.disableProperty().bind(session.canRedoProperty().not());
        getChildren()
                .addAll(
                        Parts.label(Words.of("app.name"), "brand"),
                        name,
                        Parts.gap(),
                        Parts.button("top.new", begin, "compact"),
                        Parts.button("top.open", open, "compact"),
                        Parts.button("top.save", save, "compact"),
                        Parts.button("top.find", find, "compact"),
                        undo,
                        redo,
                        notation(session),
                        view);
    }

    /** Names a page in the View menu. */
    void addPage(String name, Runnable open) {
        view.addPage(name, open);
    }

    private static HBox notation(Session session) {
        ToggleButton lambda = new ToggleButton(Words.of("top.lambda"));
        ToggleButton afr = new ToggleButton(Words.of("top.afr"));
        lambda.setAccessibleText(Words.of("top.lambda.words"));
        afr.setAccessibleText(Words.of("top.afr.words"));
        HBox box = Parts.choice(new ToggleGroup(), lambda, afr);
        box.setMinWidth(USE_PREF_SIZE);
        box.setAlignment(javafx.geometry.Pos.CENTER);
        lambda.setSelected(!session.afrProperty().get());
        afr.setSelected(session.afrProperty().get());
        session.afrProperty().addListener((p, old, now) -> (now ? afr : lambda).setSelected(true));
        lambda.setOnAction(e -> session.afrProperty().set(false));
        afr.setOnAction(e -> session.afrProperty().set(true));
        return box;
    }
}
