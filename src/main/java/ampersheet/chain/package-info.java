/**
 * Tiles of pixels that pass data on: the path the data takes, found by following it, and the time a frame takes. Start
 * reading at {@link ampersheet.chain.DataPath}.
 */
package ampersheet.chain;
