/**
 * Bad input as values. Entry classes: {@link fuelwright.issue.Issue}, {@link fuelwright.issue.Loaded}. Knows units, nothing else of the
 * program.
 */
package fuelwright.issue;
