package fuelwright.screen;

import fuelwright.ride.Ride;

/** Makes screened rides for tests of what shows them. */
public final class ScreenedFixture {

    private ScreenedFixture() {}

    /** @param reasons one for each row, null where it counts */
    public static ScreenedRide of(Ride ride, Screen[] reasons) {
        byte[] codes = new byte[reasons.length];
        for (int row = 0; row < codes.length; row++) {
            codes[row] = reasons[row] == null ? -1 : (byte) reasons[row].ordinal();
        }
        return new ScreenedRide(ride, codes);
    }
}
