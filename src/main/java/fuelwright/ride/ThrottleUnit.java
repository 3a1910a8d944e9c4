package fuelwright.ride;

import fuelwright.unit.Dimension;
import fuelwright.unit.Unit;
import java.util.Optional;

/** Throttle in %, from %, from 0–1, or from volts between the closed and open positions that the ride itself shows. */
final class ThrottleUnit {

    private static final double SPAN_V = 2.0;

    private final Channels channels;

    ThrottleUnit(Channels channels) {
        this.channels = channels;
    }

    void convert(Draft draft, Optional<Unit> stated) {
        Stats stats = draft.stats;
        boolean said = channels.isSaid(draft);
        if (stated.filter(u -> u.dimension() == Dimension.VOLTAGE).isPresent()) {
            volts(draft, stated.get());
            return;
        }
        Unit unit = stated.orElse(Unit.PERCENT);
        boolean small = stats.count() > 0 && stats.max() <= 1.05 && stats.max() > 0.05 && stats.min() >= -0.05;
        if (!said && small && unit == Unit.PERCENT && stats.distinct() > 2) {
            channels.doubt(
                    draft,
                    "values only between 0 and 1: read as a fraction, not as %",
                    "choose % by hand if that is wrong");
            unit = Unit.FRACTION;
        } else if (stated.isEmpty()) {
            draft.say("no unit stated: read as %");
        }
        draft.toCanonical(unit);
        if (stats.count() > 0) {
            double low = unit.toCanonical(stats.min());
            double high = unit.toCanonical(stats.max());
            if (low > 2) {
                channels.doubt(
                        draft,
                        "never closes: its lowest value is " + Figures.plain(low) + " %",
                        "check that this is the throttle, and its zero; the table must count it the same way");
            }
            if (high < 95) {
                channels.doubt(
                        draft,
                        "never opens fully: its highest value is " + Figures.plain(high) + " %",
                        "nothing, if the ride had no full throttle; otherwise check the sensor's span");
            }
        }
    }

    private void volts(Draft draft, Unit unit) {
        double closed = draft.stats.p02();
        double open = draft.stats.max();
        double span = unit.toCanonical(open) - unit.toCanonical(closed);
        if (draft.stats.count() == 0 || span < SPAN_V) {
            draft.toCanonical(unit);
            draft.leaveOut(
                    "throttle volts that span only " + Figures.plain(span) + " V: closed and open can't be told");
            channels.warn(draft, draft.remark, "log a ride with the throttle closed and fully open");
            return;
        }
        draft.scale(100 / (open - closed), -closed * 100 / (open - closed));
        draft.unit = unit;
        channels.doubt(
                draft,
                "volts: " + Figures.plain(unit.toCanonical(closed)) + " V taken as closed and "
                        + Figures.plain(unit.toCanonical(open)) + " V as open, from this ride",
                "check both; a ride without full throttle gives too high a throttle");
    }
}
