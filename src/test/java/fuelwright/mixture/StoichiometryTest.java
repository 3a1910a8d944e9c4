package fuelwright.mixture;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class StoichiometryTest {

    /** First figure derived by hand from the balance; second as published, with its source and a tolerance that covers its air model. */
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "methane   | 1 | 4  | 0 | 17.239 | 17.19 | 0.4 % | 3.76 parts of N2 to one of O2: common practice, no source",
                "propane   | 3 | 8  | 0 | 15.679 | 15.67 | 0.3 % | value from memory",
                "n-heptane | 7 | 16 | 0 | 15.180 | 15.15 | 0.5 % | value from memory",
                "iso-octane| 8 | 18 | 0 | 15.132 | 15.13 | 0.1 % | value from memory",
                "toluene   | 7 | 8  | 0 | 13.507 | 13.5  | 0.3 % | value from memory",
                "methanol  | 1 | 4  | 1 | 6.474  | 6.47  | 0.2 % | value from memory",
                "ethanol   | 2 | 6  | 1 | 9.005  | 9.0   | 0.2 % | US Department of Energy, table of fuel properties, seen",
                "hydrogen  | 0 | 2  | 0 | 34.296 | 34.3  | 0.1 % | value from memory"
            })
    void pureSubstancesMatchTheBalanceAndWhatIsPublished(
            String name, double c, double h, double o, double derived, double published, String within, String source) {
        double ratio = Stoichiometry.ratio(c, h, o);
        assertEquals(derived, ratio, 0.0006, name);
        double percent = Double.parseDouble(within.replace('%', ' ').strip());
        assertEquals(published, ratio, published * percent / 100, name + ": " + source);
    }

    /** 40 CFR 1065.655, default compositions of petrol, E10 and E85 (compositions from memory; ratios derived from them). */
    @Test
    void regulatoryDefaultCompositionsGiveTheirRatios() {
        assertEquals(14.575, Stoichiometry.ratio(1, 1.85, 0), 0.0006);
        assertEquals(14.043, Stoichiometry.ratio(1, 1.92, 0.03), 0.0006);
        assertEquals(10.124, Stoichiometry.ratio(1, 2.73, 0.36), 0.0006);
    }

    /** Petrol by hydrogen to carbon: US Department of Energy's table says 14.7 for what it sells, seen; within 1.5 %. */
    @Test
    void petrolLiesWhereTablesPutIt() {
        for (double hydrogen : new double[] {1.80, 1.85, 1.87}) {
            assertEquals(14.7, Stoichiometry.ratio(1, hydrogen, 0), 14.7 * 0.015);
        }
        // Short form of handbooks, from memory: 34.56·(4 + y)/(12.011 + 1.008·y).
        assertEquals(34.56 * 5.87 / (12.011 + 1.008 * 1.87), Stoichiometry.ratio(1, 1.87, 0), 0.01);
    }

    private static double ethanolBlend(double volumePercent) {
        return Stoichiometry.blend(List.of(
                new Stoichiometry.Part(100 - volumePercent, 745, 14.7),
                new Stoichiometry.Part(volumePercent, 789, 8.98)));
    }

    @Test
    void blendsGoByMass() {
        assertEquals(14.398, ethanolBlend(5), 0.001);
        assertEquals(14.098, ethanolBlend(10), 0.001);
        assertEquals(13.799, ethanolBlend(15), 0.001);
        assertEquals(13.384, ethanolBlend(22), 0.001);
        assertEquals(12.914, ethanolBlend(30), 0.001);
        assertEquals(9.797, ethanolBlend(85), 0.001);
        assertEquals(14.7, ethanolBlend(0), 1e-12);
    }

    /** Published: E10 14.13, E15 13.8, E85 9.7 and 9.765 (seen in public tables of pump fuels: common practice); they spread by 1 %. */
    @Test
    void blendsAgreeWithPublishedRatiosWithinTheirSpread() {
        assertEquals(14.13, ethanolBlend(10), 0.05);
        assertEquals(13.8, ethanolBlend(15), 0.05);
        assertEquals(9.765, ethanolBlend(85), 0.1);
    }

    @Test
    void theProgramsFuelsAreThoseBlends() {
        assertEquals(Fuel.E5.stoichiometricRatio(), ethanolBlend(5), 0.01);
        assertEquals(Fuel.E10.stoichiometricRatio(), ethanolBlend(10), 0.01);
        assertEquals(Fuel.E85.stoichiometricRatio(), ethanolBlend(85), 0.01);
        assertEquals(Fuel.ETHANOL.stoichiometricRatio(), Stoichiometry.ratio(2, 6, 1), 0.01);
        assertEquals(Fuel.METHANOL.stoichiometricRatio(), Stoichiometry.ratio(1, 4, 1), 0.01);
    }

    @Test
    void whatDoesNotBurnIsRefused() {
        assertThrows(IllegalArgumentException.class, () -> Stoichiometry.ratio(1, 0, 2));
        assertThrows(IllegalArgumentException.class, () -> Stoichiometry.blend(List.of()));
    }
}
