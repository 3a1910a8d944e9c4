package fuelwright.ui;

import fuelwright.issue.Loaded;
import fuelwright.job.Job;
import fuelwright.ride.Ride;
import fuelwright.table.Table;
import fuelwright.table.TableReader;
import fuelwright.table.TableWriter;
import fuelwright.ui.session.Services;
import fuelwright.work.Analyse;
import fuelwright.work.Analysis;
import fuelwright.work.Cancellation;
import fuelwright.work.Progress;
import java.nio.file.Path;
import java.util.List;

/** The real thing: what the window asks for, from the use cases. */
final class WorkServices implements Services {

    @Override
    public Loaded<Job> sample() {
        return Loaded.of(Job.empty(), List.of());
    }

    @Override
    public Loaded<Analysis> analyse(Job job, Progress progress, Cancellation cancellation) {
        return Analyse.run(job, progress, cancellation);
    }

    @Override
    public Loaded<Ride> readRide(Path file, Progress progress, Cancellation cancellation) {
        throw new IllegalStateException("rides can't be read yet");
    }

    @Override
    public Loaded<Table> readTable(Path file) {
        return TableReader.read(file);
    }

    @Override
    public String tableText(Analysis analysis) {
        return TableWriter.write(analysis.proposal().corrected());
    }

    @Override
    public List<String> export(Analysis analysis, Path folder, boolean replace) {
        throw new IllegalStateException("nothing can be written yet");
    }
}
