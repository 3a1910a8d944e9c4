package fuelwright.ui.session;

import fuelwright.work.Analysis;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;

/** The readings near the selected cell, worked out beside the window's thread: it takes a pass over all rides. Only the newest counts. */
public final class NearReadings {

    private final Session session;
    private final String lane;
    private final ReadOnlyObjectWrapper<CellReadings> readings = new ReadOnlyObjectWrapper<>();

    /** @param who tells apart those who watch, in the names of their work */
    public NearReadings(Session session, String who) {
        this.session = session;
        this.lane = Runner.LOOK + "-near-" + who;
        session.analysisProperty().addListener((p, old, now) -> follow());
        session.cellProperty().addListener((p, old, now) -> follow());
        follow();
    }

    private void follow() {
        Analysis analysis = session.analysis();
        int cell = session.cellProperty().get();
        readings.set(null);
        if (analysis != null && cell >= 0 && cell < analysis.estimate().table().cells()) {
            session.look(lane, (p, c) -> CellReadings.of(analysis, cell), near -> {
                boolean any = near.counting() + near.screenedOut() > 0;
                if (any
                        && session.analysis() == analysis
                        && session.cellProperty().get() == cell) {
                    readings.set(near);
                }
            });
        }
    }

    /** Null while they are worked out, where no cell is selected, and where nothing was read near it. */
    public ReadOnlyObjectProperty<CellReadings> readingsProperty() {
        return readings.getReadOnlyProperty();
    }
}
