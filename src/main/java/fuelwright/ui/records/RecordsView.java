package fuelwright.ui.records;

import fuelwright.ui.theme.AskFiles;
import fuelwright.ui.theme.OverPage;
import fuelwright.ui.theme.Parts;
import fuelwright.ui.theme.Words;
import fuelwright.work.JobFacts;
import fuelwright.work.JobRecord;
import java.util.List;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.ListCell;
import javafx.scene.control.ListView;
import javafx.scene.control.SelectionMode;
import javafx.scene.control.TextField;
import javafx.scene.control.ToggleButton;
import javafx.scene.control.ToggleGroup;
import javafx.scene.input.KeyCode;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.StackPane;
import javafx.scene.layout.VBox;

/** The page of a folder of jobs. */
public final class RecordsView extends OverPage {

    private static final double LIST_WIDTH = 340;

    private final RecordsModel model;
    private final Label folder = Parts.label("", "muted");
    private final TextField search = new TextField();
    private final ListView<JobRecord> list = new ListView<>();
    private final Label count = Parts.text("", "muted", "small");
    private final HBox missing = Parts.row(8);
    private final SideBySide sides;
    private final LikePane like;
    private final HBox columns;
    private final StackPane empty = new StackPane();
    private boolean filling;

    public RecordsView(RecordsModel model) {
        super("records-page", "records.title", "records.below");
        this.model = model;
        sides = new SideBySide(model);
        like = new LikePane(model);
        search.setId("records-find");
        Label find = Parts.label(Words.of("records.find"), "field-name");
        find.setLabelFor(search);
        find.setMinWidth(USE_PREF_SIZE);
        HBox.setHgrow(search, Priority.ALWAYS);
        VBox left = new VBox(8, folders(), Parts.row(8, find, search), count, list, missing);
        left.setMinWidth(LIST_WIDTH);
        left.setMaxWidth(LIST_WIDTH);
        Node right = right();
        HBox.setHgrow(right, Priority.ALWAYS);
        columns = new HBox(16, left, right);
        empty.setId("records-empty");
        fill(new StackPane(columns, empty));
        list();
        search.setPromptText(Words.of("records.search"));
        search.setAccessibleText(Words.of("records.search"));
        search.textProperty().addListener((p, old, now) -> model.find(now));
        model.foundProperty().addListener((p, old, now) -> fillList());
        model.stateProperty().addListener((p, old, now) -> show());
        model.session().themeProperty().addListener((p, old, now) -> show());
        model.session().jobProperty().addListener((p, old, now) -> {
            if (isVisible()) {
                like.show();
            }
        });
        model.session().stageProperty().addListener((p, old, now) -> leave());
    }

    private HBox folders() {
        folder.setTextOverrun(javafx.scene.control.OverrunStyle.LEADING_ELLIPSIS);
        folder.setMaxWidth(Double.MAX_VALUE);
        HBox.setHgrow(folder, Priority.ALWAYS);
        return Parts.row(8, folder, Parts.button("records.folder", this::chooseFolder, "compact"));
    }

    private void chooseFolder() {
        AskFiles.folder(this, Words.of("records.folder.title"), model::read);
    }

    /** What stands in the place of list and facts while there is no job to choose from. */
    private void showEmpty(RecordsModel.State state) {
        boolean nothing =
                state.all().isEmpty() && !state.reading() && state.trouble().isEmpty();
        boolean had = empty.isFocusWithin();
        if (nothing) {
            String what =
                    state.folder().map(f -> Words.of("records.empty") + " " + f).orElse(Words.of("records.choose"));
            Button choose = Parts.button("records.folder", this::chooseFolder, "primary");
            choose.setId("records-choose");
            String title = state.folder().isEmpty() ? "records.choose.title" : "records.empty.title";
            empty.getChildren().setAll(Parts.empty(Words.of(title), what, choose));
        }
        Parts.show(columns, !nothing);
        Parts.show(empty, nothing);
        if (had) {
            focusFirst();
        }
    }

