/**
 * Bad input as values. Entry classes: {@link fuelwright.issue.Issue}, {@link fuelwright.issue.Loaded}. Knows nothing else of the
 * program.
 */
package fuelwright.issue;
