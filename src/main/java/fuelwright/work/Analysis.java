package fuelwright.work;

import fuelwright.airflow.HighLoad;
import fuelwright.estimate.CellMeans;
import fuelwright.estimate.Estimate;
import fuelwright.estimate.Proposal;
import fuelwright.estimate.Validation;
import fuelwright.job.Job;
import fuelwright.safety.Caution;
import fuelwright.screen.ScreenedRide;
import java.util.List;
import java.util.Optional;

/**
 * Everything that follows from a job, computed in one go: what window, command line, exports and report show.
 *
 * @param job what it follows from
 * @param highLoad what counts as high load for this machine
 * @param screened the job's rides in order, with what was kept out
 * @param means plain cell means, for comparison
 * @param estimate what each cell needs
 * @param proposal what to put into each cell
 * @param validation error before and after on parts of the ride the fit hadn't seen; empty where the ride is too short
 * @param cautions worst first
 */
public record Analysis(
        Job job,
        HighLoad highLoad,
        List<ScreenedRide> screened,
        CellMeans means,
        Estimate estimate,
        Proposal proposal,
        Optional<Validation> validation,
        List<Caution> cautions) {

    public Analysis {
        screened = List.copyOf(screened);
        cautions = List.copyOf(cautions);
    }

    /** Cautions of level Stop. */
    public List<Caution> stops() {
        return cautions.stream().filter(Caution::isStop).toList();
    }
}
