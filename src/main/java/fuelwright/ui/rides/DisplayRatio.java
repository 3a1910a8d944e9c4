package fuelwright.ui.rides;

import fuelwright.mixture.MixtureScale;
import fuelwright.ride.Ride;
import fuelwright.ride.RideOptions;
import fuelwright.ride.Role;
import java.util.Optional;
import java.util.OptionalDouble;

/** What the AFR display of one log of the selected ride is set to. Two loggers have two displays, and each its own ratio. */
public final class DisplayRatio {

    /** Displays are set to some fuel's stoichiometric ratio: about 6.5 for methanol, 14.7 for petrol, 17 for methane (handbook values). */
    static final int LEAST = 6;

    static final int MOST = 20;

    private final RidesModel model;
    private final boolean ofSecond;

    DisplayRatio(RidesModel model, boolean ofSecond) {
        this.model = model;
        this.ofSecond = ofSecond;
    }

    /** The log by itself. */
    private Optional<Ride> log() {
        return model.ride().flatMap(r -> model.session().reading().log(r, ofSecond));
    }

    /** The log's name, where two have to be told apart; empty else. */
    Optional<String> name() {
        return model.second().isPresent() ? log().map(Ride::name) : Optional.empty();
    }

    /** Whether the log has a mixture column whose meaning rests on what its display is set to. */
    public boolean asked() {
        return log().flatMap(r -> r.channel(Role.AFR)).isPresent();
    }

    private OptionalDouble told() {
        RideOptions options =
                model.ride().map(model.session().reading()::options).orElseGet(RideOptions::defaults);
        return ofSecond ? options.secondAfrScale() : options.afrScale();
    }

    /** Whether the user has said what the display is set to. */
    public boolean said() {
        return told().isPresent();
    }

    /** Whether that was taken over from an earlier log with the same headings. */
    boolean remembered() {
        return !ofSecond
                && said()
                && model.ride().filter(model.session().reading()::remembered).isPresent();
    }

    /** The ratio by which the log was read. */
    public double value() {
        return told().orElse(MixtureScale.USUAL_DISPLAY_RATIO);
    }

    /** Takes the ratio as typed, for this log and those with the same headings; false where it can't be one. */
    public boolean take(String typed) {
        double ratio;
        try {
            ratio = Double.parseDouble(typed.strip().replace(',', '.'));
        } catch (NumberFormatException e) {
            return false;
        }
        if (!(ratio >= LEAST && ratio <= MOST)) {
            return false;
        }
        model.ride().ifPresent(r -> model.session().reading().setDisplayRatio(r, ofSecond, ratio));
        return true;
    }

    /** Its field, by which it is found. */
    String id() {
        return ofSecond ? "display-ratio-second" : "display-ratio";
    }
}
