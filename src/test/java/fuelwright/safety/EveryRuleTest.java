package fuelwright.safety;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fuelwright.airflow.HighLoad;
import fuelwright.airflow.HighLoadLine;
import fuelwright.airflow.InjectorSet;
import fuelwright.airflow.Machine;
import fuelwright.estimate.CellProposal.Kind;
import fuelwright.estimate.SensorFit;
import fuelwright.estimate.SensorModel;
import fuelwright.estimate.Standing;
import fuelwright.issue.Issue;
import fuelwright.mixture.Fuel;
import fuelwright.ride.Role;
import fuelwright.table.Quantity;
import fuelwright.table.Table;
import fuelwright.unit.Sentence;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.TreeSet;
import java.util.function.Consumer;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/**
 * Every rule there is, by the names in the sources: it fires at its level, is quiet just below, is quiet where its channel is missing, and is
 * still there, with the others, among several faults at once. Titles hold no figures, so that answers stay.
 */
class EveryRuleTest {

    private static final Caution.Level STOP = Caution.Level.STOP;
    private static final Caution.Level CHECK = Caution.Level.CHECK;
    private static final Caution.Level NOTE = Caution.Level.NOTE;

    /** A clean case, to be spoilt. */
    private static final class Spoilt {
        PlantedRide ride = new PlantedRide(20).clean(3);
        PlantedRide second;
        /** What was said when the ride was read; null for nothing. */
        Issue remark;

        final PlantedCase planted = new PlantedCase();
        /** What the present table holds, where the ride was made with another one; NaN where it wasn't. */
        double presentTable = Double.NaN;

        Spoilt ride(PlantedRide other) {
            ride = other;
            return this;
        }

        List<Caution> judge() {
            planted.ride(
                    remark == null ? ride.named("ride") : ride.named("ride").remarked(remark));
            if (second != null) {
                planted.ride(second.named("second"));
            }
            if (!Double.isNaN(presentTable)) {
                planted.fuelTable =
                        PlantedCase.table(Quantity.VOLUMETRIC_EFFICIENCY, PlantedCase.THROTTLE, c -> presentTable);
                planted.evidence(0, 0.005, 50);
            }
            return planted.judge();
        }
    }

    /** @param missing null where nothing can be missing */
    private record Spec(
            String rule,
            Caution.Level level,
            Consumer<Spoilt> fires,
            Consumer<Spoilt> below,
            Consumer<Spoilt> missing) {}

    private static Consumer<Spoilt> rides(Consumer<PlantedRide> change) {
        return s -> change.accept(s.ride);
    }

    private static Consumer<Spoilt> steady(Role role, double value) {
        return s -> s.ride.steady(role, value);
    }

    private static Consumer<Spoilt> cell(int cell, double factor, double needed, Standing standing, Kind... kinds) {
        return s -> s.planted.plant(cell, factor, needed, standing, kinds);
    }

    private static final Consumer<Spoilt> NO_MIXTURE = s -> s.ride.withoutMixture();
    private static final Consumer<Spoilt> NOTHING = s -> {};
    private static final Consumer<Spoilt> NO_PROPOSAL = s -> s.planted.proposed = null;

    private static final Consumer<Spoilt> CYLINDER_1 =
            s -> s.planted.fuelTable = s.planted.fuelTable.ofCylinder(OptionalInt.of(1));

    private static Consumer<Spoilt> and(Consumer<Spoilt> a, Consumer<Spoilt> b) {
        return a.andThen(b);
    }

    private static Consumer<Spoilt> fullThrottle(double seconds, double lambda) {
        return rides(r -> r.phase(2, 5000, 20, 1.0).phase(seconds, 5000, 100, lambda));
    }

    private static Consumer<Spoilt> once(double lambda) {
        return rides(
                r -> r.phase(6, 5000, 100, 0.87).phase(0.75, 5000, 100, lambda).phase(6, 5000, 100, 0.87));
    }

    private static Consumer<Spoilt> fading(double lambda) {
        return rides(r -> r.phase(5, 7000, 20, 1.0)
                .phase(8, 7000, 7000, 100, 0.86, 0.86, Map.of())
                .phase(8, 7000, 7000, 100, 0.86, lambda, Map.of())
                .phase(5, 4000, 20, 1.0));
    }

    private static Consumer<Spoilt> opening(double lambda) {
        return rides(r -> r.phase(2, 5000, 20, 1.0)
                .phase(1.2, 5000, 5100, 100, lambda, Math.min(lambda, 0.87), Map.of())
                .phase(3, 5100, 100, 0.87));
    }

    private static Consumer<Spoilt> pulse(double ms) {
        return rides(r -> r.phase(3, 7500, 7500, 100, 0.87, 0.87, Map.of(Role.INJECTOR_PULSE, ms / 1000))
                .steady(Role.INJECTOR_PULSE, 0.004));
    }

