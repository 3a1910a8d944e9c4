package fuelwright.ui;

import fuelwright.issue.Loaded;
import fuelwright.job.Job;
import fuelwright.ride.Ride;
import fuelwright.ride.RideOptions;
import fuelwright.table.Table;
import fuelwright.ui.session.Services;
import fuelwright.work.Analysis;
import fuelwright.work.Cancellation;
import fuelwright.work.FirstRide;
import fuelwright.work.HandOver;
import fuelwright.work.OpenRide;
import fuelwright.work.OpenTable;
import fuelwright.work.Progress;
import fuelwright.work.RecipeBook;
import fuelwright.work.SampleJob;
import fuelwright.work.StateFolder;
import fuelwright.work.Workbench;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;

/** The real thing: what the window asks for, from the use cases. */
final class WorkServices implements Services {

    private final RecipeBook recipes;
    private final StateFolder state;
    private final Workbench workbench = new Workbench();

    /** @param recipes what was said about logs before */
    WorkServices(RecipeBook recipes, StateFolder state) {
        this.recipes = recipes;
        this.state = state;
    }

    /** With what the user's own earlier runs left. */
    static WorkServices ofUser() {
        return new WorkServices(RecipeBook.ofUser(), StateFolder.ofUser());
    }

    @Override
    public Loaded<Job> sample() {
        return SampleJob.load();
    }

    @Override
    public Loaded<Job> sampleTables() {
        return SampleJob.tables();
    }

    @Override
    public Loaded<Analysis> analyse(Job job, Progress progress, Cancellation cancellation) {
        return workbench.analyse(job, progress, cancellation);
    }

    @Override
    public Optional<Analysis> firstAnswer(Job job, Cancellation cancellation) {
        return workbench.first(job, cancellation);
    }

    @Override
    public Loaded<Ride> readRide(Path file, RideOptions options, Progress progress, Cancellation cancellation) {
        return OpenRide.read(file, options, progress, cancellation);
    }

    @Override
    public RideOptions remembered(Path file, RideOptions said) {
        return recipes.find(file).map(said::or).orElse(said);
    }

    @Override
    public void remember(List<String> headings, RideOptions said) {
        recipes.remember(headings, said);
    }

    @Override
    public Loaded<Ride> readSampleRide(String name, RideOptions options, Progress progress, Cancellation cancellation) {
        return SampleJob.ride(name, options, progress, cancellation);
    }

    @Override
    public Loaded<Table> readTable(Path file, boolean target) {
        return target ? OpenTable.target(file) : OpenTable.fuel(file);
    }

    @Override
    public Loaded<FirstRide.Outcome> firstRide(Job job) {
        return FirstRide.of(job);
    }

    @Override
    public List<String> writeFirstRide(FirstRide.Outcome outcome, Path folder, boolean replace) {
        return FirstRide.write(outcome, folder, replace);
    }

    @Override
    public String tableText(Analysis analysis) {
        return HandOver.tableText(analysis);
    }

    @Override
    public List<String> export(Analysis analysis, Path folder, boolean replace, boolean pdf) {
        return HandOver.write(analysis, folder, replace, pdf);
    }

    @Override
    public StateFolder state() {
        return state;
    }
}