    private void focusFirst() {
        Node first = empty.isVisible() ? empty.lookup("#records-choose") : search;
        first.requestFocus();
    }

    private void list() {
        list.getSelectionModel().setSelectionMode(SelectionMode.MULTIPLE);
        list.setCellFactory(view -> new Row());
        list.getStyleClass().add("quiet-list");
        list.setAccessibleText(Words.of("records.title"));
        list.setId("records-list");
        VBox.setVgrow(list, Priority.ALWAYS);
        list.getSelectionModel().getSelectedItems().addListener((javafx.collections.ListChangeListener<JobRecord>)
                c -> {
                    if (!filling) {
                        model.choose(list.getSelectionModel().getSelectedItems().stream()
                                .filter(java.util.Objects::nonNull)
                                .toList());
                    }
                });
        list.setOnKeyPressed(e -> {
            if (e.getCode() == KeyCode.ENTER) {
                openChosen();
                e.consume();
            }
        });
        list.setOnMouseClicked(e -> {
            if (e.getClickCount() == 2) {
                openChosen();
            }
        });
    }

    /** Opens the job as any other file. */
    private void openChosen() {
        JobRecord one = list.getSelectionModel().getSelectedItem();
        if (one != null && one.stored().isPresent()) {
            leave();
            model.session().open(List.of(one.file()));
        }
    }

    private Node right() {
        ToggleButton compare = new ToggleButton(Words.of("records.page.compare"));
        ToggleButton engines = new ToggleButton(Words.of("records.page.like"));
        compare.setSelected(true);
        Parts.show(like, false);
        engines.selectedProperty().addListener((p, old, now) -> {
            Parts.show(like, now);
            Parts.show(sides, !now);
        });
        StackPane pages = new StackPane(sides, like);
        VBox.setVgrow(pages, Priority.ALWAYS);
        HBox choice = Parts.choice(new ToggleGroup(), compare, engines);
        choice.setMaxWidth(USE_PREF_SIZE);
        return new VBox(12, choice, pages);
    }

    @Override
    public void open() {
        super.open();
        model.begin();
        show();
        focusFirst();
    }

    private void fillList() {
        filling = true;
        list.getItems().setAll(model.foundProperty().get());
        model.chosenProperty().get().stream()
                .filter(list.getItems()::contains)
                .forEach(list.getSelectionModel()::select);
        filling = false;
        show();
    }

    private void show() {
        RecordsModel.State state = model.stateProperty().get();
        folder.setText(state.folder().map(Object::toString).orElse(Words.of("records.nofolder")));
        int found = model.foundProperty().get().size();
        int all = state.all().size();
        if (state.reading()) {
            count.setText(Words.of("records.reading"));
        } else if (!state.trouble().isEmpty()) {
            count.setText(state.trouble());
        } else {
            count.setText(Words.of("records.count", found, all));
        }
        showEmpty(state);
        int without = model.missing();
        missing.getChildren()
                .setAll(
                        Parts.text(Words.of("records.missing", without), "muted", "small"),
                        Parts.button("records.workout", model::workOut, "compact"));
        HBox.setHgrow(missing.getChildren().get(0), Priority.ALWAYS);
        Parts.show(missing, without > 0 && !state.reading());
        sides.show();
        like.show();
    }

    /** Name and the most telling facts. */
    private static final class Row extends ListCell<JobRecord> {
        @Override
        protected void updateItem(JobRecord record, boolean empty) {
            super.updateItem(record, empty);
            if (empty || record == null) {
                setGraphic(null);
                setAccessibleText("");
                return;
            }
            Label facts = Parts.text(JobFacts.line(record), "muted", "small");
            Label name = Parts.text(record.name(), "section");
            VBox box = new VBox(2, name, Parts.text(record.place(), "small"), facts);
            box.setPrefWidth(LIST_WIDTH - 40);
            box.setMaxWidth(LIST_WIDTH - 40);
            box.getStyleClass().add("list-row");
            setGraphic(box);
            setAccessibleText(record.name() + ", " + record.place() + ", " + facts.getText());
        }
    }
}
