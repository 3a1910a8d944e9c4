package fuelwright.ui.theme;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.function.Consumer;
import java.util.regex.Pattern;
import javafx.beans.binding.Bindings;
import javafx.beans.property.ReadOnlyStringWrapper;
import javafx.beans.value.ObservableBooleanValue;
import javafx.beans.value.ObservableStringValue;
import javafx.event.EventHandler;
import javafx.geometry.HPos;
import javafx.geometry.Insets;
import javafx.geometry.Pos;
import javafx.geometry.VPos;
import javafx.scene.Node;
import javafx.scene.Parent;
import javafx.scene.control.Button;
import javafx.scene.control.ComboBox;
import javafx.scene.control.Label;
import javafx.scene.control.ScrollPane;
import javafx.scene.control.ToggleButton;
import javafx.scene.control.ToggleGroup;
import javafx.scene.control.skin.ComboBoxListViewSkin;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;
import javafx.scene.layout.ColumnConstraints;
import javafx.scene.layout.GridPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;
import javafx.scene.shape.SVGPath;

/** Small parts that every stage is built of. Spacing is 4, 8, 12 or 16. */
public final class Parts {

    private static final Pattern FILE_NAME_FIRST = Pattern.compile("\\S+\\.[A-Za-z]{2,5}\\b");

    private Parts() {}

    public static Label label(String text, String... styles) {
        Label label = new Label(Words.inWindow(text));
        label.getStyleClass().addAll(styles);
        return label;
    }

    /** The words with a capital in front, unless a file's name stands there. */
    public static String capital(String words) {
        return words.isEmpty() || FILE_NAME_FIRST.matcher(words).lookingAt()
                ? words
                : words.substring(0, 1).toUpperCase(java.util.Locale.ROOT) + words.substring(1);
    }

    /** The words as a sentence: a capital in front, a full stop behind. */
    public static String sentence(String words) {
        String text = capital(Words.inWindow(words).strip());
        return text.isEmpty() || ".!?…".indexOf(text.charAt(text.length() - 1)) >= 0 ? text : text + ".";
    }

    /** A paragraph that wraps. */
    public static Label text(String text, String... styles) {
        Label label = label(text, styles);
        label.setWrapText(true);
        label.setMinHeight(Region.USE_PREF_SIZE);
        return label;
    }

    public static Button button(String key, Runnable action, String... styles) {
        Button button = new Button(Words.of(key));
        button.getStyleClass().addAll(styles);
        button.setOnAction(e -> action.run());
        button.setAccessibleText(Words.of(key));
        button.setMinWidth(Region.USE_PREF_SIZE);
        return button;
    }

    /** What takes the keyboard first in a node that is shown; empty where it isn't, or nothing does. */
    public static Optional<Node> firstIn(Node node) {
        if (!node.isVisible() || node.isDisabled()) {
            return Optional.empty();
        }
        if (node.isFocusTraversable()) {
            return Optional.of(node);
        }
        return node instanceof Parent parent
                ? parent.getChildrenUnmodifiable().stream()
                        .map(Parts::firstIn)
                        .flatMap(Optional::stream)
                        .findFirst()
                : Optional.empty();
    }

    /** Toggles of which exactly one is on. */
    public static HBox choice(ToggleGroup group, ToggleButton... toggles) {
        HBox box = new HBox(toggles);
        box.getStyleClass().add("choice");
        for (int i = 0; i < toggles.length; i++) {
            toggles[i].setToggleGroup(group);
            toggles[i].setMinWidth(Region.USE_PREF_SIZE);
            toggles[i]
                    .getStyleClass()
                    .add(i == 0 ? "left-pill" : i == toggles.length - 1 ? "right-pill" : "center-pill");
        }
        group.selectedToggleProperty().addListener((p, old, now) -> {
            if (now == null && old != null) {
                old.setSelected(true);
            }
        });
        return box;
    }

    public static Region gap() {
        Region gap = new Region();
        HBox.setHgrow(gap, Priority.ALWAYS);
        VBox.setVgrow(gap, Priority.ALWAYS);
        return gap;
    }