    private static Consumer<Spoilt> pulseTable(double ms) {
        return s -> {
            s.planted.fuelTable = PlantedCase.table(
                    Quantity.INJECTOR_PULSE, PlantedCase.THROTTLE, c -> c == PlantedCase.cell(6, 7) ? ms : 5);
            s.planted.evidence(0, 0.005, 50);
        };
    }

    private static Consumer<Spoilt> target(double lambda) {
        return s -> s.planted.target = PlantedCase.table(
                Quantity.LAMBDA,
                PlantedCase.THROTTLE,
                c -> c == PlantedCase.cell(6, 4) ? lambda : s.planted.targetFigure(c));
    }

    private static Consumer<Spoilt> targetScale(double ratio) {
        return s -> {
            s.planted.fuel = Fuel.E85;
            s.planted.target =
                    PlantedCase.table(Quantity.AFR, PlantedCase.THROTTLE, c -> ratio * s.planted.targetFigure(c));
        };
    }

    private static Consumer<Spoilt> region(double needed) {
        return s -> {
            for (int i = 3; i < 6; i++) {
                s.planted.plant(PlantedCase.cell(2, i), Math.min(1.4, needed), needed, Standing.MEASURED);
            }
        };
    }

    private static Consumer<Spoilt> lag(double lagS, boolean identified) {
        return s -> s.planted.sensor = new SensorFit(
                new SensorModel(0.04, 1, 0, lagS), identified, 0.01, identified ? 0.01 : Double.NaN, Sentence.NONE);
    }

    private static Consumer<Spoilt> cuts(double lambda, boolean flagged) {
        return rides(r -> {
            for (int i = 0; i < 4; i++) {
                r.phase(3, 5000, 3500, 0, lambda, lambda, flagged ? Map.of(Role.FUEL_CUT, 1.0) : Map.of())
                        .phase(5, 3500, 20, 1.0);
            }
        });
    }

    private static Consumer<Spoilt> drift(double factor) {
        return s -> s.ride = sameCells(1, factor);
    }

    /** Four cells again and again, reading by one factor in the first half and by another in the second. */
    private static PlantedRide sameCells(double first, double second) {
        PlantedRide ride = new PlantedRide(20);
        for (int i = 0; i < 12; i++) {
            double f = i < 6 ? first : second;
            ride.phase(5, 3000, 20, f)
                    .phase(5, 4000, 10, f)
                    .phase(5, 4000, 20, f)
                    .phase(5, 5000, 20, f);
        }
        return ride;
    }

    private static Consumer<Spoilt> bursts(double lambda) {
        return rides(r -> {
            for (int i = 0; i < 8; i++) {
                r.phase(4, 5000, 20, 0.98).phase(0.3, 5000, 20, lambda);
            }
            r.phase(4, 5000, 20, 0.98);
        });
    }

    private static Consumer<Spoilt> leak(double lambda) {
        return s -> {
            s.planted.fuelTable = PlantedCase.table(Quantity.VOLUMETRIC_EFFICIENCY, PlantedCase.THROTTLE, c -> 20 + c);
            s.planted.evidence(0, 0.005, 50);
            s.ride.phase(30, 1500, 2, lambda).phase(30, 7000, 60, 0.88);
        };
    }

    private static Consumer<Spoilt> knocks(int times, double throttle) {
        return rides(r -> {
            for (int i = 0; i < times; i++) {
                r.phase(3, 6000, throttle, 0.87).phase(0.1, 6000, 6000, throttle, 0.87, 0.87, Map.of(Role.KNOCK, 1.0));
            }
            r.phase(3, 6000, throttle, 0.87);
        });
    }

    private static Consumer<Spoilt> loop(double light) {
        return s -> {
            s.ride = new PlantedRide(20).noise(0.002);
            for (int i = 0; i < 10; i++) {
                s.ride.phase(5, 3000, 8, light).phase(1, 3800, 25, light);
            }
            for (int i = 0; i < 3; i++) {
                s.ride.phase(5, 6000, 100, 0.81);
            }
        };
    }

    /** A limit cycle of a second about the target, its short trim in the log. */
    private static Consumer<Spoilt> shortTrimAlone() {
        return s -> {
            s.ride = new PlantedRide(20).noise(0.002);
            for (int i = 0; i < 100; i++) {
                s.ride.phase(0.5, 3000, 3000, 8, 1.02, 1.02, Map.of(Role.SHORT_TRIM, 2.0))
                        .phase(0.5, 3000, 3000, 8, 0.98, 0.98, Map.of(Role.SHORT_TRIM, -2.0));
            }
        };
    }

    private static Consumer<Spoilt> shortOfOpen(double most) {
        return s -> {
            s.ride = new PlantedRide(20);
            for (int i = 0; i < 3; i++) {
                s.ride.phase(3, 3000, 20, 1.0).phase(3, 5000, most, 0.87);
            }
            s.ride.phase(3, 3000, 20, 1.0);
        };
    }

    private static Consumer<Spoilt> closedAt(double least) {
        return s -> {
            s.ride = new PlantedRide(20);
            for (int i = 0; i < 3; i++) {
                s.ride.phase(3, 3000, 20, 1.0).phase(3, 1200, least, 1.0);
            }
            s.ride.phase(3, 3000, 20, 1.0);
        };
    }

