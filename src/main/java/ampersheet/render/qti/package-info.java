/**
 * Problems in the open exchange format QTI (1EdTech Question and Test Interoperability), 3.0 and 2.1. No claim of
 * certification. Start reading at {@link ampersheet.render.qti.ExchangePackage}.
 */
package ampersheet.render.qti;