    public static HBox row(double spacing, Node... nodes) {
        HBox row = new HBox(spacing, nodes);
        row.setAlignment(Pos.CENTER_LEFT);
        return row;
    }

    /** A line with words on the left and a figure on the right. */
    public static HBox fact(String words, String figure, String... figureStyles) {
        Label left = text(words);
        HBox.setHgrow(left, Priority.ALWAYS);
        left.setMaxWidth(Double.MAX_VALUE);
        Label right = label(figure, "figure");
        right.getStyleClass().addAll(figureStyles);
        right.setMinWidth(Region.USE_PREF_SIZE);
        HBox row = row(12, left, right);
        row.getStyleClass().add("fact");
        return row;
    }

    /**
     * A small table.
     *
     * @param wraps the column that takes the room there is and wraps; those before it are words, those behind it figures
     * @param rows each as long as the headings; one of a single entry goes over all columns
     */
    public static GridPane columns(int wraps, List<String> headings, List<List<String>> rows) {
        GridPane grid = new GridPane();
        grid.setHgap(8);
        grid.setVgap(3);
        for (int column = 0; column < headings.size(); column++) {
            ColumnConstraints room = new ColumnConstraints();
            room.setHgrow(column == wraps ? Priority.ALWAYS : Priority.NEVER);
            room.setHalignment(column > wraps ? HPos.RIGHT : HPos.LEFT);
            grid.getColumnConstraints().add(room);
            grid.add(cell(headings.get(column), column == wraps, "muted"), column, 0);
        }
        for (int row = 0; row < rows.size(); row++) {
            List<String> entries = rows.get(row);
            if (entries.size() == 1) {
                Label over = cell(entries.get(0), true, "muted");
                over.setPadding(new Insets(4, 0, 0, 0));
                grid.add(over, 0, row + 1, headings.size(), 1);
                continue;
            }
            for (int column = 0; column < entries.size(); column++) {
                grid.add(cell(entries.get(column), column == wraps, "tabular"), column, row + 1);
            }
        }
        return grid;
    }

    private static Label cell(String text, boolean wraps, String style) {
        Label label = wraps ? text(text, "small", style) : label(text, "small", style);
        GridPane.setValignment(label, VPos.TOP);
        if (!wraps) {
            label.setMinWidth(Region.USE_PREF_SIZE);
        }
        return label;
    }

    /**
     * A list whose entry counts when it is closed again: going through it by keys changes nothing on the way, Escape leaves it as it was. A letter
     * typed goes to the next entry that begins with it.
     */
    public static <T> void takeWhenClosed(ComboBox<T> box, T now, Consumer<T> take) {
        AtomicBoolean left = new AtomicBoolean();
        Runnable taken = () -> {
            T chosen = box.getValue();
            if (box.isShowing() || chosen == null || chosen.equals(now)) {
                return;
            }
            // What can't be taken must not stand there as if it were: what is taken is shown anew.
            box.setValue(now);
            if (!left.get()) {
                take.accept(chosen);
            }
        };
        box.setOnAction(e -> taken.run());
        box.setOnHidden(e -> taken.run());
        box.setOnShowing(e -> left.set(false));
        EventHandler<KeyEvent> leaves = key -> left.set(key.getCode() == KeyCode.ESCAPE);
        box.setOnShown(e -> {
            if (box.getSkin() instanceof ComboBoxListViewSkin<?> skin) {
                // The list is made when it is first shown; a filter that is there already isn't added again.
                skin.getPopupContent().addEventFilter(KeyEvent.KEY_PRESSED, leaves);
            }
        });
        box.addEventHandler(KeyEvent.KEY_TYPED, e -> {
            String typed = e.getCharacter().toLowerCase(Locale.ROOT);
            if (typed.isBlank() || !Character.isLetter(typed.charAt(0)) || e.isShortcutDown() || e.isAltDown()) {
                return;
            }
            box.show();
            int entries = box.getItems().size();
            int from = Math.max(-1, box.getSelectionModel().getSelectedIndex());
            for (int step = 1; step <= entries; step++) {
                int next = (from + step) % entries;
                String words = box.getConverter().toString(box.getItems().get(next));
                if (words.toLowerCase(Locale.ROOT).startsWith(typed)) {
                    box.getSelectionModel().select(next);
                    break;
                }
            }
            e.consume();
        });
    }

