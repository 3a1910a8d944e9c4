package fuelwright.simulated;

/**
 * Fuel on the port's wall: m_cyl = (1 − X)·m_inj + m_film/τ, dm_film/dt = X·m_inj − m_film/τ (Aquino, SAE 810494).
 */
final class WallFilm {
    private final double share;
    private final double timeConstantS;
    private double film;

    /** A film in balance with the flow given (any unit per second). */
    WallFilm(double share, double timeConstantS, double steadyFlow) {
        this.share = share;
        this.timeConstantS = timeConstantS;
        this.film = share * timeConstantS * steadyFlow;
    }

    /** What reaches the cylinder while {@code injected} flows for {@code dtS}. */
    double step(double injected, double dtS) {
        double balance = share * timeConstantS * injected;
        double before = film;
        film = balance + (film - balance) * StrictMath.exp(-dtS / timeConstantS);
        return injected - (film - before) / dtS;
    }
}
