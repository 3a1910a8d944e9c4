package fuelwright.ui.rides;

import fuelwright.ride.Ride;
import fuelwright.ride.RideOptions;
import fuelwright.ride.Role;
import fuelwright.ui.session.RideLacks;
import fuelwright.ui.session.Session;
import fuelwright.ui.theme.Figures;
import fuelwright.ui.theme.Parts;
import fuelwright.ui.theme.Words;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import javafx.scene.Node;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.VBox;

/** Asks for the columns that rides of the job lack: those without which nothing of a ride counts, and those that a screen goes by. */
final class LacksPane {

    private final Session session;
    private final VBox box = new VBox(8);
    private List<Object> shown = List.of();

    LacksPane(Session session) {
        this.session = session;
        box.setId("ride-lacks");
        session.jobProperty().addListener((p, old, now) -> fill());
        fill();
    }

    Node node() {
        return box;
    }

    private void fill() {
        List<RideLacks.Lack> lacks = RideLacks.lacks(session);
        List<RideLacks.Lack> useless = RideLacks.useless(session);
        List<RideLacks.Doubt> doubts = RideLacks.doubts(session);
        List<Object> now = new ArrayList<>();
        lacks.forEach(l -> now.add(List.of(l.ride(), l.roles())));
        useless.forEach(l -> now.add(List.of(l.ride(), l.roles(), "useless")));
        doubts.forEach(d -> now.add(List.of(d.ride(), d.role(), d.column().heading())));
        if (now.equals(shown)) {
            return;
        }
        shown = now;
        box.getChildren().clear();
        lacks.forEach(l -> box.getChildren().add(lack(l)));
        useless.forEach(l -> box.getChildren().add(useless(l)));
        doubts.forEach(d -> box.getChildren().add(doubt(d)));
        Parts.show(box, !now.isEmpty());
    }

    private VBox lack(RideLacks.Lack lack) {
        Ride ride = lack.ride();
        RideOptions before = session.reading().options(ride);
        List<ColumnField> fields = lack.roles().stream()
                .map(role -> new ColumnField(
                        role, lack.columns(), Words.of("rides.column.none"), java.util.Optional.empty()))
                .toList();
        VBox asked = Parts.callout("check", heading(lack), Words.of("rides.lacks.why"));
        FlowPane flow = new FlowPane(12, 6);
        fields.forEach(f -> flow.getChildren().add(f.node()));
        asked.getChildren()
                .addAll(
                        flow,
                        Parts.row(
                                8,
                                Parts.button("rides.refused.again", () -> again(ride, before, fields), "compact"),
                                Parts.button("rides.refused.leave", () -> leave(ride), "compact")));
        return asked;
    }

    private VBox useless(RideLacks.Lack lack) {
        VBox said = Parts.callout("check", heading(lack), Words.of("rides.lacks.others"));
        said.getChildren().add(Parts.row(8, Parts.button("rides.refused.leave", () -> leave(lack.ride()), "compact")));
        return said;
    }

    private static String heading(RideLacks.Lack lack) {
        return Words.of(
                "rides.lacks",
                lack.ride().name(),
                lack.roles().stream().map(LacksPane::word).collect(Collectors.joining(", ")));
    }

    private void again(Ride ride, RideOptions before, List<ColumnField> fields) {
        RideOptions said = before;
        for (ColumnField field : fields) {
            said = field.said(said);
        }
        RideOptions all = said;
        session.reading().again(ride, options -> all);
    }

    private void leave(Ride ride) {
        session.edit(job ->
                job.withRides(job.rides().stream().filter(r -> r.ride() != ride).toList()));
    }

    private VBox doubt(RideLacks.Doubt doubt) {
        String heading = doubt.column().heading();
        VBox asked = Parts.callout(
                "check",
                Words.of(
                        "rides.doubt." + doubt.role().name().toLowerCase(java.util.Locale.ROOT),
                        doubt.ride().name(),
                        heading,
                        doubt.column().examples().stream()
                                .map(Figures::shortest)
                                .collect(Collectors.joining(" · "))),
                Words.of("rides.doubt.why", doubt.screen().words()));
        asked.getChildren()
                .add(Parts.row(
                        8,
                        Parts.button(
                                "rides.doubt.take",
                                () -> session.reading().again(doubt.ride(), o -> o.withRole(heading, doubt.role())),
                                "compact"),
                        Parts.button(
                                "rides.doubt.other",
                                () -> session.reading().again(doubt.ride(), o -> o.withRole(heading, Role.OTHER)),
                                "compact")));
        return asked;
    }

    private static String word(Role role) {
        return role.isMixture() ? Words.of("rides.lacks.mixture") : role.words();
    }
}
