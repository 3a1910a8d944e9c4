package fuelwright.ui.rides;

import fuelwright.ride.ClockAlignment;
import fuelwright.ui.theme.AskFiles;
import fuelwright.ui.theme.Figures;
import fuelwright.ui.theme.Parts;
import fuelwright.ui.theme.Words;
import fuelwright.work.SecondLogger;
import java.util.Optional;
import javafx.scene.Node;
import javafx.scene.input.KeyCode;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.VBox;

/** The second logger of a ride: adding one, how its clock lies and how sure that is, and moving it by hand. */
final class SecondPane {

    private static final double SMALL_S = 0.02;
    private static final double LARGE_S = 0.2;
    private static final double DRIFT = 20e-6;

    private SecondPane() {}

    static VBox of(RidesModel model) {
        VBox box = new VBox(8, Parts.label(Words.of("rides.second"), "section"));
        Optional<SecondLogger> second = model.second();
        if (second.isEmpty()) {
            box.getChildren()
                    .addAll(
                            Parts.text(Words.of("rides.second.why"), "muted", "small"),
                            Parts.button(
                                    "rides.second.add",
                                    () -> AskFiles.choose(
                                            box,
                                            files -> files.stream().findFirst().ifPresent(model::addSecond)),
                                    "compact"));
            return box;
        }
        ClockAlignment a = second.get().alignment();
        box.getChildren().add(Parts.text(second.get().second().name(), "strong"));
        box.getChildren()
                .addAll(
                        Parts.fact(Words.of("rides.second.offset"), Figures.signed(a.offsetS(), 2) + " s"),
                        Parts.fact(
                                Words.of("rides.second.drift"),
                                Words.of("rides.second.millionths", Figures.signed(a.drift() * 1e6, 0))));
        if (a.by() == ClockAlignment.By.HAND) {
            box.getChildren().add(Parts.text(Words.of("rides.second.hand"), "muted", "small"));
        } else {
            box.getChildren()
                    .addAll(
                            Parts.fact(Words.of("rides.second.sure"), Figures.plusMinus(a.errorS(), 2) + " s"),
                            Parts.text(
                                    Words.of(
                                            "rides.second.agree",
                                            a.by().words(),
                                            a.agreeing(),
                                            a.windows(),
                                            Figures.plain(a.correlation(), 2)),
                                    "muted",
                                    "small"));
        }
        FlowPane nudges = new FlowPane(
                4,
                4,
                Parts.button("rides.second.muchearlier", () -> model.nudge(-LARGE_S), "compact"),
                Parts.button("rides.second.earlier", () -> model.nudge(-SMALL_S), "compact"),
                Parts.button("rides.second.later", () -> model.nudge(SMALL_S), "compact"),
                Parts.button("rides.second.muchlater", () -> model.nudge(LARGE_S), "compact"),
                Parts.button("rides.second.slower", () -> model.drift(-DRIFT), "compact"),
                Parts.button("rides.second.faster", () -> model.drift(DRIFT), "compact"));
        for (Node button : nudges.getChildren()) {
            button.setOnKeyPressed(e -> {
                if (e.getCode() == KeyCode.LEFT || e.getCode() == KeyCode.RIGHT) {
                    double by = e.isShiftDown() ? LARGE_S : SMALL_S;
                    model.nudge(e.getCode() == KeyCode.LEFT ? -by : by);
                    e.consume();
                }
            });
        }
        nudges.setId("nudges");
        box.getChildren()
                .addAll(
                        nudges,
                        Parts.text(Words.of("rides.second.keys"), "muted", "small"),
                        Parts.button("rides.second.remove", model::withoutSecond, "compact"));
        return box;
    }
}