    /** Just what the target asks for, but for that much noise. */
    private static Consumer<Spoilt> asked(double noise) {
        return s -> s.ride = new PlantedRide(20)
                .noise(noise)
                .phase(10, 3000, 0, 1.0)
                .phase(90, 3000, 20, s.planted.targetFigure(PlantedCase.cell(2, 3)))
                .phase(90, 5000, 100, s.planted.targetFigure(PlantedCase.cell(6, 3)));
    }

    /** Ten overruns; free air comes later in the second half of them. */
    private static Consumer<Spoilt> clock(double laterS) {
        return s -> {
            s.ride = new PlantedRide(20);
            for (int i = 0; i < 12; i++) {
                s.ride.phase(6, 4000, 30, 0.95)
                        .phase(i < 6 ? 0.1 : 0.1 + laterS, 4000, 0, 0.95)
                        .phase(2, 4000, 0, 1.5);
            }
        };
    }

    private static Consumer<Spoilt> secondRide(Role role, double first, double then) {
        return s -> {
            s.ride.steady(role, first);
            s.second = new PlantedRide(20).clean(3).steady(role, then);
        };
    }

    private static Consumer<Spoilt> note(String key) {
        return s -> s.planted.fuelTable =
                s.planted.fuelTable.withNotes(List.of(new Table.Note(key, "Stop · Lean under load: at 6000 rpm.")));
    }

    private static Consumer<Spoilt> limit(Limit limit, double value) {
        return s -> s.planted.limits = s.planted.limits.with(limit, value);
    }

    private static Consumer<Spoilt> hot(double degrees) {
        return rides(r -> r.phase(2, 7000, 7000, 100, 0.87, 0.87, Map.of(Role.EXHAUST_TEMPERATURE, degrees)));
    }

    private static List<Spec> specs() {
        int high = PlantedCase.cell(6, 4);
        List<Spec> all = new ArrayList<>();
        all.add(new Spec(
                "lean-under-load",
                STOP,
                fullThrottle(1.5, 0.99),
                fullThrottle(3, 0.91),
                and(fullThrottle(1.5, 0.99), NO_MIXTURE)));
        all.add(new Spec("fuel-supply-fading", STOP, fading(1.10), fading(0.90), and(fading(1.10), NO_MIXTURE)));
        all.add(new Spec("lean-moment", CHECK, once(0.94), once(0.91), and(once(0.94), NO_MIXTURE)));
        all.add(new Spec("lean-tip-in", CHECK, opening(0.96), opening(0.90), and(opening(0.96), NO_MIXTURE)));
        Consumer<Spoilt> earlier = and(fullThrottle(1.5, 0.99), s -> s.presentTable = 90);
        all.add(new Spec(
                "lean-with-earlier-table",
                CHECK,
                earlier,
                and(fullThrottle(1.5, 0.91), s -> s.presentTable = 90),
                and(earlier, NO_MIXTURE)));
        Consumer<Spoilt> other = and(CYLINDER_1, fullThrottle(1.5, 0.87));
        all.add(new Spec(
                "lean-other-cylinder",
                STOP,
                and(other, rides(r -> r.secondSensor(1.14))),
                and(other, rides(r -> r.secondSensor(1.04))),
                other));
        all.add(new Spec(
                "lean-light-load",
                CHECK,
                s -> s.planted.logFactors[PlantedCase.cell(1, 4)] = 0.16,
                s -> s.planted.logFactors[PlantedCase.cell(1, 4)] = 0.13,
                s -> s.planted.withEstimate = false));
        all.add(new Spec("lean-not-checked", CHECK, NO_MIXTURE, NOTHING, null));
        all.add(new Spec("target-lean", STOP, target(0.96), target(0.95), null));
        all.add(new Spec("target-scale", STOP, targetScale(14.7), targetScale(9.8), null));
        Consumer<Spoilt> capped = cell(high, 1.4, 1.55, Standing.MEASURED, Kind.CAP_ON_ADDING);
        all.add(new Spec(
                "cap-holds-back-fuel",
                STOP,
                capped,
                cell(high, 1.4, 1.41, Standing.MEASURED, Kind.CAP_ON_ADDING),
                and(capped, NO_PROPOSAL)));
        Consumer<Spoilt> held = cell(high, 1, 1.12, Standing.MEASURED, Kind.HELD);
        all.add(new Spec(
                "held-lean", STOP, held, cell(high, 1, 1.005, Standing.MEASURED, Kind.HELD), and(held, NO_PROPOSAL)));
        Consumer<Spoilt> left = cell(high, 1, 1.12, Standing.MEASURED);
        all.add(new Spec("proposal-lean", STOP, left, cell(high, 1, 1.005, Standing.MEASURED), and(left, NO_PROPOSAL)));
        Consumer<Spoilt> leaned = cell(high, 0.97, 0.9, Standing.THIN);
        all.add(new Spec(
                "leaned-unmeasured", STOP, leaned, cell(high, 0.9999, 0.9, Standing.THIN), and(leaned, NO_PROPOSAL)));
        Consumer<Spoilt> doubt = cell(high, 0.995, 0.995, Standing.MEASURED);
        all.add(new Spec(
                "leaned-in-doubt", CHECK, doubt, cell(high, 0.97, 0.95, Standing.MEASURED), and(doubt, NO_PROPOSAL)));
        Consumer<Spoilt> cliff = cell(PlantedCase.cell(2, 4), 1.25, 1.25, Standing.INFERRED);
        all.add(new Spec(
                "cliff",
                CHECK,
                cliff,
                cell(PlantedCase.cell(2, 4), 1.19, 1.19, Standing.INFERRED),
                and(cliff, NO_PROPOSAL)));
        Consumer<Spoilt> hole = fullThrottle(2, 1.1);
        all.add(new Spec(
                "lean-after-proposal",
                STOP,
                hole,
                s -> {
                    hole.accept(s);
                    for (int c = 0; c < s.planted.proposed.size(); c++) {
                        s.planted.plant(c, 1.3, 1, Standing.MEASURED);
                    }
                },
                and(hole, NO_PROPOSAL)));
        Consumer<Spoilt> slip = cell(high, 9.9, 1.0, Standing.MEASURED, Kind.SET);
        all.add(new Spec(
                "figure-slipped",
                STOP,
                slip,
                cell(high, 1.3, 1.0, Standing.MEASURED, Kind.SET),
                and(slip, NO_PROPOSAL)));
        all.add(new Spec("proposal-too-large", CHECK, region(1.65), region(1.58), and(region(1.65), NO_PROPOSAL)));
        Consumer<Spoilt> beside = s -> {
            s.planted.readings[PlantedCase.cell(6, 5)] = 0;
            s.planted.logFactors[PlantedCase.cell(5, 4)] = 0.05;
        };
        all.add(new Spec(
                "not-ridden-beside-lean",
                CHECK,
                beside,
                and(beside, s -> s.planted.logFactors[PlantedCase.cell(5, 4)] = 0.03),
                null));
        all.add(new Spec(
                "high-load-not-ridden",
                CHECK,
                s -> s.planted.readings[PlantedCase.cell(6, 5)] = 2,
                s -> s.planted.readings[PlantedCase.cell(6, 5)] = 3,
                null));
        engineAndSensors(all);
        conditions(all);
        return all;
    }

