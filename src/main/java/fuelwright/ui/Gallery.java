package fuelwright.ui;

import fuelwright.ui.machine.MachineExhibits;
import fuelwright.ui.plot.PlotExhibits;
import fuelwright.ui.power.PowerExhibits;
import fuelwright.ui.proposal.ProposalExhibits;
import fuelwright.ui.session.BackgroundRunner;
import fuelwright.ui.session.Services;
import fuelwright.ui.session.Session;
import fuelwright.ui.session.Stage;
import fuelwright.ui.shell.ShellExhibits;
import fuelwright.ui.tables.TableExhibits;
import fuelwright.ui.theme.Exhibit;
import fuelwright.ui.theme.Fonts;
import fuelwright.ui.theme.PartExhibits;
import fuelwright.ui.theme.Parts;
import fuelwright.ui.theme.TextSize;
import fuelwright.ui.theme.Theme;
import java.util.ArrayList;
import java.util.List;
import javafx.application.Application;
import javafx.beans.property.SimpleBooleanProperty;
import javafx.scene.Scene;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.ScrollPane;
import javafx.scene.control.ToggleButton;
import javafx.scene.control.ToggleGroup;
import javafx.scene.layout.BorderPane;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;

/** For those who work on the program: every control of our own in every state, {@code --gallery}. T changes the theme, + and − the size of text. */
final class Gallery {

    private final Services services;
    private final ScrollPane scroll = Parts.scroll(new VBox());
    private final BorderPane frame = new BorderPane(scroll);
    private final Scene scene = new Scene(frame, 1280, 800);
    private Theme theme;
    private TextSize size;
    private StageExhibits stages;
    private int room;

    Gallery(Services services, Theme theme, TextSize size) {
        this.services = services;
        this.theme = theme;
        this.size = size;
        frame.setStyle("-fx-font-family: \"" + Fonts.family() + "\";");
        scene.setOnKeyTyped(e -> {
            switch (e.getCharacter()) {
                case "t" -> show(this.theme.next(), this.size);
                case "+" -> show(this.theme, this.size.larger());
                case "-" -> show(this.theme, this.size.smaller());
                default -> {}
            }
        });
        show(theme, size);
    }

    Scene scene() {
        return scene;
    }

    /** What is shown: a new set for every theme, since controls are told theirs. */
    List<Exhibit> exhibits(int room) {
        if (room == 0) {
            return controls();
        }
        return room <= Stage.values().length ? stages.of(Stage.values()[room - 1]) : stages.pages();
    }

    private static String name(int room) {
        return room == 0 ? "Controls" : room <= Stage.values().length ? Stage.values()[room - 1].words() : "Pages";
    }

    /** How many rooms there are: one for the controls, one for each stage, one for the pages over them. */
    static int roomCount() {
        return Stage.values().length + 2;
    }

    /** Goes into a room, 0 first. */
    void enter(int other) {
        room = other;
        scroll.setVvalue(0);
        fill();
    }

    private List<Exhibit> controls() {
        List<Exhibit> all = new ArrayList<>(PlotExhibits.all(theme));
        all.addAll(MachineExhibits.all(theme));
        all.addAll(PowerExhibits.all(theme));
        all.addAll(PartExhibits.all(new SimpleBooleanProperty(true), new SimpleBooleanProperty(false)));
        all.addAll(TableExhibits.all(this::session));
        all.addAll(ProposalExhibits.all(this::session));
        all.addAll(ShellExhibits.all(this::session));
        return all;
    }

    /** The sessions of the stages that are shown. */
    Session session(StageExhibits.State state) {
        return stages.of(state);
    }

    private Session session() {
        Session session = new Session(services, new BackgroundRunner());
        session.themeProperty().set(theme);
        return session;
    }

    void show(Theme otherTheme, TextSize otherSize) {
        if (stages == null || otherTheme != theme) {
            if (stages != null) {
                stages.close();
            }
            stages = new StageExhibits(services, otherTheme);
        }
        theme = otherTheme;
        size = otherSize;
        Application.setUserAgentStylesheet(theme.base());
        Fonts.use(size);
        theme.applyTo(scene, size);
        fill();
    }

    private void fill() {
        double place = scroll.getVvalue();
        scroll.setContent(shown());
        scroll.setVvalue(place);
        frame.setTop(head());
    }

    private Region head() {
        Label name = Parts.label("Gallery", "stage-title");
        Label now = Parts.label(theme + ", " + size, "muted");
        Button other = new Button("Theme (T)");
        other.setOnAction(e -> show(theme.next(), size));
        Button larger = new Button("Text +");
        larger.setOnAction(e -> show(theme, size.larger()));
        Button smaller = new Button("Text −");
        smaller.setOnAction(e -> show(theme, size.smaller()));
        ToggleButton[] rooms = new ToggleButton[roomCount()];
        for (int i = 0; i < rooms.length; i++) {
            int which = i;
            rooms[i] = new ToggleButton(name(i));
            rooms[i].setSelected(i == room);
            rooms[i].setOnAction(e -> enter(which));
        }
        var row = Parts.row(12, name, Parts.choice(new ToggleGroup(), rooms), now, Parts.gap(), other, smaller, larger);
        row.getStyleClass().add("top-bar");
        return row;
    }

    private VBox shown() {
        VBox rooms = new VBox(24);
        rooms.getStyleClass().add("work");
        FlowPane room = null;
        String control = "";
        for (Exhibit exhibit : exhibits(this.room)) {
            if (!exhibit.control().equals(control)) {
                control = exhibit.control();
                room = new FlowPane(16, 16);
                rooms.getChildren().add(new VBox(8, Parts.label(control, "section"), room));
            }
            room.getChildren().add(framed(exhibit));
        }
        return rooms;
    }

    private static VBox framed(Exhibit exhibit) {
        if (exhibit.node() instanceof Region region) {
            if (exhibit.width() > 0) {
                region.setPrefWidth(exhibit.width());
                region.setMaxWidth(exhibit.width());
            }
            if (exhibit.height() > 0) {
                region.setPrefHeight(exhibit.height());
            }
        }
        return new VBox(4, exhibit.node(), Parts.label(exhibit.state(), "muted", "small"));
    }
}
