/**
 * How an engine breathes: throttle plate, compressible flow, cylinder filling, atmosphere; the bore forecast and what counts as high
 * load. Entry classes: {@link fuelwright.airflow.Machine}, {@link fuelwright.airflow.BoreForecast},
 * {@link fuelwright.airflow.HighLoad}. Knows {@code mixture} for the fuel in the tank. Must not know tables, rides or evidence.
 */
package fuelwright.airflow;