    private static void engineAndSensors(List<Spec> all) {
        all.add(new Spec("injector-duty", STOP, pulse(15.3), pulse(13.5), NOTHING));
        Consumer<Spoilt> proposed = and(pulse(13), s -> {
            s.planted.plant(PlantedCase.cell(6, 6), 1.2, 1.2, Standing.MEASURED);
            s.planted.plant(PlantedCase.cell(6, 7), 1.2, 1.2, Standing.MEASURED);
        });
        all.add(new Spec("injector-duty-proposed", STOP, proposed, pulse(13), and(proposed, NO_PROPOSAL)));
        all.add(new Spec("injector-duty-table", STOP, pulseTable(14.4), pulseTable(12.6), NOTHING));
        all.add(new Spec("injector-duty-not-checked", NOTE, NOTHING, pulse(13.5), null));
        all.add(new Spec("exhaust-hot", STOP, hot(940), hot(840), NOTHING));
        all.add(new Spec("knock", STOP, knocks(3, 100), knocks(3, 30), NOTHING));
        Consumer<Spoilt> level = s -> {
            s.ride = new PlantedRide(20);
            for (int i = 0; i < 200; i++) {
                s.ride.phase(1, 5000, 5000, 100, 0.87, 0.87, Map.of(Role.KNOCK, 10.0 + (i * 37) % 11));
            }
        };
        all.add(new Spec("knock-not-judged", NOTE, level, knocks(1, 100), NOTHING));
        all.add(new Spec(
                "time-unit",
                STOP,
                s -> s.ride = new PlantedRide(2000).phase(6, 3000, 20, 1.0),
                s -> s.ride = new PlantedRide(1000).phase(6, 3000, 20, 1.0),
                s -> s.ride = new PlantedRide(20)));
        Consumer<Spoilt> unit = s -> s.ride = new PlantedRide(20).phase(150, 3000, 20, 1.6);
        all.add(new Spec(
                "mixture-unit",
                STOP,
                unit,
                s -> s.ride = new PlantedRide(20).phase(150, 3000, 20, 1.25),
                and(unit, NO_MIXTURE)));
        Consumer<Spoilt> upside = rides(r -> r.phase(60, 5000, 100, 1 / 0.87));
        all.add(new Spec(
                "mixture-upside-down",
                STOP,
                upside,
                rides(r -> r.phase(60, 5000, 100, 1.02)),
                and(upside, NO_MIXTURE)));
        Consumer<Spoilt> frozen = rides(r -> r.frozen(87, 94));
        all.add(new Spec("sensor-frozen", STOP, frozen, rides(r -> r.frozen(100, 101.5)), and(frozen, NO_MIXTURE)));
        Consumer<Spoilt> atEnd = rides(r -> r.phase(20, 3000, 20, 1.6));
        all.add(new Spec(
                "sensor-at-its-end", CHECK, atEnd, rides(r -> r.phase(5, 3000, 20, 1.6)), and(atEnd, NO_MIXTURE)));
        all.add(new Spec("sensor-blind-to-fuel-cut", CHECK, cuts(1.1, true), cuts(1.5, true), cuts(1.1, false)));
        all.add(new Spec("sensor-slow", CHECK, lag(0.35, true), lag(0.29, true), lag(0.35, false)));
        all.add(new Spec(
                "sensors-apart", CHECK, rides(r -> r.secondSensor(1.05)), rides(r -> r.secondSensor(1.03)), NOTHING));
        all.add(new Spec(
                "one-sensor-of-cylinder",
                NOTE,
                CYLINDER_1,
                and(CYLINDER_1, rides(r -> r.secondSensor(1.03))),
                and(CYLINDER_1, NO_MIXTURE)));
        all.add(new Spec("one-sensor", NOTE, NOTHING, rides(r -> r.secondSensor(1.03)), NO_MIXTURE));
        all.add(new Spec("reading-drifts", CHECK, drift(1.06), drift(1.03), and(drift(1.06), NO_MIXTURE)));
        all.add(new Spec("mixture-clock", CHECK, clock(1.0), clock(0.3), and(clock(1.0), NO_MIXTURE)));
        all.add(new Spec("misfire", CHECK, bursts(1.3), bursts(1.03), and(bursts(1.3), NO_MIXTURE)));
        all.add(new Spec("leak", CHECK, leak(1.12), leak(1.05), and(leak(1.12), NO_MIXTURE)));
        all.add(new Spec("closed-loop-unlogged", CHECK, loop(1.0), loop(1.02), and(loop(1.0), NO_MIXTURE)));
        all.add(new Spec(
                "long-trim-unlogged",
                CHECK,
                shortTrimAlone(),
                and(shortTrimAlone(), s -> s.ride.steady(Role.LONG_TRIM, 0)),
                and(shortTrimAlone(), NO_MIXTURE)));
        all.add(new Spec(
                "throttle-short",
                CHECK,
                shortOfOpen(82),
                shortOfOpen(99),
                and(shortOfOpen(82), s -> s.ride.withoutThrottle())));
        all.add(new Spec(
                "throttle-not-zeroed",
                CHECK,
                closedAt(6),
                closedAt(3),
                and(closedAt(6), s -> s.ride.withoutThrottle())));
        all.add(new Spec("mixture-as-asked", STOP, asked(0.001), asked(0.02), and(asked(0.001), NO_MIXTURE)));
    }

