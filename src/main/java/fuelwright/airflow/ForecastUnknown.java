package fuelwright.airflow;

import java.util.function.BiFunction;

/**
 * What a bore forecast can't know. Each is taken as uniform over a stated range (ranges by judgement: common practice, no source); both
 * ends are tried, and the larger of the two effects over √3 is its share of the standard uncertainty (the rule for rectangular
 * distributions of the Guide to the Expression of Uncertainty in Measurement, JCGM 100:2008, 4.3.7, from memory).
 */
enum ForecastUnknown {
    /**
     * Bypass area of both, a quarter to four times. On a 720 cc twin with 38 mm bodies the bypass then equals the plate at up to 8.5 %
     * opening; on a small single 12 % was found (Indian J. Eng. Mater. Sci. 20, 2013, 350, seen in its abstract).
     */
    BYPASS("the idle bypass", Pair.each((m, s) -> m.withBypassMm2(m.bypassMm2() * Math.pow(4, s)))),
    /** How the new idle was set: bypass of the new body over the old one's, two thirds to one and a half. */
    IDLE_RESET("how the new idle was set", Pair.after((m, s) -> m.withBypassMm2(m.bypassMm2() * Math.pow(1.5, s)))),
    /** Closed angle, what both bodies are out by, ±2°. */
    CLOSED_ANGLE("the closed angle", Pair.each((m, s) -> m.withBody(closedBy(m.body(), 2 * s)))),
    /** Closed angle of the old body on its own, ±1.5°. */
    CLOSED_ANGLE_BEFORE("the old body's closed angle", Pair.before((m, s) -> m.withBody(closedBy(m.body(), 1.5 * s)))),
    /** Closed angle of the new body on its own, ±1.5°. */
    CLOSED_ANGLE_AFTER("the new body's closed angle", Pair.after((m, s) -> m.withBody(closedBy(m.body(), 1.5 * s)))),
    /** Angle at 100 % of the old body, ±4°. */
    OPEN_ANGLE_BEFORE("the old body's angle at 100 %", Pair.before((m, s) -> m.withBody(openBy(m.body(), 4 * s)))),
    /** Angle at 100 % of the new body, ±4°. */
    OPEN_ANGLE_AFTER("the new body's angle at 100 %", Pair.after((m, s) -> m.withBody(openBy(m.body(), 4 * s)))),
    /** Volumetric efficiency over discharge coefficient, ±30 %. */
    FILLING(
            "what the cylinders swallow",
            Pair.each((m, s) -> m.withFilling(m.filling().scaled(1 + 0.3 * s)))),
    /** Discharge coefficient of the new body over the old one's, ±6 %. */
    DISCHARGE(
            "how well the new plate flows for its area",
            Pair.after((m, s) -> m.withDischargeCoefficient(m.dischargeCoefficient() * (1 + 0.06 * s)))),
    /** Pulsation, from steady flow to flow in a little under half of the cycle; one-sided. */
    PULSATION("pulses in the intake", Pair.each((m, s) -> m.withConcentration(1 + 1.5 * Math.max(s, 0))));

    /** An old and a new intake. */
    record Pair(IntakeModel before, IntakeModel after) {

        double logFactor(double speedRpm, double throttlePercent) {
            return Math.log(
                    after.fillingShare(speedRpm, throttlePercent) / before.fillingShare(speedRpm, throttlePercent));
        }

        private static BiFunction<Pair, Integer, Pair> each(BiFunction<IntakeModel, Integer, IntakeModel> change) {
            return (p, s) -> new Pair(change.apply(p.before, s), change.apply(p.after, s));
        }

        private static BiFunction<Pair, Integer, Pair> before(BiFunction<IntakeModel, Integer, IntakeModel> change) {
            return (p, s) -> new Pair(change.apply(p.before, s), p.after);
        }

        private static BiFunction<Pair, Integer, Pair> after(BiFunction<IntakeModel, Integer, IntakeModel> change) {
            return (p, s) -> new Pair(p.before, change.apply(p.after, s));
        }
    }

    private final String words;
    private final BiFunction<Pair, Integer, Pair> shift;

    ForecastUnknown(String words, BiFunction<Pair, Integer, Pair> shift) {
        this.words = words;
        this.shift = shift;
    }

    /** What isn't known, as part of a sentence. */
    String words() {
        return words;
    }

    /** The pair with this unknown at its lower (−1) or upper (1) end. */
    Pair at(Pair nominal, int side) {
        return shift.apply(nominal, side);
    }

    private static ThrottleBody closedBy(ThrottleBody body, double deg) {
        double closed = Math.min(Math.max(body.closedAngleDeg() + deg, 0), body.openAngleDeg() - 1);
        return new ThrottleBody(body.boreMm(), body.shaftMm(), Math.min(closed, 45), body.openAngleDeg());
    }

    private static ThrottleBody openBy(ThrottleBody body, double deg) {
        double open = Math.max(Math.min(body.openAngleDeg() + deg, 90), body.closedAngleDeg() + 1);
        return new ThrottleBody(body.boreMm(), body.shaftMm(), body.closedAngleDeg(), open);
    }
}
