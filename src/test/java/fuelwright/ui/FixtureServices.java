package fuelwright.ui;

import fuelwright.issue.Loaded;
import fuelwright.job.Job;
import fuelwright.ride.Ride;
import fuelwright.ride.RideOptions;
import fuelwright.table.Table;
import fuelwright.table.TableReader;
import fuelwright.ui.session.Services;
import fuelwright.work.Analysis;
import fuelwright.work.Cancellation;
import fuelwright.work.FirstRide;
import fuelwright.work.HandOver;
import fuelwright.work.Progress;
import java.nio.file.Path;
import java.util.List;

/** What the window asks for, answered from the made-up job. */
public class FixtureServices implements Services {

    @Override
    public Loaded<Job> sample() {
        return Loaded.of(Fixture.job(), List.of());
    }

    @Override
    public Loaded<Job> sampleTables() {
        return Loaded.of(Fixture.job().withRides(List.of()), List.of());
    }

    @Override
    public Loaded<Analysis> analyse(Job job, Progress progress, Cancellation cancellation) {
        return Fixture.analyse(job);
    }

    @Override
    public Loaded<Ride> readRide(Path file, RideOptions options, Progress progress, Cancellation cancellation) {
        return Loaded.of(Fixture.ride(file.getFileName().toString(), 4000, options), List.of());
    }

    @Override
    public Loaded<Ride> readSampleRide(String name, RideOptions options, Progress progress, Cancellation cancellation) {
        return Loaded.of(Fixture.ride(name, Fixture.ROWS, options), List.of());
    }

    @Override
    public Loaded<Table> readTable(Path file, boolean target) {
        return TableReader.read(file);
    }

    @Override
    public Loaded<FirstRide.Outcome> firstRide(Job job) {
        return FirstRide.of(job);
    }

    @Override
    public List<String> writeFirstRide(FirstRide.Outcome outcome, Path folder, boolean replace) {
        return List.of("first-ride.csv");
    }

    @Override
    public String tableText(Analysis analysis) {
        return HandOver.tableText(analysis);
    }

    @Override
    public List<String> export(Analysis analysis, Path folder, boolean replace, boolean pdf) {
        return pdf
                ? List.of("corrected.csv", "report.html", "entry-sheet.pdf")
                : List.of("corrected.csv", "report.html");
    }
}