    private static void conditions(List<Spec> all) {
        all.add(new Spec("mostly-cold", CHECK, steady(Role.COOLANT, 60), steady(Role.COOLANT, 75), NOTHING));
        all.add(new Spec("heat-soaked", CHECK, steady(Role.COOLANT, 112), steady(Role.COOLANT, 109), NOTHING));
        all.add(new Spec("intake-hot", CHECK, steady(Role.INTAKE_AIR, 62), steady(Role.INTAKE_AIR, 59), NOTHING));
        all.add(new Spec("battery-low", CHECK, steady(Role.BATTERY, 12.2), steady(Role.BATTERY, 12.6), NOTHING));
        all.add(new Spec(
                "intake-apart",
                CHECK,
                secondRide(Role.INTAKE_AIR, 10, 35),
                secondRide(Role.INTAKE_AIR, 10, 28),
                s -> s.second = new PlantedRide(20).clean(3)));
        all.add(new Spec(
                "barometer-apart",
                CHECK,
                secondRide(Role.BAROMETER, 101, 95),
                secondRide(Role.BAROMETER, 101, 98),
                s -> s.second = new PlantedRide(20).clean(3)));
        all.add(new Spec("barometer-moves", CHECK, climb(94), climb(98), NOTHING));
        all.add(new Spec(
                "ride-short",
                CHECK,
                s -> s.ride = new PlantedRide(20).phase(110, 3000, 20, 1.0),
                s -> s.ride = new PlantedRide(20).phase(125, 3000, 20, 1.0),
                null));
        all.add(new Spec(
                "outside-table",
                CHECK,
                rides(r -> r.phase(5, 8400, 20, 1.0)),
                rides(r -> r.phase(5, 8100, 20, 1.0)),
                null));
        Consumer<Spoilt> slipped = closed(3);
        all.add(new Spec(
                "throttle-slipped", CHECK, slipped, closed(1.5), and(slipped, rides(PlantedRide::withoutThrottle))));
        all.add(new Spec("rides-apart", CHECK, secondReads(1.06), secondReads(1.03), s -> {
            secondReads(1.06).accept(s);
            s.second.withoutMixture();
        }));
        all.add(new Spec("sensor-still", STOP, still(0.004), still(0.02), and(still(0.004), NO_MIXTURE)));
        all.add(new Spec(
                "unit-overruled",
                CHECK,
                said("lambda: the heading says lambda, but values about 13.6 are an air–fuel ratio; read as AFR"),
                said("lambda: AFR divided by 14.7"),
                NOTHING));
        all.add(new Spec("injector-duty-estimated", CHECK, injectors(240, 200), s -> {}, injectors(240, Double.NaN)));
        all.add(new Spec(
                "injectors-changed", NOTE, injectors(240, 300), injectors(240, 244), injectors(Double.NaN, 300)));
        all.add(new Spec("carried-stop", CHECK, note("caution"), note("remark"), null));
        all.add(new Spec("forecast-contradicted", CHECK, s -> s.planted.forecastLeftOut = true, s -> {}, s -> {
            s.planted.forecastLeftOut = true;
            s.planted.withEstimate = false;
        }));
        Consumer<Spoilt> asked = cell(PlantedCase.cell(6, 4), 1, 0.93, Standing.MEASURED, Kind.COMMANDED_RICHER);
        all.add(new Spec(
                "command-richer",
                CHECK,
                asked,
                cell(PlantedCase.cell(6, 4), 1, 0.99, Standing.MEASURED, Kind.LEANED_LESS),
                and(asked, NO_PROPOSAL)));
        all.add(new Spec(
                "high-load-unknown",
                CHECK,
                s -> s.planted.highLoad = HighLoad.byThrottle(),
                s -> s.planted.highLoad = new HighLoadLine(rpm -> 55, HighLoad.Basis.PRESSURE),
                null));
        all.add(new Spec(
                "wrong-table-by-pulse",
                CHECK,
                pulses(1.11),
                pulses(1.04),
                and(
                        pulses(1.11),
                        s -> s.planted.fuelTable =
                                s.planted.fuelTable.with(Quantity.FUEL_TRIM, s.planted.fuelTable.toArray()))));
        all.add(new Spec(
                "leaner-cylinder-left",
                STOP,
                s -> s.ride = secondAtFullThrottle(1.08),
                s -> s.ride = secondAtFullThrottle(1.04),
                and(s -> s.ride = secondAtFullThrottle(1.08), NO_PROPOSAL)));
        all.add(new Spec(
                "trim-at-high-load", CHECK, steady(Role.LONG_TRIM, -4), steady(Role.LONG_TRIM, -2), NO_MIXTURE));
        all.add(new Spec(
                "sensor-top-low",
                STOP,
                s -> s.ride = OtherRulesTest.clipped(1.15, 1.2),
                s -> s.ride = OtherRulesTest.clipped(1.26, 1.2),
                and(s -> s.ride = OtherRulesTest.clipped(1.15, 1.2), NO_MIXTURE)));
        all.add(new Spec("coolant-not-logged", CHECK, NOTHING, steady(Role.COOLANT, 85), NO_MIXTURE));
        all.add(new Spec(
                "low-speed-not-ridden",
                NOTE,
                s -> s.planted.readings[PlantedCase.cell(6, 0)] = 2,
                s -> s.planted.readings[PlantedCase.cell(6, 0)] = 3,
                null));
        all.add(new Spec("limits-changed", CHECK, limit(Limit.CLIFF, 30), limit(Limit.CLIFF, 20), null));
    }

