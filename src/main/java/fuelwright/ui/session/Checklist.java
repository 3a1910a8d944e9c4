package fuelwright.ui.session;

import java.util.List;
import javafx.collections.FXCollections;
import javafx.collections.ObservableSet;

/** What is to be done before the first start, and what of it was ticked; begun anew with each job. */
public final class Checklist {

    /** Every check, in the order of the work. */
    public static final List<String> CHECKS = List.of("sensor", "balance", "idle", "trims");

    private final ObservableSet<String> ticked = FXCollections.observableSet();

    /** Those that are done. */
    public ObservableSet<String> ticked() {
        return ticked;
    }

    /** How many are still to be done. */
    public int left() {
        return CHECKS.size() - ticked.size();
    }
}
