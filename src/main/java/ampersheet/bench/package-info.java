/**
 * From a problem to what is laid out of it on a bench: parts that one has, where the probes go, what a meter shows and
 * within which band; or why it is not laid out. Start reading at {@link ampersheet.bench.BenchCircuit}.
 */
package ampersheet.bench;
