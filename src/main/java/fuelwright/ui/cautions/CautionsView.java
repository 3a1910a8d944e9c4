package fuelwright.ui.cautions;

import fuelwright.safety.Caution;
import fuelwright.ui.session.Missing;
import fuelwright.ui.theme.Fonts;
import fuelwright.ui.theme.Parts;
import fuelwright.ui.theme.StagePane;
import fuelwright.ui.theme.Words;
import java.util.Locale;
import javafx.beans.binding.Bindings;
import javafx.collections.ListChangeListener;
import javafx.scene.Node;
import javafx.scene.control.Label;
import javafx.scene.control.ListCell;
import javafx.scene.control.ListView;
import javafx.scene.control.ToggleButton;
import javafx.scene.control.ToggleGroup;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.StackPane;
import javafx.scene.layout.VBox;

/** The stage Cautions. */
public final class CautionsView implements StagePane {

    private final CautionsModel model;
    private final ListView<Caution> list = new ListView<>();
    private final StackPane root = new StackPane();
    private final Node explanation;

    public CautionsView(CautionsModel model) {
        this.model = model;
        list.setItems(model.cautions());
        list.setCellFactory(view -> new Row());
        list.getStyleClass().add("quiet-list");
        list.setAccessibleText(Words.of("cautions.title"));
        list.setId("cautions-list");
        list.getSelectionModel().selectedItemProperty().addListener((p, old, now) -> {
            if (now != null && now != model.selectedProperty().get()) {
                model.select(now);
            }
        });
        list.addEventFilter(KeyEvent.KEY_PRESSED, this::key);
        list.setOnMouseClicked(e -> {
            if (list.getSelectionModel().getSelectedItem() != null) {
                model.select(list.getSelectionModel().getSelectedItem());
            }
        });
        model.selectedProperty().addListener((p, old, now) -> select(now));
        select(model.selectedProperty().get());
        VBox.setVgrow(list, Priority.ALWAYS);
        Label summary = new Label(model.summary());
        model.cautions().addListener((ListChangeListener<Caution>) c -> summary.setText(model.summary()));
        MomentTrace trace = new MomentTrace(model);
        model.session().jobProperty().addListener((p, old, now) -> list.refresh());
        model.session().afrProperty().addListener((p, old, now) -> list.refresh());
        VBox found = new VBox(12, list, trace.node());
        Node limits = new LimitsPane(new LimitsModel(model.session())).node();
        StackPane pages = new StackPane(found, limits);
        VBox.setVgrow(pages, Priority.ALWAYS);
        ToggleButton findings = new ToggleButton(Words.of("cautions.page.found"));
        ToggleButton own = new ToggleButton(Words.of("cautions.page.limits"));
        own.setId("cautions-limits");
        findings.setSelected(true);
        Node aboutFound = new CautionPane(model).node();
        Node aboutLimits = aboutLimits();
        own.selectedProperty().addListener((p, old, now) -> {
            Parts.show(limits, now);
            Parts.show(found, !now);
            Parts.show(aboutLimits, now);
            Parts.show(aboutFound, !now);
        });
        Parts.show(aboutLimits, false);
        Parts.show(limits, false);
        // On the left: on the right the window says that something is being worked out anew.
        HBox head = new HBox(
                24,
                Parts.heading(new Label(Words.of("cautions.title")), summary),
                Parts.choice(new ToggleGroup(), findings, own));
        VBox content = new VBox(12, head, pages);
        content.visibleProperty().bind(Bindings.isNotEmpty(model.cautions()));
        Node waiting = Missing.instead(
                model.session(),
                "cautions.empty",
                model.session().analysisProperty().isNotNull());
        Node none = Parts.empty(Words.of("cautions.none.title"), Words.of("cautions.none"));
        none.visibleProperty()
                .bind(model.session().analysisProperty().isNotNull().and(Bindings.isEmpty(model.cautions())));
        root.getChildren().addAll(content, waiting, none);
        root.getStyleClass().add("work");
        explanation = Missing.beside(
                new StackPane(aboutFound, aboutLimits),
                "cautions.empty",
                model.session().analysisProperty().isNotNull());
    }

    private static Node aboutLimits() {
        VBox about = new VBox(
                8,
                Parts.label(Words.of("cautions.page.limits"), "section"),
                Parts.text(Words.of("limits.about")),
                Parts.text(Words.of("limits.about.origin"), "muted"));
        about.getStyleClass().add("explanation-inner");
        return about;
    }

    /** Enter opens the cell, left and right go through the moments. */
    private void key(KeyEvent event) {
        if (event.isShortcutDown() || event.isAltDown()) {
            return;
        }
        if (event.getCode() == KeyCode.ENTER) {
            model.showCell();
        } else if (event.getCode() == KeyCode.LEFT) {
            model.step(-1);
        } else if (event.getCode() == KeyCode.RIGHT) {
            model.step(1);
        } else {
            return;
        }
        event.consume();
    }

    private void select(Caution caution) {
        if (list.getSelectionModel().getSelectedItem() != caution) {
            list.getSelectionModel().select(caution);
        }
    }

    static Label level(Caution caution) {
        String sign = caution.level() == Caution.Level.STOP ? "! " : caution.level() == Caution.Level.CHECK ? "? " : "";
        Label level = Parts.label(sign + caution.level().words(), "level");
        level.getStyleClass().add(caution.level().name().toLowerCase(Locale.ROOT));
        level.setMinWidth(Fonts.grown(72));
        level.setPrefWidth(Fonts.grown(72));
        level.setAlignment(javafx.geometry.Pos.CENTER);
        return level;
    }

    private final class Row extends ListCell<Caution> {

        private Row() {
            setPrefWidth(0);
        }

        @Override
        protected void updateItem(Caution caution, boolean empty) {
            super.updateItem(caution, empty);
            setText(null);
            if (empty || caution == null) {
                setGraphic(null);
                setAccessibleText("");
                return;
            }
            VBox text = new VBox(
                    2,
                    Parts.text(Parts.capital(caution.title()), "strong"),
                    Parts.text(Parts.sentence(model.what(caution))),
                    Parts.text(Parts.sentence(model.todo(caution)), "muted"));
            model.answer(caution).ifPresent(a -> {
                Label answered = Parts.text(CautionsModel.words(a, caution), "tag");
                text.getChildren().add(answered);
            });
            HBox.setHgrow(text, Priority.ALWAYS);
            HBox row = new HBox(12, level(caution), text);
            row.getStyleClass().add("list-row");
            setGraphic(row);
            setAccessibleText(caution.level().words() + " · " + caution.title() + ": " + model.what(caution) + " "
                    + model.todo(caution)
                    + model.answer(caution)
                            .map(a -> " " + CautionsModel.words(a, caution))
                            .orElse(""));
        }
    }

    @Override
    public Node work() {
        return root;
    }

    @Override
    public Node explanation() {
        return explanation;
    }

    @Override
    public Node first() {
        return list;
    }
}
