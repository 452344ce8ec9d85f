package ampersheet.sheet;

import ampersheet.sheet.CoursePlan.Topic;
import ampersheet.sheet.CoursePlan.Week;
import java.util.ArrayList;
import java.util.List;

/**
 * When each topic of a course is met. It returns at even gaps, since growing ones do no better and are harder to keep
 * in mind. No gap is shorter than the course says. Longer ones are for weeks that would otherwise have more problems
 * than they should: each topic returns once if that is possible at all, and then as often as the weeks have room, so
 * that they are filled alike. What is still free in a week goes to what is new first.
 */
final class Meetings {
    /** More of one kind on a sheet is practice by the yard, and mixes with nothing. */
    private static final int MOST_OF_ONE = 3;

    private final CoursePlan course;
    private final List<Met> topics = new ArrayList<>();

    /** A topic and its weeks; its gap is 0 if it does not return. */
    private static final class Met {
        private final Topic topic;
        private final int enters;
        private int gap;

        Met(Topic topic, int enters) {
            this.topic = topic;
            this.enters = enters;
            this.gap = topic.gap().orElse(0);
        }

        boolean isMet(int week) {
            return week == enters || returns(week);
        }

        boolean returns(int week) {
            return gap > 0 && week > enters && (week - enters) % gap == 0;
        }

        int count(int week) {
            return week == enters ? topic.entry().count() : returns(week) ? 1 : 0;
        }
    }

    /**
     * A topic in one of the weeks.
     *
     * @param topic its number in the order in which the course names them, from 0
     * @param count how many problems of it
     * @param first whether it enters
     */
    record Meeting(int topic, int count, boolean first) {}

    Meetings(CoursePlan course) {
        this.course = course;
        for (int week = 1; week <= course.weeks().size(); week++) {
            for (Topic topic : course.weeks().get(week - 1).enters()) {
                topics.add(new Met(topic, week));
            }
        }
        // Those that enter last have the fewest weeks to return in.
        for (int topic = topics.size() - 1; topic >= 0; topic--) {
            returnOnce(topics.get(topic));
        }
        while (better(topics)) {
            // Each time the gap that fills the weeks best, as long as there is one.
        }
    }

    /** With the gap by which it returns least often, since the others have to return, too. */
    private void returnOnce(Met met) {
        if (met.topic.gap().isPresent()) {
            return;
        }
        int best = 0;
        int fewest = Integer.MAX_VALUE;
        long least = Long.MAX_VALUE;
        for (int gap = course.gap(); met.enters + gap <= course.weeks().size(); gap++) {
            met.gap = gap;
            int returns = (course.weeks().size() - met.enters) / gap;
            if (fits(met) && (returns < fewest || returns == fewest && unfilled() < least)) {
                fewest = returns;
                least = unfilled();
                best = gap;
            }
        }
        met.gap = best;
    }

    /** Changes one gap to where the weeks are filled more alike, none too much; false if none does that. */
    private boolean better(List<Met> among) {
        Met best = null;
        int bestGap = 0;
        long least = unfilled();
        for (Met met : among) {
            if (met.topic.gap().isPresent()) {
                continue;
            }
            int before = met.gap;
            for (int gap = course.gap(); met.enters + gap <= course.weeks().size(); gap++) {
                met.gap = gap;
                if (fits(met) && unfilled() < least) {
                    least = unfilled();
                    best = met;
                    bestGap = gap;
                }
            }
            met.gap = before;
        }
        if (best != null) {
            best.gap = bestGap;
        }
        return best != null;
    }

    /** Whether no week in which it returns has more than it should. */
    private boolean fits(Met met) {
        for (int week = met.enters + 1; week <= course.weeks().size(); week++) {
            if (met.returns(week) && load(week) > wanted(week)) {
                return false;
            }
        }
        return true;
    }

    /** One very empty week counts more than several that have a little room. */
    private long unfilled() {
        long sum = 0;
        for (int week = 1; week <= course.weeks().size(); week++) {
            long free = Math.max(0, wanted(week) - load(week));
            sum += free * free;
        }
        return sum;
    }

    List<Topic> topics() {
        return topics.stream().map(met -> met.topic).toList();
    }

    /** The week in which a topic enters. */
    int enters(int topic) {
        return topics.get(topic).enters;
    }

    /** In the order in which the topics entered. */
    List<Meeting> in(int week) {
        int[] counts = new int[topics.size()];
        for (int topic = 0; topic < counts.length; topic++) {
            counts[topic] = topics.get(topic).count(week);
        }
        fill(counts, week);
        List<Meeting> meetings = new ArrayList<>();
        for (int topic = 0; topic < counts.length; topic++) {
            if (counts[topic] > 0) {
                meetings.add(new Meeting(topic, counts[topic], topics.get(topic).enters == week));
            }
        }
        return meetings;
    }

    private int wanted(int week) {
        Week written = course.weeks().get(week - 1);
        return written.problems();
    }

    private int load(int week) {
        return topics.stream().mapToInt(met -> met.count(week)).sum();
    }

    private void fill(int[] counts, int week) {
        int load = load(week);
        while (load < wanted(week)) {
            int least = -1;
            for (boolean first : new boolean[] {true, false}) {
                for (int topic = 0; topic < counts.length; topic++) {
                    boolean fits = topics.get(topic).isMet(week)
                            && (topics.get(topic).enters == week) == first
                            && counts[topic] < MOST_OF_ONE;
                    if (fits && (least < 0 || counts[topic] < counts[least])) {
                        least = topic;
                    }
                }
            }
            if (least < 0) {
                return;
            }
            counts[least]++;
            load++;
        }
    }
}
