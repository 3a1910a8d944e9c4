package fuelwright.job;

import static org.junit.jupiter.api.Assertions.assertEquals;

import fuelwright.airflow.Machine;
import fuelwright.mixture.Fuel;
import fuelwright.safety.Limit;
import fuelwright.safety.Limits;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

class JobLimitsTest {

    private static Machine on(Fuel fuel) {
        return new Machine(
                OptionalDouble.of(720), 2, Optional.empty(), Optional.empty(), fuel, OptionalDouble.of(8000));
    }

    @Test
    void limitsFollowTheMachinesFuel() {
        Job job = Job.empty().withMachine(on(Fuel.METHANOL));
        assertEquals(Limits.usual(Fuel.METHANOL), job.limits());
    }

    @Test
    void whatTheUserChangedStaysWithAnotherFuel() {
        Job job = Job.empty()
                .withLimits(Limits.usual(Fuel.PETROL).with(Limit.LEAN_EXCESS, 0.03))
                .withMachine(on(Fuel.E85));
        assertEquals(Fuel.E85, job.limits().fuel());
        assertEquals(0.03, job.limits().of(Limit.LEAN_EXCESS));
        assertEquals(0.93, job.limits().of(Limit.LEAN_CEILING));
    }
}
