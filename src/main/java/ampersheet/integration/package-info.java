/**
 * States that change over time: temperatures that rise, capacitors that charge. Start reading at
 * {@link ampersheet.integration.TimeIntegration}.
 */
package ampersheet.integration;
