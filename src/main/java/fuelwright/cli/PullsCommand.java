package fuelwright.cli;

import fuelwright.airflow.PowerCorrection;
import fuelwright.issue.Loaded;
import fuelwright.power.AirOfTheDay;
import fuelwright.power.PowerCurve;
import fuelwright.power.PowerCurve.Point;
import fuelwright.power.PullComparison;
import fuelwright.power.PullComparison.Band;
import fuelwright.power.RoadLoad;
import fuelwright.unit.Sentence;
import fuelwright.unit.Unit;
import fuelwright.work.PowerPulls;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** Power and torque of pulls. */
@Command(
        name = "pulls",
        mixinStandardHelpOptions = true,
        sortOptions = false,
        description = "Power and torque of the full-throttle pulls in rides; the first pull of each ride compared.")
final class PullsCommand implements Callable<Integer> {

    private static final Map<String, PowerCorrection> STANDARDS = standards();

    @Spec
    private CommandSpec spec;

    @Option(
            names = "--ride",
            required = true,
            paramLabel = "F",
            description = "a ride with pulls; again for another one to compare with the first")
    private List<Path> files = new ArrayList<>();

    @Option(
            names = "--mass",
            paramLabel = "KG",
            description = "machine, rider and fuel: for road pulls without logged power or torque")
    private Double massKg;

    @Option(names = "--drag-area", paramLabel = "M2", description = "drag area cdA of a road pull (0.55)")
    private Double dragAreaM2;

    @Option(names = "--rolling", paramLabel = "C", description = "rolling resistance of a road pull (0.018)")
    private Double rolling;

    @Option(
            names = "--standard",
            paramLabel = "NAME",
            description = "correct to the air of SAE-J1349, SAE-J1349-1990, ISO-1585, DIN-70020 or SAE-J607")
    private String standard;

    @Option(names = "--temperature", paramLabel = "C", description = "air of the day, °C")
    private Double temperatureC;

    @Option(
            names = "--pressure",
            paramLabel = "KPA",
            description = "barometer of the day, not reduced to sea level, kPa")
    private Double pressureKPa;

    @Option(names = "--humidity", paramLabel = "PCT", description = "relative humidity of the day, %% (0)")
    private Double humidityPercent;

    @Mixin
    private ReadingOptions reading;

    @Option(names = "--out", paramLabel = "DIR", description = "folder to write the curves into, whole or not at all")
    private Path folder;

    @Option(names = "--replace", description = "replace files of the same names in it")
    private boolean replace;

    @Option(names = "--json", description = "the summary as JSON")
    private boolean json;

    @Override
    public Integer call() {
        Optional<AirOfTheDay> air = air();
        PowerPulls.Settings settings = new PowerPulls.Settings(road(air), standard(air), air);
        if (folder != null) {
            if (folder.toString().isBlank()) {
                throw CommandFailed.usage("--out is empty: give a folder, . for the one you are in");
            }
            PowerPulls.check(folder, replace);
        }
        Loaded<PowerPulls.Outcome> loaded = PowerPulls.run(files, reading.rideOptions(), settings);
        PowerPulls.Outcome outcome = CommandFailed.valueOf(loaded);
        List<String> written = folder == null ? List.of() : PowerPulls.write(outcome, folder, replace);
        PrintWriter out = spec.commandLine().getOut();
        if (json) {
            Map<String, Object> map = asMap(outcome);
            map.put("remarks", loaded.issues().stream().map(Said::asMap).toList());
            map.put("folder", folder == null ? null : folder.toString());
            map.put("written", written);
            out.println(Json.write(map));
        } else {
            outcome.curves().forEach(curves -> curves.forEach(c -> lines(c, curves.indexOf(c) + 1, out)));
            outcome.comparisons().forEach(c -> lines(c, out));
            if (!written.isEmpty()) {
                out.println("Written to " + folder + ": " + String.join(", ", written));
            }
        }
        Said.remarks(loaded.issues(), spec.commandLine().getErr());
        return Exit.DONE;
    }

