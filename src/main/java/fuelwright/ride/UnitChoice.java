package fuelwright.ride;

import fuelwright.unit.Dimension;
import fuelwright.unit.Unit;
import java.util.List;
import java.util.Optional;

/** The unit of a channel: as stated where the values can be that, otherwise the first of the usual ones by which they can. */
final class UnitChoice {

    private static final double HOT_AIR_C = 45;
    private static final double HOT_COOLANT_C = 125;

    private UnitChoice() {}

    static Unit of(Draft draft, Optional<Unit> stated, Channels channels) {
        Dimension dimension = draft.role.dimension();
        Optional<Unit> usable = stated.filter(u -> u.dimension() == dimension);
        if (usable.isPresent() && channels.isSaid(draft)) {
            return usable.get();
        }
        if (usable.isEmpty() && (dimension == Dimension.POWER || dimension == Dimension.TORQUE)) {
            return unknown(draft, dimension, channels);
        }
        List<Unit> usual = usual(draft.role);
        if (usable.isPresent()) {
            Unit unit = usable.get();
            if (draft.stats.count() == 0 || fits(draft, unit)) {
                return unit;
            }
            Optional<Unit> other =
                    usual.stream().filter(u -> u != unit && fits(draft, u)).findFirst();
            channels.doubt(
                    draft,
                    Figures.plain(draft.stats.median()) + " " + unit.symbol() + " can't be " + draft.role.words()
                            + other.map(u -> "; read as " + u.symbol()).orElse(""),
                    "check the unit in the heading; choose it by hand if it was right");
            return other.orElse(unit);
        }
        Optional<Unit> alike = dimension == Dimension.TEMPERATURE
                ? channels.temperatures().filter(u -> u != usual.get(0) && fits(draft, u))
                : Optional.empty();
        if (alike.isPresent() && draft.stats.count() > 0) {
            channels.doubt(
                    draft,
                    "no unit stated: read as " + alike.get().symbol() + ", as temperatures of this file are",
                    "choose the unit by hand if that is wrong");
            return alike.get();
        }
        Optional<Unit> fitting = usual.stream().filter(u -> fits(draft, u)).findFirst();
        Unit unit = fitting.or(() -> usual.stream().findFirst()).orElse(Unit.ONE);
        if (draft.stats.count() > 0 && unit != Unit.ONE) {
            boolean plain = unit == usual.get(0) && fitting.isPresent();
            if (plain) {
                draft.say("no unit stated: read as " + unit.symbol());
                if (draft.role == Role.ROAD_SPEED) {
                    draft.look("could be mph");
                }
                if (isHot(draft)) {
                    channels.doubt(
                            draft,
                            Figures.plain(draft.stats.median()) + " °C is hot for " + draft.role.words()
                                    + ": could it be °F?",
                            "choose the unit by hand if it is");
                }
            } else {
                channels.doubt(
                        draft, "no unit stated: read as " + unit.symbol(), "choose the unit by hand if that is wrong");
            }
        }
        return unit;
    }

    /** Degrees Celsius that an engine hardly has, and that would be usual as Fahrenheit (common practice, no source). */
    private static boolean isHot(Draft draft) {
        return draft.role == Role.INTAKE_AIR && draft.stats.median() > HOT_AIR_C
                || draft.role == Role.COOLANT && draft.stats.p98() > HOT_COOLANT_C;
    }

    /** The one unit other than the most usual in which a temperature's figures can be; empty where the most usual does. */
    static Optional<Unit> onlyTemperature(Draft draft) {
        List<Unit> usual = usual(draft.role);
        return fits(draft, usual.get(0))
                ? Optional.empty()
                : usual.stream().filter(u -> fits(draft, u)).findFirst();
    }

    /** Figures of power and torque look alike in every unit that is in use: without one they aren't used. */
    private static Unit unknown(Draft draft, Dimension dimension, Channels channels) {
        String could = dimension == Dimension.POWER ? "kW, hp or PS" : "N·m or lb·ft";
        String stated = draft.heading.unitText();
        String what = (stated.isEmpty() ? "no unit stated" : "unit " + stated + " isn't known") + ", could be " + could;
        draft.leaveOut(what);
        channels.warn(draft, what + ": not used", "choose the unit by hand");
        return Unit.ONE;
    }

    private static boolean fits(Draft draft, Unit unit) {
        double middle = unit.toCanonical(draft.stats.median());
        double high = unit.toCanonical(draft.stats.p98());
        double low = unit.toCanonical(draft.stats.p02());
        return switch (draft.role) {
            case ENGINE_SPEED -> low >= 0 && high <= 25_000 && (high >= 200 || high == 0);
            case MANIFOLD_PRESSURE -> low >= -110 && high <= 400 && high - Math.min(low, 0) >= 10;
            case BAROMETER -> low >= 45 && high <= 115;
            case COOLANT -> low >= -40 && high <= 150;
            case INTAKE_AIR -> low >= -40 && high <= 110;
            case EXHAUST_TEMPERATURE -> low >= -40 && high <= 1250;
            case INJECTOR_PULSE -> low >= 0 && high <= 0.1 && high >= 1e-4 || high == 0;
            case BATTERY -> low >= 4 && high <= 40;
            case ROAD_SPEED -> low >= 0 && high <= 420;
            default -> middle >= Double.NEGATIVE_INFINITY;
        };
    }

    private static List<Unit> usual(Role role) {
        return switch (role.dimension()) {
            case ENGINE_SPEED -> List.of(Unit.RPM);
            case PERCENTAGE -> List.of(Unit.PERCENT, Unit.FRACTION);
            case PRESSURE -> pressures(role);
            case TEMPERATURE -> List.of(Unit.CELSIUS, Unit.FAHRENHEIT, Unit.KELVIN);
            case TIME -> List.of(Unit.MILLISECOND, Unit.MICROSECOND, Unit.SECOND);
            case ROAD_SPEED -> List.of(Unit.KILOMETRE_PER_HOUR);
            case VOLTAGE -> List.of(Unit.VOLT, Unit.MILLIVOLT);
            case ANGLE -> List.of(Unit.DEGREE);
            default -> List.of(Unit.ONE);
        };
    }

    /** Bars before psi: 1 is about a bar and can't be a psi of barometer; 14.5 the other way round; 29.9 is inches of mercury. */
    private static List<Unit> pressures(Role role) {
        return role == Role.BAROMETER
                ? List.of(Unit.KILOPASCAL, Unit.MILLIBAR, Unit.BAR, Unit.PSI, Unit.INCH_OF_MERCURY, Unit.PASCAL)
                : List.of(Unit.KILOPASCAL, Unit.MILLIBAR, Unit.BAR, Unit.PASCAL);
    }
}
