package fuelwright.work;

import fuelwright.airflow.HighLoad;
import fuelwright.mixture.Fuel;
import fuelwright.safety.Limit;
import fuelwright.safety.Limits;
import fuelwright.table.Axis;
import fuelwright.table.Quantity;
import fuelwright.table.Table;
import fuelwright.unit.Measured;
import fuelwright.unit.Sentence;
import fuelwright.unit.Unit;
import java.util.Optional;

/**
 * A target table from a few plain choices: lambda at idle, while cruising, at full load. Where full load begins {@link HighLoad} says, so
 * that it follows bodies and engine speed.
 *
 * <p>A control unit reads a table off between its cells. So that no point at high load lies between a rich cell and a leaner one, every cell
 * next to a place at high load already holds the full-load figure: it errs to the rich side. Below, from half of the load at which high load
 * begins, the target goes in a straight line from cruising to full load. Idle is throttle up to {@value #IDLE_THROTTLE_PERCENT} % (or {@value
 * #IDLE_KPA} kPa) up to {@value #IDLE_RPM} rpm (common practice, no source).
 */
public final class MakeTarget {

    static final double IDLE_THROTTLE_PERCENT = 3;
    static final double IDLE_KPA = 45;
    static final double IDLE_RPM = 1600;

    /** Richest figure that is taken, lambda: below that most engines no longer burn well (common practice, no source). */
    public static final double RICHEST = 0.70;

    /** Leanest figure for idle and cruising, lambda (common practice, no source). */
    public static final double LEANEST = 1.05;

    private static final double STEP = 0.5;

    private MakeTarget() {}

    /**
     * What the user chooses, as lambda.
     *
     * @param fuel what is in the tank
     */
    public record Choices(double idle, double cruise, double fullLoad, Fuel fuel) {

        /** What is usual with a fuel: on petrol 0.95, 0.98 and 0.87, full load as much below the ceiling of the fuel as there. */
        public static Choices usual(Fuel fuel) {
            double ceiling = Limits.usual(fuel).of(Limit.LEAN_CEILING);
            return new Choices(0.95, 0.98, Math.rint(100 * (ceiling - 0.08)) / 100, fuel);
        }

        /** Why they can't be taken, a sentence; empty where they can. */
        public Optional<Sentence> problem() {
            double ceiling = Limits.usual(fuel).of(Limit.LEAN_CEILING);
            if (!within(idle, LEANEST) || !within(cruise, LEANEST)) {
                return Optional.of(Sentence.of(
                        "Idle and cruising lie from %s to %s",
                        lambda(RICHEST), lambda(LEANEST).alone()));
            }
            if (!within(fullLoad, ceiling)) {
                return Optional.of(Sentence.of(
                        "Full load lies from %s to %s on %s: leaner than that an engine may come to harm",
                        lambda(RICHEST), lambda(ceiling).alone(), fuel.words()));
            }
            if (fullLoad > cruise) {
                return Optional.of(Sentence.text("Full load can't be leaner than cruising"));
            }
            return Optional.empty();
        }

        private static Measured lambda(double lambda) {
            return Measured.of(lambda, Unit.LAMBDA, 2);
        }

        private static boolean within(double lambda, double most) {
            return lambda >= RICHEST - 1e-9 && lambda <= most + 1e-9;
        }
    }

    /**
     * The target table on the axes of a fuel table, in lambda.
     *
     * @throws IllegalArgumentException if the choices can't be taken
     */
    public static Table of(Table axes, HighLoad highLoad, Choices choices) {
        choices.problem().ifPresent(problem -> {
            throw new IllegalArgumentException(problem.toString());
        });
        double[] lambda = new double[axes.cells()];
        for (int cell = 0; cell < lambda.length; cell++) {
            lambda[cell] = lambda(axes, highLoad, choices, axes.speedIndex(cell), axes.loadIndex(cell));
        }
        return axes.with(Quantity.LAMBDA, lambda);
    }

    private static double lambda(Table axes, HighLoad highLoad, Choices choices, int speed, int load) {
        if (touchesHighLoad(axes, highLoad, speed, load)) {
            return choices.fullLoad();
        }
        double begins = begins(axes, highLoad, speed);
        double at = axes.load().at(load);
        double share = Math.min(1, Math.max(0, (at - begins / 2) / (begins / 2)));
        boolean idle = axes.speed().at(speed) <= IDLE_RPM
                && at <= (axes.load().kind() == Axis.Kind.THROTTLE ? IDLE_THROTTLE_PERCENT : IDLE_KPA);
        double light = idle ? choices.idle() : choices.cruise();
        double blended = light + share * (choices.fullLoad() - light);
        return Math.rint(1000 * Math.min(light, blended)) / 1000;
    }

    /** Whether anything between this cell and its neighbours is at high load; load only grows, so the upper corners tell. */
    private static boolean touchesHighLoad(Table axes, HighLoad highLoad, int speed, int load) {
        double upper = axes.load().at(Math.min(load + 1, axes.load().size() - 1));
        double least = axes.speed().at(Math.max(speed - 1, 0));
        double most = axes.speed().at(Math.min(speed + 1, axes.speed().size() - 1));
        // The breakpoint above may itself be just where high load begins: then this cell lies wholly below.
        double upTo = load + 1 < axes.load().size() ? upper - 1e-9 : upper;
        for (int i = 0; i <= 8; i++) {
            if (isHigh(axes.load().kind(), highLoad, least + i / 8.0 * (most - least), upTo)) {
                return true;
            }
        }
        return false;
    }

    /** The load at which high load begins at an engine speed. */
    private static double begins(Table axes, HighLoad highLoad, int speed) {
        double last = axes.load().last();
        for (double load = 0; load < last; load += STEP) {
            if (isHigh(axes.load().kind(), highLoad, axes.speed().at(speed), load)) {
                return Math.max(STEP, load);
            }
        }
        return last;
    }

    private static boolean isHigh(Axis.Kind kind, HighLoad highLoad, double speedRpm, double load) {
        return kind == Axis.Kind.THROTTLE
                ? highLoad.at(speedRpm, load, Double.NaN, Double.NaN)
                : highLoad.at(speedRpm, Double.NaN, load, Double.NaN);
    }
}