    private static PlantedRide secondAtFullThrottle(double factor) {
        PlantedRide ride = new PlantedRide(20).secondSensor(factor);
        for (int i = 0; i < 4; i++) {
            ride.phase(8, 4000, 20, 0.98).phase(5, 5000, 100, 0.87 / Math.sqrt(factor));
        }
        return ride;
    }

    /** A ride whose pulses are so many times those of the table from 40 % throttle on. */
    private static Consumer<Spoilt> pulses(double factor) {
        return s -> {
            s.planted.fuelTable = PulseAgainstTableTest.table();
            s.ride = PulseAgainstTableTest.ride(
                    cell -> PlantedCase.THROTTLE.at(cell / PlantedCase.SPEED.size()) >= 40 ? factor : 1);
        };
    }

    /** Twelve times closed, the last four of them at another figure. */
    private static Consumer<Spoilt> closed(double percent) {
        return s -> {
            s.ride = new PlantedRide(20);
            for (int i = 0; i < 12; i++) {
                s.ride.phase(5, 3000, 20, 1.0).phase(2, 3000, i < 8 ? 0 : percent, 1.0);
            }
        };
    }

    private static Consumer<Spoilt> secondReads(double factor) {
        return s -> {
            s.ride = sameCells(1, 1);
            s.second = sameCells(factor, factor);
        };
    }

    private static Consumer<Spoilt> still(double noise) {
        return s -> s.ride = new PlantedRide(20)
                .noise(noise)
                .phase(20, 3000, 20, 0.9)
                .phase(5, 6000, 100, 0.9)
                .phase(5, 4000, 0, 0.9)
                .phase(20, 3000, 20, 0.9);
    }

