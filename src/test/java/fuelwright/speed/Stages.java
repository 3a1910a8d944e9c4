package fuelwright.speed;

import fuelwright.airflow.Machine;
import fuelwright.estimate.ProposalSettings;
import fuelwright.issue.Loaded;
import fuelwright.job.Job;
import fuelwright.ride.RideOptions;
import fuelwright.work.Analyse;
import fuelwright.work.Analysis;
import fuelwright.work.Cancellation;
import fuelwright.work.HandOver;
import fuelwright.work.JobFiles;
import fuelwright.work.Progress;
import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;

/** Where the time of one whole job goes, stage by stage, in this process: the first run is cold, the others show what warmth is worth. */
public final class Stages {

    private long wallNs;
    private long cpuNs;
    private String stage = "start";

    /** Rows, and how many runs. */
    public static void main(String[] arguments) throws IOException {
        int rows = arguments.length > 0 ? Integer.parseInt(arguments[0]) : 1_000_000;
        int runs = arguments.length > 1 ? Integer.parseInt(arguments[1]) : 1;
        Path log = BigRide.log(rows);
        for (int run = 1; run <= runs; run++) {
            System.out.println("run " + run + ": wall ms, CPU ms of the process");
            new Stages().run(log);
        }
    }

    /** The job of a big ride. */
    public static JobFiles files(Path log) {
        return new JobFiles(
                "big",
                BigRide.fuelTable(),
                BigRide.targetTable(),
                List.of(new JobFiles.RideFiles(log, Optional.empty(), Optional.empty())),
                Machine.unknown(),
                RideOptions.defaults(),
                ProposalSettings.defaults().withDeadTimeMs(0));
    }

    private void run(Path log) {
        next("reading");
        Loaded<Job> job = files(log).load(Progress.NONE, Cancellation.NEVER);
        next("preparing");
        Job ready = job.value().orElseThrow(() -> new IllegalStateException(String.valueOf(job.issues())));
        Loaded<Analysis> analysis = Analyse.run(ready, (share, what) -> next(what), Cancellation.NEVER);
        next("handing over");
        HandOver.write(analysis.value().orElseThrow(), Path.of("target", "speed", "out"), true);
        next("end");
    }

    private static long cpuNs() {
        var system = (com.sun.management.OperatingSystemMXBean) ManagementFactory.getOperatingSystemMXBean();
        return system.getProcessCpuTime();
    }

    private void next(String name) {
        if (name.equals(stage)) {
            return;
        }
        long wall = System.nanoTime();
        long cpu = cpuNs();
        if (!stage.equals("start") && (wall - wallNs > 1_000_000)) {
            System.out.printf("  %-28s %6d %6d%n", stage, (wall - wallNs) / 1_000_000, (cpu - cpuNs) / 1_000_000);
        }
        stage = name;
        wallNs = wall;
        cpuNs = cpu;
    }
}
