package fuelwright.work;

import fuelwright.job.Job;
import java.nio.file.Path;

/** Saves the sample job over itself, each time under the next number, until it is killed. Arguments: the file. */
final class SavingForEver {

    private SavingForEver() {}

    public static void main(String[] args) {
        Job job = SampleJob.load().value().orElseThrow();
        Path file = Path.of(args[0]);
        for (int n = 0; ; n++) {
            SaveJob.save(job.withName("save " + n), file);
            if (n == 0) {
                System.out.println("saving");
            }
        }
    }
}
