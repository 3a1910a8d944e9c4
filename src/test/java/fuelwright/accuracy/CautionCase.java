package fuelwright.accuracy;

import fuelwright.job.Job;
import fuelwright.safety.Caution;
import fuelwright.simulated.Grid;
import fuelwright.simulated.Machine;
import fuelwright.simulated.MachineTables;
import fuelwright.simulated.RideProfile;
import fuelwright.simulated.Simulation;
import fuelwright.simulated.TableFlaw;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.UnaryOperator;

/** A simulated machine on its rides, with what has to be found: nothing graver than a Check, or a rule at a level. */
public final class CautionCase {

    private static final TableFlaw NEARLY_RIGHT = TableFlaw.wobble(0.008);

    private final String name;
    private final Machine machine;
    private final long seed;
    private final RideProfile[] profiles;
    private boolean oldTable;
    private TableFlaw flaw = NEARLY_RIGHT;
    private UnaryOperator<String> edit = UnaryOperator.identity();
    private UnaryOperator<Job> told = UnaryOperator.identity();
    private double secondClockS = Double.NaN;
    private final Map<String, Caution.Level> wanted = new LinkedHashMap<>();
    private final Map<String, Caution.Level> unwanted = new LinkedHashMap<>();
    private MachineTables tables;
    private List<String> logs;

    CautionCase(String name, Machine machine, long seed, RideProfile... profiles) {
        this.name = name;
        this.machine = machine;
        this.seed = seed;
        this.profiles = profiles;
    }

    /** With the table from before the parts change. */
    CautionCase old() {
        oldTable = true;
        return this;
    }

    /** With the right table but for this. */
    CautionCase flaw(TableFlaw other) {
        flaw = other;
        return this;
    }

    /** With the log changed before it is read. */
    CautionCase edit(UnaryOperator<String> change) {
        edit = change;
        return this;
    }

    /** With the job changed before it is judged: what the user tells the program. */
    CautionCase told(UnaryOperator<Job> change) {
        told = change;
        return this;
    }

    /** With the mixture from a logger of its own, whose clock is so far off, s. */
    CautionCase twoLoggers(double offS) {
        secondClockS = offS;
        return this;
    }

    /** One of the rules, separated by |, has to fire at that level. */
    CautionCase wants(String rules, Caution.Level level) {
        wanted.put(rules, level);
        return this;
    }

    /** None of the rules, separated by |, may fire at that level. */
    CautionCase never(String rules, Caution.Level level) {
        unwanted.put(rules, level);
        return this;
    }

    public String name() {
        return name;
    }

    /** Whether nothing is wrong with it. */
    public boolean isClean() {
        return wanted.isEmpty() && unwanted.isEmpty();
    }

    /** The job; the machine described or nothing of it told. The rides are simulated once. */
    public Job job(boolean described) {
        if (tables == null) {
            tables = new MachineTables(machine);
        }
        if (logs == null) {
            logs = new ArrayList<>();
            for (RideProfile profile : profiles) {
                logs.add(edit.apply(Simulation.ride(tables, inUnit(), profile, seed * 1000 + logs.size())
                        .csv()));
            }
        }
        return told.apply(SimulatedJob.of(tables, inUnit(), logs, secondClockS, described));
    }

    private Grid inUnit() {
        return oldTable ? tables.old(seed) : tables.spoilt(tables.truth(), flaw, seed);
    }

    /** What is wrong with the judgement: a Stop on a clean ride, or a danger that wasn't found. */
    public List<String> faults(List<Caution> cautions) {
        List<String> faults = new ArrayList<>();
        if (isClean()) {
            cautions.stream()
                    .filter(Caution::isStop)
                    .forEach(c -> faults.add("FALSE STOP " + c.rule() + ": " + c.what()));
        }
        wanted.forEach((rules, level) -> {
            List<String> any = List.of(rules.split("\\|"));
            if (cautions.stream().noneMatch(c -> any.contains(c.rule()) && c.level() == level)) {
                faults.add("MISSED " + rules + " at " + level.words());
            }
        });
        unwanted.forEach((rules, level) -> {
            List<String> any = List.of(rules.split("\\|"));
            cautions.stream()
                    .filter(c -> any.contains(c.rule()) && c.level() == level)
                    .forEach(c -> faults.add("FALSE " + level.words() + " " + c.rule() + ": " + c.what()));
        });
        return faults;
    }
}