    private static Consumer<Spoilt> said(String what) {
        return s -> s.remark = Issue.warning("ride", 1, 5, what, "");
    }

    /** Flows of two injectors of a 720 cm³ engine, cm³/min; NaN where one isn't known. */
    private static Consumer<Spoilt> injectors(double before, double after) {
        return s -> s.planted.machine = new Machine(
                OptionalDouble.of(720),
                OptionalInt.of(2),
                Optional.empty(),
                Optional.empty(),
                Fuel.PETROL,
                OptionalDouble.of(8000),
                new InjectorSet(OptionalInt.of(2), known(before), known(after), OptionalDouble.empty()),
                OptionalDouble.empty());
    }

    private static OptionalDouble known(double value) {
        return Double.isNaN(value) ? OptionalDouble.empty() : OptionalDouble.of(value);
    }

    private static Consumer<Spoilt> climb(double kpa) {
        return rides(
                r -> r.steady(Role.BAROMETER, 101).phase(60, 3000, 3000, 20, 1.0, 1.0, Map.of(Role.BAROMETER, kpa)));
    }

    private static Optional<Caution> found(Spec spec, Consumer<Spoilt> spoil) {
        Spoilt spoilt = new Spoilt();
        spoil.accept(spoilt);
        return spoilt.judge().stream().filter(c -> c.rule().equals(spec.rule)).findFirst();
    }

    private static List<Caution> judged(Spec spec) {
        Spoilt spoilt = new Spoilt();
        spec.fires.accept(spoilt);
        return spoilt.judge();
    }

    @Test
    void everyRuleOfTheSourcesIsTriedHere() throws IOException {
        TreeSet<String> named = new TreeSet<>();
        Pattern rule = Pattern.compile("\"(cliff|leak|misfire|knock|[a-z]+(?:-[a-z]+)+)\"");
        try (Stream<Path> files = Files.list(Path.of("src", "main", "java", "fuelwright", "safety"))) {
            for (Path file : files.filter(f -> !f.endsWith("Limit.java")).toList()) {
                Matcher matcher = rule.matcher(Files.readString(file));
                while (matcher.find()) {
                    named.add(matcher.group(1));
                }
            }
        }
        TreeSet<String> tried = new TreeSet<>();
        specs().forEach(s -> tried.add(s.rule));
        assertEquals(named, tried);
    }

    @Test
    void everyRuleFiresAtItsLevel() {
        for (Spec spec : specs()) {
            Optional<Caution> caution = found(spec, spec.fires);
            assertTrue(caution.isPresent(), spec.rule + ": " + judged(spec));
            assertEquals(spec.level, caution.get().level(), caution.get().sentence());
            assertTrue(!caution.get().todo().isBlank(), spec.rule);
        }
    }

    @Test
    void everyRuleIsQuietJustBelow() {
        for (Spec spec : specs()) {
            assertEquals(Optional.empty(), found(spec, spec.below), spec.rule);
        }
    }

    @Test
    void everyRuleIsQuietWhereItsChannelIsMissing() {
        for (Spec spec : specs()) {
            if (spec.missing != null) {
                assertEquals(Optional.empty(), found(spec, spec.missing), spec.rule);
            }
        }
    }

    /** Lean at 7900 rpm, a low battery and hot air beside the rule's own fault: none of them silences another. */
    @Test
    void everyRuleIsThereAmongSeveralFaults() {
        for (Spec spec : specs()) {
            Spoilt spoilt = new Spoilt();
            spec.fires.accept(spoilt);
            spoilt.ride.phase(2, 7900, 20, 1.0).phase(3, 7900, 75, 1.2).phase(2, 7900, 20, 1.0);
            if (!spec.rule.equals("battery-low")) {
                spoilt.ride.steady(Role.BATTERY, 12);
            }
            if (!spec.rule.startsWith("intake")) {
                spoilt.ride.steady(Role.INTAKE_AIR, 70);
            }
            List<Caution> all = spoilt.judge();
            TreeSet<String> rules = new TreeSet<>();
            all.forEach(c -> rules.add(c.rule()));
            assertTrue(rules.contains(spec.rule), spec.rule + " not among " + rules);
            assertTrue(rules.contains("battery-low"), spec.rule + ": " + rules);
            assertTrue(rules.contains("intake-hot") || spec.rule.startsWith("intake"), spec.rule + ": " + rules);
            assertTrue(
                    Stream.of("lean-under-load", "fuel-supply-fading", "lean-with-earlier-table", "lean-not-checked")
                            .anyMatch(rules::contains),
                    spec.rule + ": " + rules);
        }
    }

    /** An answer is kept by rule and name: names must be different from one another, and the same whatever the figures are. */
    @Test
    void namesTellCautionsApartAndTitlesHoldNoFigures() {
        for (Spec spec : specs()) {
            Spoilt spoilt = new Spoilt();
            spec.fires.accept(spoilt);
            TreeSet<String> names = new TreeSet<>();
            for (Caution caution : spoilt.judge()) {
                assertTrue(caution.title().chars().noneMatch(Character::isDigit), caution.title());
                assertTrue(names.add(caution.rule() + " " + caution.name()), caution.name() + " twice");
            }
        }
    }