    /** A message in a frame: a heading line and what it is about. */
    public static VBox callout(String kind, String heading, String... paragraphs) {
        VBox box = new VBox(4);
        box.getStyleClass().addAll("callout", kind);
        box.getChildren().add(text(heading, "callout-heading"));
        for (String paragraph : paragraphs) {
            box.getChildren().add(text(paragraph));
        }
        box.setFocusTraversable(false);
        return box;
    }

    /** The mark of a file, in front of what is said of one. */
    public static SVGPath fileMark() {
        SVGPath mark = new SVGPath();
        mark.setContent("M1 0.5 H8 L12 4.5 V15.5 H1 Z M8 0.5 V4.5 H12");
        mark.getStyleClass().add("file-mark");
        return mark;
    }

    /** The heading of a stage: title and one line below. */
    public static VBox heading(Label title, Label below) {
        title.getStyleClass().add("stage-title");
        below.getStyleClass().add("muted");
        below.setWrapText(true);
        below.setMinHeight(Region.USE_PREF_SIZE);
        return new VBox(4, title, below);
    }

    /** What stands where nothing is yet: what is missing, and the button that brings it. */
    public static VBox empty(String title, String what, Node... actions) {
        VBox box = new VBox(12, label(title, "empty-title"), text(what, "muted", "empty-text"), row(8, actions));
        box.setAlignment(Pos.CENTER);
        ((HBox) box.getChildren().get(2)).setAlignment(Pos.CENTER);
        box.getStyleClass().add("empty");
        return box;
    }

    /** The same, but while something is being done it says what, instead of what is missing. */
    public static VBox empty(
            String title, String what, ObservableBooleanValue working, ObservableStringValue doing, Node... actions) {
        return empty(new ReadOnlyStringWrapper(title), new ReadOnlyStringWrapper(what), working, doing, actions);
    }

    /** The same with words that may change. */
    public static VBox empty(
            ObservableStringValue title,
            ObservableStringValue what,
            ObservableBooleanValue working,
            ObservableStringValue doing,
            Node... actions) {
        VBox box = empty(title.get(), what.get(), actions);
        Label heading = (Label) box.getChildren().get(0);
        Label text = (Label) box.getChildren().get(1);
        heading.textProperty()
                .bind(Bindings.createStringBinding(
                        () -> working.get() ? Words.of("loading.title") : title.get(), working, title));
        text.textProperty()
                .bind(Bindings.createStringBinding(
                        () -> working.get() ? doing.get() : what.get(), working, doing, what));
        Node row = box.getChildren().get(2);
        row.visibleProperty().bind(Bindings.createBooleanBinding(() -> !working.get(), working));
        return box;
    }

    /** Scrolls up and down only. */
    public static ScrollPane scroll(Node content) {
        ScrollPane pane = new ScrollPane(content);
        pane.setFitToWidth(true);
        pane.setHbarPolicy(ScrollPane.ScrollBarPolicy.NEVER);
        pane.getStyleClass().addAll("plain-scroll", "edge-to-edge");
        return pane;
    }

    /** The work of a stage: fills its place, and scrolls where that is lower than it can be. */
    public static ScrollPane work(Node content) {
        WorkPane page = new WorkPane(content);
        ScrollPane pane = scroll(page);
        pane.setFocusTraversable(false);
        pane.viewportBoundsProperty().addListener((p, old, now) -> page.fill(now.getHeight()));
        return pane;
    }

    /** Shows or removes a node, space and all. */
    public static void show(Node node, boolean shown) {
        node.setVisible(shown);
        node.setManaged(shown);
    }
}
