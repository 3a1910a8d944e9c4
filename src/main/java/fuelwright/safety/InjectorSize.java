package fuelwright.safety;

import fuelwright.airflow.Atmosphere;
import fuelwright.airflow.Machine;
import fuelwright.mixture.Fuel;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeSet;

/**
 * What the injectors' size says of their duty: fuel [g/s] = displacement · air density · rpm / 120 / (ratio · lambda) for a full cylinder
 * of outside air each cycle; duty = fuel / (count · flow · fuel density) plus the dead time of each pulse. A well-filled engine of this kind takes
 * about that much air (80 to 115 % of it are usual: web pages, no source); where it is said of an engine, it is an estimate.
 */
final class InjectorSize {

    /** g/cm³ at 15 to 20 °C; handbook figures from memory. */
    private static final double PETROL_G_PER_CM3 = 0.745;

    private static final double ALCOHOL_G_PER_CM3 = 0.79;
    private static final double CYCLE_S_RPM = 120;
    private static final double CHANGED = 0.02;

    private InjectorSize() {}

    /** No pulse was logged: what the size says, or that nobody knows. */
    static Caution notLogged(Dossier d) {
        OptionalDouble duty = dutyPercent(d);
        if (duty.isEmpty()) {
            return caution(
                    "injector-duty-not-checked",
                    Caution.Level.NOTE,
                    "Injector duty not checked",
                    "No injector pulse in the rides, so nobody knows how near the injectors are to their end",
                    "Log the injector pulse, or give displacement, redline and the injectors' flow on the stage Machine, before adding much fuel");
        }
        boolean near = duty.getAsDouble() >= d.limits.of(Limit.DUTY_CHECK);
        return caution(
                "injector-duty-estimated",
                near ? Caution.Level.CHECK : Caution.Level.NOTE,
                near ? "Injectors may be near their end" : "Injector duty is an estimate",
                String.format(
                        Locale.ROOT,
                        "No injector pulse in the rides. From their flow and the displacement the injectors are open for about %.0f %% of the cycle at %.0f rpm and full load",
                        duty.getAsDouble(),
                        d.topRpm()),
                near
                        ? "Log the injector pulse before more load or engine speed; larger injectors or more fuel pressure may be needed"
                        : "Log the injector pulse to know it");
    }

    /** Other injectors than those of the old table. */
    static Optional<Caution> changed(Dossier d) {
        OptionalDouble ratio = d.file.machine().injectors().ratio();
        if (ratio.isEmpty() || Math.abs(ratio.getAsDouble() - 1) <= CHANGED) {
            return Optional.empty();
        }
        return Optional.of(
                caution(
                        "injectors-changed",
                        Caution.Level.NOTE,
                        "Other injectors than before",
                        String.format(
                                Locale.ROOT,
                                "Each delivers %+.0f %% against those that the old table was made for",
                                100 * (ratio.getAsDouble() - 1)),
                        "Give the control unit their flow and dead time before the first start where it holds them; where it doesn't, the whole table is off by that much"));
    }

    private static OptionalDouble dutyPercent(Dossier d) {
        Machine machine = d.file.machine();
        boolean known = machine.displacementCc().isPresent()
                && machine.redlineRpm().isPresent()
                && machine.injectors().count().isPresent()
                && machine.injectors().afterCm3PerMin().isPresent();
        if (!known) {
            return OptionalDouble.empty();
        }
        double lambda = d.targetAt(d.nearestCell(d.topRpm(), Double.NaN));
        double airGPerS = machine.displacementCc().getAsDouble()
                * 1e-3
                * Atmosphere.densityKgPerM3(machine.altitudeM().orElse(0))
                * d.topRpm()
                / CYCLE_S_RPM;
        double fuelGPerS = airGPerS / (machine.fuel().stoichiometricRatio() * lambda);
        double mostGPerS = machine.injectors().count().getAsInt()
                * machine.injectors().afterCm3PerMin().getAsDouble()
                / 60
                * densityGPerCm3(machine.fuel());
        double dead = Injectors.dutyPercent(d.topRpm(), d.injectorDeadTimeMs, d.limits.of(Limit.INJECTIONS_PER_CYCLE));
        return OptionalDouble.of(100 * fuelGPerS / mostGPerS + dead);
    }

    private static double densityGPerCm3(Fuel fuel) {
        return switch (fuel) {
            case E85, ETHANOL, METHANOL -> ALCOHOL_G_PER_CM3;
            default -> PETROL_G_PER_CM3;
        };
    }

    private static Caution caution(String rule, Caution.Level level, String title, String what, String todo) {
        return new Caution(rule, level, title, what, todo, new TreeSet<>(), List.of());
    }
}