    @Test
    void ridesOfOneNameAreToldApartByTheirLengthAndThenByTheirOrder() {
        List<TreeSet<String>> names = new ArrayList<>();
        for (boolean both : new boolean[] {true, false}) {
            PlantedCase planted = new PlantedCase();
            PlantedRide slow = new PlantedRide(20).clean(3).steady(Role.COOLANT, 60);
            planted.ride(slow.named("log.csv"));
            planted.ride(new PlantedRide(20).clean(4).steady(Role.COOLANT, 60).named("log.csv"));
            if (both) {
                planted.ride(slow.named("log.csv"));
            }
            TreeSet<String> found = new TreeSet<>();
            planted.judge().stream()
                    .filter(c -> c.rule().equals("mostly-cold"))
                    .forEach(c -> assertTrue(found.add(c.name()), c.name() + " twice"));
            names.add(found);
        }
        assertEquals(3, names.get(0).size());
        assertEquals(2, names.get(1).size());
        assertTrue(names.get(0).containsAll(names.get(1)), names.toString());
    }

    @Test
    void anotherFitOfTheSameRidesKeepsTheNames() {
        Spec capped = specs().stream()
                .filter(s -> s.rule.equals("cap-holds-back-fuel"))
                .findFirst()
                .orElseThrow();
        String name = found(capped, capped.fires).orElseThrow().name();
        assertEquals("A cap holds back fuel (beyond the lean limit)", name);
        Caution again = found(capped, cell(PlantedCase.cell(6, 4), 1.4, 1.57, Standing.MEASURED, Kind.CAP_ON_ADDING))
                .orElseThrow();
        assertEquals(name, again.name());
        Caution milder = found(capped, cell(PlantedCase.cell(6, 4), 1.4, 1.46, Standing.MEASURED, Kind.CAP_ON_ADDING))
                .orElseThrow();
        assertEquals("A cap holds back fuel (high load)", milder.name());
    }

    @Test
    void aChangedLimitIsSaidInTheCautionThatItJudged() {
        Spoilt spoilt = new Spoilt();
        fullThrottle(1.5, 0.99).accept(spoilt);
        limit(Limit.LEAN_EXCESS, 0.03).accept(spoilt);
        List<Caution> all = spoilt.judge();
        assertTrue(
                all.get(0).what().contains("judged by your limit: lean excess 0.03 lambda instead of 0.05"),
                all.get(0).what());
        Caution changed = all.stream()
                .filter(c -> c.rule().equals("limits-changed"))
                .findFirst()
                .orElseThrow();
        assertEquals(NOTE, changed.level());
    }

    @Test
    void aStopLimitBelowTheChecksStillStops() {
        Spoilt spoilt = new Spoilt();
        pulse(13).accept(spoilt);
        limit(Limit.DUTY_CHECK, 90).accept(spoilt);
        limit(Limit.DUTY_STOP, 70).accept(spoilt);
        assertTrue(spoilt.judge().stream().anyMatch(c -> c.rule().equals("injector-duty") && c.isStop()));
        Spoilt heated = new Spoilt();
        hot(800).accept(heated);
        limit(Limit.EXHAUST_STOP, 750).accept(heated);
        assertTrue(heated.judge().stream().anyMatch(c -> c.rule().equals("exhaust-hot") && c.isStop()));
    }

    @Test
    void highLoadIsWhatSaysMoreOfThrottleAndPressure() {
        LoadThreshold threshold = new LoadThreshold(HighLoad.byThrottle(), 100);
        assertTrue(threshold.at(4000, 20, 90), "pressure alone");
        assertTrue(threshold.at(4000, 70, 60), "throttle alone");
        assertTrue(!threshold.at(4000, 20, 60));
        assertTrue(threshold.at(4000, Double.NaN, 86) && threshold.at(4000, 61, Double.NaN));
        assertTrue(!threshold.at(4000, Double.NaN, Double.NaN));
    }

    /** Only what is about the scale of a reading itself stays in the unit that it is about; loads are the table's own. */
    @Test
    void everyFigureThatIsReadInOtherUnitsCanBe() {
        List<String> aboutTheScale = List.of("mixture-upside-down", "mixture-unit", "target-scale");
        Pattern bound = Pattern.compile("\\d ?(°C|K\\b|kPa|km/h|lambda)|\\b(lambda|limit|target of|Leanest:) \\d");
        int read = 0;
        for (Spec spec : specs()) {
            for (Caution caution : judged(spec)) {
                String said = caution.what(figure -> "§");
                read += said.contains("§") ? 1 : 0;
                boolean free = aboutTheScale.contains(caution.rule())
                        || !bound.matcher(said).find();
                assertTrue(free, caution.rule() + ": " + said);
            }
        }
        assertTrue(read > 20, "sentences with such a figure: " + read);
    }
}
