package fuelwright.ui.cautions;

import fuelwright.job.Answer;
import fuelwright.safety.Caution;
import fuelwright.ui.session.Missing;
import fuelwright.ui.theme.Fonts;
import fuelwright.ui.theme.Parts;
import fuelwright.ui.theme.StagePane;
import fuelwright.ui.theme.Words;
import java.util.Locale;
import javafx.beans.binding.Bindings;
import javafx.collections.ListChangeListener;
import javafx.geometry.Pos;
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
        model.session().whenShownOtherwise(list::refresh);
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
        VBox content = new VBox(
                12,
                Parts.heading(new Label(Words.of("cautions.title")), summary),
                Parts.choice(new ToggleGroup(), findings, own),
                pages);
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
            selectedProperty().addListener((p, old, now) -> updateItem(getItem(), isEmpty()));
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
            boolean whole = isSelected();
            VBox text = whole ? whole(caution) : new VBox(line(caution));
            text.setAlignment(Pos.CENTER_LEFT);
            HBox.setHgrow(text, Priority.ALWAYS);
            text.setMinWidth(0);
            HBox row = new HBox(12, level(caution), text);
            row.setAlignment(whole ? Pos.TOP_LEFT : Pos.CENTER_LEFT);
            row.getStyleClass().add("list-row");
            if (!whole) {
                row.getStyleClass().add("one-line");
                model.answer(caution).ifPresent(a -> row.getChildren().add(answered(a, caution, true)));
            }
            setGraphic(row);
            setAccessibleText(caution.level().words() + " · " + caution.title() + ": " + model.what(caution) + " "
                    + caution.todo()
                    + model.answer(caution)
                            .map(a -> " " + CautionsModel.words(a, caution))
                            .orElse(""));
        }
    }

    private VBox whole(Caution caution) {
        VBox text = new VBox(
                2,
                Parts.text(Parts.capital(caution.title()), "strong"),
                Parts.text(Parts.sentence(model.what(caution))),
                Parts.text(Parts.sentence(caution.todo()), "muted"));
        model.answer(caution).ifPresent(a -> text.getChildren().add(answered(a, caution, false)));
        return text;
    }

    /** What the caution is called, and as much of what was found as the line holds. */
    private HBox line(Caution caution) {
        Label title = Parts.label(Parts.capital(caution.title()), "strong");
        Label what = Parts.label(Parts.sentence(model.what(caution)), "muted");
        what.setMinWidth(0);
        title.setMinWidth(Label.USE_PREF_SIZE);
        return Parts.row(12, title, what);
    }

    private static Label answered(Answer answer, Caution caution, boolean brief) {
        Label tag = brief
                ? Parts.label(CautionsModel.brief(answer, caution), "tag")
                : Parts.text(CautionsModel.words(answer, caution), "tag");
        if (brief) {
            tag.setMinWidth(Label.USE_PREF_SIZE);
        }
        return tag;
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
