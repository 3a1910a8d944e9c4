package fuelwright.ui.cautions;

import fuelwright.mixture.Fuel;
import fuelwright.safety.Limit;
import fuelwright.ui.session.Session;
import fuelwright.ui.theme.Figures;
import fuelwright.ui.theme.Parts;
import fuelwright.ui.theme.Words;
import fuelwright.unit.Measured;
import java.util.List;
import java.util.Optional;

/** The limits that the cautions are judged by, without their looks. */
public final class LimitsModel {

    /**
     * Limits that belong together.
     *
     * @param key key of the heading
     */
    record Group(String key, List<Limit> limits) {}

    static final List<Group> GROUPS = List.of(
            new Group(
                    "limits.lean",
                    List.of(
                            Limit.LEAN_EXCESS,
                            Limit.LEAN_CEILING,
                            Limit.LEAN_FOR,
                            Limit.LIGHT_LOAD_EXCESS,
                            Limit.FUEL_CUT_CLEARING)),
            new Group("limits.proposal", List.of(Limit.LEFT_LEAN, Limit.CLIFF, Limit.LARGE_ADDITION, Limit.LARGE_CUT)),
            new Group("limits.injectors", List.of(Limit.DUTY_CHECK, Limit.DUTY_STOP, Limit.INJECTIONS_PER_CYCLE)),
            new Group("limits.exhaust", List.of(Limit.EXHAUST_CHECK, Limit.EXHAUST_STOP)),
            new Group(
                    "limits.sensors",
                    List.of(
                            Limit.SENSOR_FROZEN,
                            Limit.SENSOR_SLOW,
                            Limit.SENSOR_TOP,
                            Limit.SENSORS_APART,
                            Limit.DRIFT)),
            new Group(
                    "limits.conditions",
                    List.of(
                            Limit.COOLANT_LEAST,
                            Limit.COOLANT_MOST,
                            Limit.INTAKE_MOST,
                            Limit.INTAKE_APART,
                            Limit.BAROMETER_APART,
                            Limit.BATTERY_LEAST,
                            Limit.RIDE_LEAST)));

    private final Session session;

    public LimitsModel(Session session) {
        this.session = session;
    }

    /** The figure in force, as a field shows it. */
    public String text(Limit limit) {
        return text(limit, session.job().limits().of(limit));
    }

    public String usual(Limit limit) {
        return text(limit, limit.usual(fuel()));
    }

    public String bounds(Limit limit) {
        return Words.of("limits.bounds", text(limit, limit.least()), text(limit, limit.most()));
    }

    /** In the unit that is shown; all figures of a line have as many decimals. */
    private String text(Limit limit, double value) {
        return session.shownIn().field(figure(limit, value));
    }

    private Measured figure(Limit limit, double value) {
        Measured m = limit.measured(value);
        return new Measured(value, m.unit(), decimals(limit), m.difference(), false);
    }

    /** Where the usual figure comes from. */
    String origin(Limit limit) {
        return limit.origin().in(session.shownIn());
    }

    /** What a limit is called, with its unit. */
    String name(Limit limit) {
        String words = Parts.capital(limit.words());
        return unit(limit).isEmpty() ? words : words + ", " + unit(limit);
    }

    private int decimals(Limit limit) {
        return Math.max(
                Figures.decimals(limit.usual(fuel())),
                Math.max(Figures.decimals(limit.least()), Figures.decimals(limit.most())));
    }

    public boolean isChanged(Limit limit) {
        return session.job().limits().of(limit) != limit.usual(fuel());
    }

    /** Whether a changed limit lets more pass than the usual one. */
    public boolean isWider(Limit limit) {
        return limit.isWider(session.job().limits().of(limit), fuel());
    }

    /** How many are changed, and for which fuel they are, in words. */
    public String summary() {
        long changed =
                java.util.Arrays.stream(Limit.values()).filter(this::isChanged).count();
        return Words.of("limits.summary", fuel().words(), changed);
    }

    /**
     * Takes what was typed.
     *
     * @return why it isn't taken; empty where it was
     */
    public Optional<String> take(Limit limit, String typed) {
        String figure = typed.strip().replace(',', '.');
        double value;
        try {
            value = session.shownIn()
                    .typed(
                            Double.parseDouble(figure),
                            figure(limit, 0),
                            session.job().limits().of(limit),
                            limit.usual(fuel()),
                            limit.least(),
                            limit.most());
        } catch (NumberFormatException e) {
            return Optional.of(Words.of("limits.nonumber", typed.strip()));
        }
        if (!(value >= limit.least() && value <= limit.most())) {
            String key = limit.least() > value ? "limits.below" : "limits.above";
            return Optional.of(Words.of(
                    Double.isNaN(value) ? "limits.nonumber" : key,
                    figure,
                    text(limit, limit.least()),
                    text(limit, limit.most()),
                    unit(limit)));
        }
        if (value == limit.usual(fuel())) {
            backToUsual(limit);
        } else {
            session.edit(job -> job.withLimits(job.limits().with(limit, value)));
        }
        return Optional.empty();
    }

    public void backToUsual(Limit limit) {
        session.edit(job -> job.withLimits(job.limits().without(limit)));
    }

    public void allBackToUsual() {
        session.edit(job ->
                job.withLimits(fuelwright.safety.Limits.usual(job.machine().fuel())));
    }

    /** The unit that is shown; empty where there is none. */
    String unit(Limit limit) {
        Measured m = limit.measured(0);
        boolean own = session.shownIn().of(m.unit()) == m.unit();
        return limit.unit().equals("1")
                ? ""
                : own ? limit.unit() : session.shownIn().symbol(m);
    }

    private Fuel fuel() {
        return session.job().machine().fuel();
    }

    public Session session() {
        return session;
    }
}
