package fuelwright.ui.power;

import fuelwright.ui.theme.OverPage;
import fuelwright.ui.theme.Parts;
import fuelwright.ui.theme.Words;
import java.util.Locale;
import java.util.Optional;
import javafx.scene.control.Label;
import javafx.scene.control.ToggleButton;
import javafx.scene.control.ToggleGroup;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.StackPane;
import javafx.scene.layout.VBox;

/** The page of what the part gave. */
public final class GainView extends OverPage {

    private final GainModel model;
    private final GainPane pane;
    private final Label meaning = Parts.text("", "muted");
    private final VBox why = new VBox();
    private final HBox choice;
    private final VBox content;

    public GainView(GainModel model) {
        super("gain-page", "gain.title", "gain.below");
        this.model = model;
        pane = new GainPane(model.session().themeProperty());
        VBox.setVgrow(pane, Priority.ALWAYS);
        ToggleButton[] toggles = new ToggleButton[GainMap.Shown.values().length];
        for (GainMap.Shown what : GainMap.Shown.values()) {
            ToggleButton toggle =
                    new ToggleButton(Words.of("gain.shown." + what.name().toLowerCase(Locale.ROOT)));
            toggle.setSelected(what == model.shown());
            toggle.setOnAction(e -> {
                model.show(what);
                show();
            });
            toggles[what.ordinal()] = toggle;
        }
        choice = Parts.choice(new ToggleGroup(), toggles);
        HBox.setHgrow(meaning, Priority.ALWAYS);
        content = new VBox(12, Parts.row(16, choice, meaning), pane, Parts.text(Words.of("gain.caveat"), "muted"));
        fill(new StackPane(content, why));
        model.session().themeProperty().addListener((p, old, now) -> show());
        model.session().whenShownOtherwise(this::show);
        model.session().analysisProperty().addListener((p, old, now) -> show());
        model.session().workingProperty().addListener((p, old, now) -> show());
        model.session().doingProperty().addListener((p, old, now) -> show());
        model.session().stageProperty().addListener((p, old, now) -> leave());
    }

    @Override
    public void open() {
        super.open();
        show();
        choice.getChildren().get(model.shown().ordinal()).requestFocus();
    }

    private void show() {
        if (!isVisible()) {
            return;
        }
        Optional<GainMap> map = model.map(model.session().themeProperty().get().palette());
        Parts.show(content, map.isPresent());
        Parts.show(why, map.isEmpty());
        why.getChildren()
                .setAll(Parts.callout(
                        "note", Words.of(model.isWorking() ? "loading.title" : "gain.none"), model.whyNot()));
        meaning.setText(model.meaning());
        Parts.show(choice, model.hasAmounts());
        map.ifPresent(pane::show);
    }
}
