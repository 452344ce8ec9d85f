/** Problems in the open exchange format QTI 3.0 (1EdTech Question and Test Interoperability). No claim of certification. */
package ampersheet.render.qti;
