package fuelwright.simulated;

/**
 * The moving machine: engine speed, road speed, gear, and the controls the rider sets. Torque is taken from the air (fuel only
 * decides whether it burns at all), so that the same ride can be ridden again with another table.
 */
final class Drive {
    private static final double WORK_J_PER_G_AIR = 1050;
    private static final double SHIFT_S = 0.28;

    final Machine machine;
    final AirMap air;

    double speedRpm;
    double roadSpeedMPerS;
    double throttlePct;
    double pressurePa;
    double slope;
    int gear = 1;
    boolean fuelCut;
    double coolantC;

    /** What the rider wants. */
    double wantedThrottlePct;

    double throttleRatePctPerS = 120;
    double brakeMPerS2;
    boolean clutchOpen = true;
    /** Set by a dyno's brake: the engine speed it forces, or NaN. */
    double forcedRpm = Double.NaN;

    private double shiftingS;
    private double hunting;

    Drive(Machine machine, AirMap air, double coolantC) {
        this.machine = machine;
        this.air = air;
        this.coolantC = coolantC;
        speedRpm = idleRpm();
        pressurePa = air.pressurePa(speedRpm, 0);
    }

    double idleRpm() {
        return machine.engine().idleRpm() * (1 + 0.35 * Math.max(0, 60 - coolantC) / 60);
    }

    double chargeNow() {
        return air.charge(speedRpm, pressurePa);
    }

    double flowGPerS() {
        return air.flowGPerS(speedRpm, pressurePa);
    }

    boolean shifting() {
        return shiftingS > 0;
    }

    void shift(int toGear) {
        if (toGear != gear && toGear >= 1 && toGear <= machine.vehicle().gears()) {
            gear = toGear;
            shiftingS = SHIFT_S;
        }
    }

    /** @param hunt a standard normal figure: the engine's own unrest at idle */
    void step(double dtS, double hunt) {
        double wanted = shifting() ? 0 : wantedThrottlePct;
        double move = Math.max(-260, Math.min(throttleRatePctPerS, (wanted - throttlePct) / 0.04));
        throttlePct = Math.min(100, Math.max(0, throttlePct + move * dtS));
        shiftingS = Math.max(0, shiftingS - dtS);
        hunting += (-hunting / 0.8) * dtS + 18 * StrictMath.sqrt(dtS) * hunt;
        if (Double.isNaN(forcedRpm)) {
            roll(dtS);
        } else {
            speedRpm = forcedRpm + 0.2 * hunting;
        }
        double balanced = air.pressurePa(speedRpm, throttlePct);
        pressurePa += (balanced - pressurePa) * (1 - StrictMath.exp(-dtS / 0.02));
        coolantC += warming() * dtS;
    }

    /** °C a second: the faster the more fuel is burnt, until the thermostat opens. */
    private double warming() {
        double perEngine = flowGPerS() * 720 / machine.engine().displacementCc();
        double heating = 0.05 + (fuelCut ? 0 : 0.022 * perEngine);
        double thermostat = 82 + 0.12 * Math.min(40, perEngine);
        return coolantC < thermostat ? heating * Math.min(1, (thermostat - coolantC) / 4) : -0.05;
    }

    private void roll(double dtS) {
        Vehicle vehicle = machine.vehicle();
        double coupled = vehicle.speedRpm(roadSpeedMPerS, gear);
        boolean open = clutchOpen || shifting();
        double slip = gear == 1 ? idleRpm() * (1.0 + Math.min(1.4, throttlePct / 14)) : 0;
        double force = 0;
        if (!open) {
            force = torqueNm() * vehicle.ratios().get(gear - 1) * 0.92 / vehicle.wheelRadiusM();
        }
        double acceleration = (force - vehicle.resistanceN(roadSpeedMPerS, roadSpeedMPerS > 1 ? slope : 0))
                        / (vehicle.massKg() * 1.06)
                - brakeMPerS2;
        roadSpeedMPerS = Math.max(0, roadSpeedMPerS + acceleration * dtS);
        double goal = open && !shifting() ? idleRpm() : Math.max(coupled, slip);
        double floor = 0.8 * idleRpm();
        double quickness = open || coupled < slip ? 0.12 : 0.03;
        speedRpm += (Math.max(floor, goal) - speedRpm) * (1 - StrictMath.exp(-dtS / quickness));
        speedRpm += (open ? hunting : 0.15 * hunting) * dtS / quickness * 0.5;
    }

    double torqueNm() {
        Engine engine = machine.engine();
        double airG = chargeNow() * machine.fullChargeG();
        double share = speedRpm / engine.redlineRpm();
        double lossPa = 0.9e5 + 1.3e5 * share * share;
        double pumpPa = Breathing.exhaustPressurePa(
                        speedRpm, engine.redlineRpm(), machine.ambient().pressurePa())
                - pressurePa;
        double work = (fuelCut ? 0 : airG * WORK_J_PER_G_AIR) - (lossPa + pumpPa) * engine.displacementCc() * 1e-6;
        return work / (4 * Math.PI);
    }
}
