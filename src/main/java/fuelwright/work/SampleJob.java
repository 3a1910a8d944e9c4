package fuelwright.work;

import fuelwright.airflow.Machine;
import fuelwright.airflow.ThrottleBody;
import fuelwright.estimate.ProposalSettings;
import fuelwright.issue.Loaded;
import fuelwright.job.FirstStart;
import fuelwright.job.Job;
import fuelwright.mixture.Fuel;
import fuelwright.ride.Ride;
import fuelwright.ride.RideOptions;
import java.io.FileNotFoundException;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;

/**
 * The sample job, from files inside the program: an invented V-twin whose throttle bodies were changed, its first ride (from cold) and a
 * dyno pull.
 */
public final class SampleJob {

    /** The machine of the sample job: 720 cc, two bodies, 38 mm before and 44 mm after. */
    public static final Machine MACHINE = new Machine(
            OptionalDouble.of(720),
            2,
            Optional.of(new ThrottleBody(38, 8, 5, 85)),
            Optional.of(new ThrottleBody(44, 8, 5, 85)),
            Fuel.PETROL,
            OptionalDouble.of(8500));

    private static final String FOLDER = "/fuelwright/sample/";
    private static final String TABLE = "fuel-table.csv";
    private static final String TARGET = "target-table.csv";
    private static final List<String> RIDES = List.of("ride-1-cold-start.csv", "dyno-pull.csv");

    private SampleJob() {}

    /**
     * @throws WorkException if the program's own files can't be read or put down for reading
     */
    public static Loaded<Job> load() {
        return load(RIDES);
    }

    /**
     * The same job before its rides are read.
     *
     * @throws WorkException if the program's own files can't be read or put down for reading
     */
    public static Loaded<Job> tables() {
        return load(List.of());
    }

    private static Loaded<Job> load(List<String> names) {
        try {
            Path folder = Unpacked.newFolder();
            Path table = copy(TABLE, folder);
            Path target = copy(TARGET, folder);
            List<JobFiles.RideFiles> rides = new java.util.ArrayList<>();
            for (String ride : names) {
                rides.add(new JobFiles.RideFiles(copy(ride, folder), Optional.empty(), Optional.empty()));
            }
            Loaded<Job> loaded = new JobFiles(
                            "Sample: V-twin with bigger throttle bodies",
                            table,
                            target,
                            rides,
                            MACHINE,
                            RideOptions.defaults(),
                            ProposalSettings.defaults())
                    .load(Progress.NONE, Cancellation.NEVER);
            // It has been ridden: what comes before the first start was done.
            Set<FirstStart> done = EnumSet.allOf(FirstStart.class);
            return new Loaded<>(loaded.value().map(job -> job.withFirstStart(done)), loaded.issues());
        } catch (IOException e) {
            throw cannotOpen(e);
        }
    }

    /**
     * One of its rides, read in another way.
     *
     * @param name as the ride calls itself
     * @throws WorkException if the program's own files can't be read or put down for reading
     */
    public static Loaded<Ride> ride(String name, RideOptions options, Progress progress, Cancellation cancellation) {
        try {
            Path folder = Unpacked.newFolder();
            return OpenRide.read(copy(name, folder), options, progress, cancellation);
        } catch (IOException e) {
            throw cannotOpen(e);
        }
    }

    private static WorkException cannotOpen(IOException e) {
        return new WorkException(
                "The sample job can't be opened: " + e.getMessage() + ". Make room in the folder for temporary files",
                false,
                e);
    }

    private static Path copy(String name, Path folder) throws IOException {
        try (InputStream in = SampleJob.class.getResourceAsStream(FOLDER + name)) {
            if (in == null) {
                throw new FileNotFoundException(name + " is missing from the program");
            }
            Path file = folder.resolve(name);
            Files.copy(in, file);
            return file;
        }
    }
}
