/**
 * Problems in the open exchange format QTI 3.0 (1EdTech Question and Test Interoperability). No claim of certification.
 * Start reading at {@link ampersheet.render.qti.ExchangePackage}.
 */
package ampersheet.render.qti;
