/** States that change over time: temperatures that rise, capacitors that charge. */
package ampersheet.integration;
