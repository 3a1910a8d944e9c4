package fuelwright.accuracy;

import fuelwright.airflow.Machine;
import fuelwright.airflow.ThrottleBody;
import fuelwright.estimate.Estimate;
import fuelwright.estimate.Estimator;
import fuelwright.mixture.Fuel;
import fuelwright.ride.*;
import fuelwright.screen.*;
import fuelwright.simulated.*;
import fuelwright.table.*;
import fuelwright.unit.Unit;
import java.util.*;

public final class AccuracyStudy {
    public static void main(String[] args) {
        List<double[]> rows = new ArrayList<>();
        int which = args.length > 0 ? Integer.parseInt(args[0]) : -1;
        List<fuelwright.simulated.Machine> all = SimulatedMachines.all();
        for (int i = 0; i < all.size(); i++) {
            if (which >= 0 && which != i) continue;
            fuelwright.simulated.Machine machine = all.get(i);
            MachineTables tables = new MachineTables(machine);
            Grid old = tables.old(100 + i);
            SimulatedRide ride =
                    Simulation.ride(tables, old, RideProfile.road(17).cold(20), 1000 + i);
            SimulatedRide other = Simulation.ride(tables, old, RideProfile.road(12), 2000 + i);
            double before = Scores.mixtureError(old, other);
            double floor = Scores.mixtureError(tables.truth(), other);
            double[] r = new double[10];
            r[0] = 100 * before;
            r[1] = 100 * floor;
            StringBuilder words = new StringBuilder();
            for (int f = 0; f < 2; f++) {
                Table fuel = ok(TableReader.read("fuel", fuelwright.simulated.TableWriter.fuel(machine, old)));
                Table target = ok(
                        TableReader.read("target", fuelwright.simulated.TableWriter.target(machine, tables.target())));
                Machine m = f == 0 ? Machine.unknown() : described(machine);
                Ride parsed = parse(ride.csv());
                long t0 = System.nanoTime();
                ScreenedRide screened = Screens.apply(parsed, ScreenSettings.defaults(), fuel.speed(), fuel.load());
                double dead = machine.unit().fuel() == ControlUnit.Fuel.PULSE
                        ? machine.unit().deadTimeMs()
                        : 0;
                Estimate e = new Estimator(fuel, target, List.of(new Estimator.Source(screened, fuel)), m, dead)
                        .run(() -> {});
                long ms = (System.nanoTime() - t0) / 1000000;
                double[] cells = new double[old.cells()];
                Grid truth = tables.factor(old, tables.truth());
                double[] readings = Scores.readings(old, ride);
                int covered = 0, counted = 0;
                double leanest = 0;
                for (int c = 0; c < cells.length; c++) {
                    cells[c] = fuel.quantity().corrected(old.at(c), Math.exp(e.logFactor(c)), dead);
                    double err = e.logFactor(c) - Math.log(truth.at(c));
                    if (e.independentReadings(c) >= 3) {
                        counted++;
                        if (Math.abs(err) < 1.96 * e.logUncertainty(c)) covered++;
                    }
                }
                Grid corrected = old.with(cells);
                r[2 + 3 * f] = 100 * Scores.mixtureError(corrected, other);
                r[3 + 3 * f] = Scores.leanestHighLoadCell(corrected, ride, 20)
                        .map(Scores.CellError::shortfallPct)
                        .orElse(Double.NaN);
                r[4 + 3 * f] = 100.0 * covered / Math.max(1, counted);
                words.append(ms + " ms kept " + screened.kept() + "/" + parsed.size() + " "
                        + e.sensor().words() + " " + e.remarks() + "\n      ");
                if (which >= 0 && f == 1) dump(e, truth, readings, fuel);
            }
            System.out.printf(
                    "%-55s before %5.1f floor %.2f | none %5.2f lean %5.2f cov %3.0f | forecast %5.2f lean %5.2f cov %3.0f%n      %s%n",
                    machine.name(), r[0], r[1], r[2], r[3], r[4], r[5], r[6], r[7], words);
            rows.add(r);
        }
        for (int k : new int[] {2, 5}) {
            double[] v = rows.stream().mapToDouble(x -> x[k]).sorted().toArray();
            System.out.printf("median %.2f worst %.2f%n", v[v.length / 2], v[v.length - 1]);
        }
    }

    static void dump(Estimate e, Grid truth, double[] readings, Table t) {
        for (int j = t.load().size() - 1; j >= 0; j--) {
            StringBuilder s = new StringBuilder(String.format("%5.0f ", t.load().at(j)));
            for (int i = 0; i < t.speed().size(); i++) {
                int c = t.cell(j, i);
                s.append(String.format(
                        "%6.1f(%4.1f)%4.0f|",
                        100 * (e.logFactor(c) - Math.log(truth.at(c))),
                        100 * e.logUncertainty(c),
                        e.independentReadings(c)));
            }
            System.out.println(s);
        }
    }

    static Machine described(fuelwright.simulated.Machine m) {
        ThrottleBodies b = m.bodiesBefore();
        ThrottleBodies a = m.bodiesAfter();
        return new Machine(
                OptionalDouble.of(m.engine().displacementCc()),
                b.count(),
                Optional.of(new ThrottleBody(b.boreMm(), b.shaftMm(), b.closedAngleDeg(), b.openAngleDeg())),
                Optional.of(new ThrottleBody(a.boreMm(), a.shaftMm(), a.closedAngleDeg(), a.openAngleDeg())),
                Fuel.PETROL,
                OptionalDouble.of(m.engine().redlineRpm()));
    }

    static <T> T ok(fuelwright.issue.Loaded<T> l) {
        return l.value().orElseThrow(() -> new IllegalStateException(l.issues().toString()));
    }

    static Ride parse(String csv) {
        String[] lines = csv.split("\n");
        String[] head = lines[0].split(",");
        double[][] v = new double[head.length][lines.length - 1];
        for (int i = 1; i < lines.length; i++) {
            String[] f = lines[i].split(",", -1);
            for (int k = 0; k < head.length; k++)
                v[k][i - 1] = k >= f.length || f[k].isBlank() ? Double.NaN : Double.parseDouble(f[k]);
        }
        List<Channel> channels = new ArrayList<>();
        for (int k = 1; k < head.length; k++) {
            String name = head[k].replaceAll("\\s*\\[.*", "").trim();
            Role role = Role.OTHER;
            for (Role x : Role.values()) if (x.words().equals(name)) role = x;
            if (name.startsWith("lambda")) role = Role.LAMBDA;
            double[] col = v[k];
            if (role == Role.AFR) for (int i = 0; i < col.length; i++) col[i] /= 14.7;
            if (head[k].contains("[ms]")) for (int i = 0; i < col.length; i++) col[i] /= 1000;
            channels.add(new Channel(head[k], role, Unit.ONE, Column.of(col), Channel.Confidence.SURE, ""));
        }
        return new Ride("ride", Column.of(v[0]), channels, List.of(0), List.of());
    }
}