    private Optional<RoadLoad> road(Optional<AirOfTheDay> air) {
        if (massKg == null) {
            if (dragAreaM2 != null || rolling != null) {
                throw CommandFailed.usage("--drag-area and --rolling belong to a road pull: give --mass too");
            }
            return Optional.empty();
        }
        return Optional.of(new RoadLoad(
                within("--mass", massKg, 50, 5000, "kg"),
                RoadLoad.USUAL_ROTATING,
                rolling == null ? RoadLoad.USUAL_ROLLING : within("--rolling", rolling, 0, 0.1, ""),
                dragAreaM2 == null ? RoadLoad.USUAL_DRAG_AREA_M2 : within("--drag-area", dragAreaM2, 0, 5, "m²"),
                air.map(AirOfTheDay::densityKgPerM3).orElse(RoadLoad.USUAL_DENSITY)));
    }

    private Optional<PowerCorrection> standard(Optional<AirOfTheDay> air) {
        if (standard == null) {
            return Optional.empty();
        }
        PowerCorrection found =
                STANDARDS.get(standard.strip().toUpperCase(Locale.ROOT).replace(' ', '-'));
        if (found == null) {
            throw CommandFailed.usage(
                    "--standard " + standard + " isn't known: " + String.join(", ", STANDARDS.keySet()));
        }
        if (air.isEmpty()) {
            throw CommandFailed.usage("--standard needs the air of the day: give --temperature and --pressure");
        }
        return Optional.of(found);
    }

    private Optional<AirOfTheDay> air() {
        if (temperatureC == null && pressureKPa == null && humidityPercent == null) {
            return Optional.empty();
        }
        if (temperatureC == null || pressureKPa == null) {
            throw CommandFailed.usage("The air of the day needs both --temperature and --pressure");
        }
        return Optional.of(new AirOfTheDay(
                within("--temperature", temperatureC, -40, 60, "°C"),
                within("--pressure", pressureKPa, 45, 115, "kPa"),
                humidityPercent == null ? 0 : within("--humidity", humidityPercent, 0, 100, "%")));
    }

    private static double within(String option, double value, double least, double most, String unit) {
        if (!(value >= least && value <= most)) {
            throw CommandFailed.usage(String.format(
                            Locale.ROOT,
                            "%s %s must be from %s to %s %s",
                            option,
                            value,
                            figure(least),
                            figure(most),
                            unit)
                    .strip());
        }
        return value;
    }

    private static String figure(double value) {
        return value == Math.rint(value) ? String.valueOf((long) value) : String.valueOf(value);
    }

    private static void lines(PowerCurve curve, int number, PrintWriter out) {
        Point power = curve.peakPower();
        Point torque = curve.peakTorque();
        out.println(said(
                "%s, pull %d at %.1f s, %.0f to %.0f rpm, from %s:",
                curve.pull().ride().name(),
                number,
                curve.pull().startS(),
                curve.pull().lowRpm(),
                curve.pull().highRpm(),
                curve.source().words()));
        out.println(said(
                "  most power  %.1f kW ±%.1f (%.1f hp) at %.0f rpm%s",
                power.powerKw(),
                power.errorKw(),
                Unit.HORSEPOWER.fromCanonical(power.powerKw()),
                power.rpm(),
                curve.risesToTheEnd() ? ", where the pull ends: there may be more beyond" : ""));
        out.println(said(
                "  most torque %.1f N·m ±%.1f (%.1f lb·ft) at %.0f rpm",
                torque.torqueNm(),
                torque.torqueErrorNm(),
                Unit.POUND_FOOT.fromCanonical(torque.torqueNm()),
                torque.rpm()));
        curve.remarks().forEach(r -> out.println("  " + r));
    }

