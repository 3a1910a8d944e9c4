/**
 * How an engine breathes: throttle plate, compressible flow, cylinder filling, atmosphere; the bore forecast and what counts as high
 * load. Entry classes: {@link fuelwright.airflow.Machine}, {@code BoreForecast}, {@code HighLoad}. Must not know rides or evidence.
 */
package fuelwright.airflow;
