package ampersheet.spark;

import ampersheet.issue.Issue;
import ampersheet.issue.Slice;
import java.io.IOException;
import java.util.List;
import java.util.Locale;
import java.util.stream.IntStream;
import org.apache.spark.SparkConf;
import org.apache.spark.api.java.JavaSparkContext;

/**
 * The commands {@code issue} and {@code mark} as a job of many machines that share folders. Each task is what
 * {@code --slice} does, by the same functions; at the end one machine puts the slices together.
 *
 * <p>{@code spark-submit --class ampersheet.spark.ClassJob --jars ampersheet.jar ampersheet-spark.jar issue PLAN CLASS
 * OUT SLICES}, or {@code mark PLAN CLASS OUT SLICES ANSWERS}.
 */
public final class ClassJob {
    private ClassJob() {}

    public static void main(String[] typed) throws IOException {
        List<String> words = List.of(typed);
        boolean issues = words.size() == 5 && words.get(0).equals("issue");
        boolean marks = words.size() == 6 && words.get(0).equals("mark");
        if (!issues && !marks) {
            throw new IllegalArgumentException("issue PLAN CLASS OUT SLICES, or mark PLAN CLASS OUT SLICES ANSWERS");
        }
        ClassFiles files = new ClassFiles(words.get(1), words.get(2), "", words.get(3));
        int slices = Integer.parseInt(words.get(4));
        long begun = System.nanoTime();
        try (JavaSparkContext spark = new JavaSparkContext(new SparkConf().setAppName("ampersheet " + words.get(0)))) {
            int done = issues ? issue(spark, files, slices).sheets() : mark(spark, files, slices, words.get(5));
            System.out.printf(
                    Locale.ROOT,
                    "%d sheets %s in %d slices, %.1f s%n",
                    done,
                    issues ? "issued" : "marked",
                    slices,
                    (System.nanoTime() - begun) / 1e9);
        }
    }

    /** A slice that failed is tried again, and what is there and right is left alone, as by the command. */
    public static Issue.Issued issue(JavaSparkContext spark, ClassFiles files, int slices) {
        spark.parallelize(numbers(slices), slices)
                .map(number -> files.sliced().write(new Slice(number, slices), 1).sheets())
                .count();
        return files.sliced().join(slices);
    }

    /**
     * Marks, feedback and answers of a class whose learners handed in a file each; the report on the class is left to
     * the command.
     *
     * @param answers folder of the files
     * @return learners from whom something came in
     */
    public static int mark(JavaSparkContext spark, ClassFiles files, int slices, String answers)
            throws IOException {
        SlicedMarking marking = new SlicedMarking(files, slices, answers);
        int learners = spark.parallelize(marking.names(), slices)
                .mapPartitionsToPair(marking::bySlice)
                .groupByKey(slices)
                .map(slice -> marking.mark(slice._1(), slice._2()))
                .reduce(Integer::sum);
        marking.join();
        return learners;
    }

    private static List<Integer> numbers(int slices) {
        return IntStream.rangeClosed(1, slices).boxed().toList();
    }
}
