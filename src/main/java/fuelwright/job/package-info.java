/**
 * The job: one machine, one change, its tables, rides and decisions, as one immutable value. Entry class:
 * {@link fuelwright.job.Job}. Must not know the window.
 */
package fuelwright.job;
