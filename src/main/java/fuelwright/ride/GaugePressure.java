package fuelwright.ride;

import fuelwright.ride.Channel.Confidence;
import java.util.List;

/** Manifold pressure counted from the barometer made absolute: by the barometer channel, else by the standard atmosphere, and said. */
final class GaugePressure {

    /** kPa, ISO 2533 at sea level. */
    static final double STANDARD_KPA = 101.325;

    private static final double NEAR_ZERO_KPA = 6;

    private final Channels channels;

    GaugePressure(Channels channels) {
        this.channels = channels;
    }

    void convert(List<Draft> drafts) {
        Draft pressure = used(drafts, Role.MANIFOLD_PRESSURE);
        if (pressure == null || pressure.stats.count() == 0) {
            return;
        }
        Stats stats = Stats.of(pressure.values, pressure.values.length);
        boolean vacuum = pressure.heading.words().contains(" vacuum ") && stats.min() >= 0;
        boolean saysAbsolute = pressure.heading.saysAbsolute() && !pressure.heading.saysGauge();
        boolean negative = stats.p02() < -1;
        boolean zeroAtKeyOn = zeroAtKeyOn(pressure.values, used(drafts, Role.ENGINE_SPEED));
        String why = vacuum
                ? "counted downward from the barometer"
                : negative
                        ? "values below 0"
                        : zeroAtKeyOn
                                ? "about 0 with the engine stopped"
                                : pressure.heading.saysGauge() && stats.min() < 60 && !saysAbsolute
                                        ? "by its heading"
                                        : "";
        if (why.isEmpty()) {
            return;
        }
        Draft barometer = used(drafts, Role.BAROMETER);
        double base = barometer == null
                ? STANDARD_KPA
                : Stats.of(barometer.values, barometer.values.length).median();
        pressure.scale(vacuum ? -1 : 1, base);
        channels.doubt(
                pressure,
                "gauge pressure (" + why + "): " + Figures.plain(base) + " kPa added, "
                        + (barometer == null ? "the standard atmosphere" : "from " + barometer.heading.text()),
                barometer == null
                        ? "log the barometer, or check the height you rode at"
                        : "check that it isn't absolute");
        Plausible.dropImpossible(pressure, channels);
    }

    private static boolean zeroAtKeyOn(double[] pressure, Draft speed) {
        if (speed == null) {
            return false;
        }
        int stopped = 0;
        int nearZero = 0;
        for (int i = 0; i < pressure.length; i++) {
            if (speed.values[i] < 50 && !Double.isNaN(pressure[i])) {
                stopped++;
                nearZero += Math.abs(pressure[i]) < NEAR_ZERO_KPA ? 1 : 0;
            }
        }
        return stopped >= 3 && nearZero * 2 > stopped;
    }

    private static Draft used(List<Draft> drafts, Role role) {
        return drafts.stream()
                .filter(d -> d.role == role && d.confidence != Confidence.LEFT_OUT)
                .findFirst()
                .orElse(null);
    }
}