    private static void lines(PullComparison c, PrintWriter out) {
        double kw = c.after().peakPower().powerKw() - c.before().peakPower().powerKw();
        double nm = c.after().peakTorque().torqueNm() - c.before().peakTorque().torqueNm();
        out.println(said(
                "%s against %s: peak power %+.1f kW, peak torque %+.1f N·m",
                c.after().pull().ride().name(), c.before().pull().ride().name(), kw, nm));
        for (Band band : c.pays()) {
            out.println(said("  pays from %s", words(band)));
        }
        for (Band band : c.costs()) {
            out.println(said("  costs from %s", words(band)));
        }
        if (c.pays().isEmpty() && c.costs().isEmpty()) {
            out.println("  no difference beyond the uncertainty at any engine speed");
        }
    }

    private static String words(Band band) {
        return said(
                "%.0f to %.0f rpm: %+.1f %% on average, most %+.1f kW at %.0f rpm",
                band.fromRpm(),
                band.toRpm(),
                band.meanPercent(),
                band.most().kw(),
                band.most().rpm());
    }

    private static String said(String format, Object... figures) {
        return String.format(Locale.ROOT, format, figures);
    }

    private static Map<String, Object> asMap(PowerPulls.Outcome outcome) {
        Map<String, Object> map = new LinkedHashMap<>();
        map.put("command", "pulls");
        map.put("exit", Exit.DONE);
        List<Object> pulls = new ArrayList<>();
        for (List<PowerCurve> curves : outcome.curves()) {
            for (PowerCurve curve : curves) {
                Map<String, Object> one = new LinkedHashMap<>();
                one.put("ride", curve.pull().ride().name());
                one.put("pull", curves.indexOf(curve) + 1);
                one.put("startS", curve.pull().startS());
                one.put("source", curve.source().words());
                one.put("factor", curve.factor());
                one.put("peakPowerKw", curve.peakPower().powerKw());
                one.put("peakPowerUncertaintyKw", curve.peakPower().errorKw());
                one.put("peakPowerRpm", curve.peakPower().rpm());
                one.put("peakTorqueNm", curve.peakTorque().torqueNm());
                one.put("peakTorqueRpm", curve.peakTorque().rpm());
                one.put("risesToTheEnd", curve.risesToTheEnd());
                one.put(
                        "remarks",
                        curve.remarks().stream().map(Sentence::toString).toList());
                pulls.add(one);
            }
        }
        map.put("pulls", pulls);
        List<Object> compared = new ArrayList<>();
        for (PullComparison c : outcome.comparisons()) {
            Map<String, Object> one = new LinkedHashMap<>();
            one.put("before", c.before().pull().ride().name());
            one.put("after", c.after().pull().ride().name());
            one.put("pays", c.pays().stream().map(PullsCommand::asMap).toList());
            one.put("costs", c.costs().stream().map(PullsCommand::asMap).toList());
            compared.add(one);
        }
        map.put("compared", compared);
        return map;
    }

    private static Map<String, Object> asMap(Band band) {
        Map<String, Object> map = new LinkedHashMap<>();
        map.put("fromRpm", band.fromRpm());
        map.put("toRpm", band.toRpm());
        map.put("meanPercent", Json.number(band.meanPercent()));
        map.put("mostKw", band.most().kw());
        map.put("mostRpm", band.most().rpm());
        return map;
    }

    private static Map<String, PowerCorrection> standards() {
        Map<String, PowerCorrection> map = new LinkedHashMap<>();
        map.put("SAE-J1349", PowerCorrection.SAE_J1349_2004);
        map.put("SAE-J1349-1990", PowerCorrection.SAE_J1349_1990);
        map.put("ISO-1585", PowerCorrection.ISO_1585);
        map.put("DIN-70020", PowerCorrection.DIN_70020);
        map.put("SAE-J607", PowerCorrection.SAE_J607);
        return map;
    }
}
