package fuelwright.ui.shell;

import fuelwright.ui.session.Session;
import fuelwright.ui.theme.Parts;
import fuelwright.ui.theme.Words;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import javafx.beans.binding.Bindings;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.MenuButton;
import javafx.scene.control.MenuItem;
import javafx.scene.control.SeparatorMenuItem;
import javafx.scene.control.ToggleButton;
import javafx.scene.control.ToggleGroup;
import javafx.scene.control.Tooltip;
import javafx.scene.layout.HBox;

/** Which job this is, and what counts everywhere: find an action, undo, redo, notation of mixture, looks. */
final class TopBar extends HBox {

    /** Widths, at normal text, below which words are dropped and the job's buttons become one menu. */
    private static final double WIDE = 1180;

    private static final double NARROW = 1100;

    private static final int MOST_RECENT = 8;

    private final ViewMenu view;
    private List<Path> recentJobs;

    TopBar(Session session, Runnable find, Runnable begin, Runnable open, Runnable save) {
        super(8);
        view = new ViewMenu(session);
        recentJobs = session.desk().recent();
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
        Tooltip whole = new Tooltip();
        whole.textProperty().bind(name.textProperty());
        name.setTooltip(whole);
        Label brand = Parts.label(Words.of("app.name"), "brand");
        brand.setMinWidth(USE_PREF_SIZE);
        Button undo = Parts.button("top.undo", session::undo, "compact");
        undo.disableProperty().bind(session.canUndoProperty().not());
        Button redo = Parts.button("top.redo", session::redo, "compact");
        redo.disableProperty().bind(session.canRedoProperty().not());
        MenuButton file = new MenuButton(Words.of("top.job"));
        file.getStyleClass().add("compact");
        file.setMinWidth(USE_PREF_SIZE);
        file.setId("top-job");
        List<MenuItem> always = List.of(item("top.new", begin), item("top.open", open), item("top.save", save));
        MenuButton recent = new MenuButton(Words.of("top.recent.short"));
        recent.getStyleClass().add("compact");
        recent.setId("top-recent");
        recent.setAccessibleText(Words.of("top.recent"));
        recent.setTooltip(new Tooltip(Words.of("top.recent")));
        recent.setMinWidth(USE_PREF_SIZE);
        List<Button> apart = List.of(
                Parts.button("top.new", begin, "compact"),
                Parts.button("top.open", open, "compact"),
                Parts.button("top.save", save, "compact"));
        Button finding = Parts.button("top.find", find, "compact");
        getChildren().addAll(brand, name, Parts.gap(), file);
        getChildren().addAll(apart);
        getChildren().add(getChildren().indexOf(apart.get(1)) + 1, recent);
        getChildren().addAll(finding, undo, redo, notation(session), view);
        Runnable fit = () -> {
            double width = getWidth() / session.textSizeProperty().get().factor();
            boolean narrow = width > 0 && width < NARROW;
            Parts.show(file, narrow);
            apart.forEach(b -> Parts.show(b, !narrow));
            List<MenuItem> jobs = recent(session, recentJobs);
            Parts.show(recent, !narrow && !jobs.isEmpty());
            recent.getItems().setAll(jobs);
            file.getItems().setAll(always);
            if (!jobs.isEmpty()) {
                MenuItem heading = new MenuItem(Words.of("top.recent"));
                heading.getStyleClass().add("menu-heading");
                heading.setDisable(true);
                file.getItems().addAll(new SeparatorMenuItem(), heading);
                file.getItems().addAll(recent(session, recentJobs));
            }
            finding.setText(Words.of(width > 0 && width < WIDE ? "top.find.short" : "top.find"));
        };
        widthProperty().addListener((p, old, now) -> fit.run());
        session.textSizeProperty().addListener((p, old, now) -> fit.run());
        session.desk().fileProperty().addListener((p, old, now) -> {
            recentJobs = session.desk().recent();
            fit.run();
        });
        fit.run();
    }

    /** The jobs opened last, the one that is open aside. */
    private static List<MenuItem> recent(Session session, List<Path> jobs) {
        Optional<Path> now =
                session.desk().fileProperty().get().map(f -> f.toAbsolutePath().normalize());
        return jobs.stream()
                .filter(f -> !now.equals(Optional.of(f)))
                .limit(MOST_RECENT)
                .map(f -> {
                    MenuItem item = new MenuItem(Words.of(
                            "top.recent.of", f.getFileName(), f.toAbsolutePath().getParent()));
                    item.setMnemonicParsing(false);
                    item.setOnAction(e -> session.open(List.of(f)));
                    return item;
                })
                .toList();
    }

    private static MenuItem item(String key, Runnable action) {
        MenuItem item = new MenuItem(Words.of(key));
        item.setOnAction(e -> action.run());
        return item;
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
