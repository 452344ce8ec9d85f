package ampersheet.sheet;

import ampersheet.sheet.CoursePlan.Topic;
import ampersheet.sheet.CoursePlan.Week;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * When each topic of a course is met. It returns at even gaps, since growing ones do no better and are harder to keep
 * in mind: as often as the course says, and less often, evenly again, where a week would have more problems than it
 * should. What is free in a week goes to what is new first.
 */
final class Meetings {
    /** More of one kind on a sheet is practice by the yard, and mixes with nothing. */
    private static final int MOST_OF_ONE = 3;

    private final CoursePlan course;
    private final List<Met> topics = new ArrayList<>();

    /** @param gap 0 if it does not return */
    private static final class Met {
        private final Topic topic;
        private final int enters;
        private int gap;

        Met(Topic topic, int enters, int gap) {
            this.topic = topic;
            this.enters = enters;
            this.gap = gap;
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
                topics.add(new Met(topic, week, topic.gap().orElse(course.gap())));
            }
        }
        for (int week = 1; week <= course.weeks().size(); week++) {
            while (load(week) > wanted(week) && thin(week)) {
                // Each time one topic returns less often.
            }
        }
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

    /** What returns most often, and has no gap of its own, returns less often, until it would not return here. */
    private boolean thin(int week) {
        Met most = topics.stream()
                .filter(met -> met.returns(week) && met.topic.gap().isEmpty())
                .max(Comparator.comparingInt(this::returns))
                .orElse(null);
        if (most == null) {
            return false;
        }
        most.gap++;
        if (most.enters + most.gap > course.weeks().size()) {
            most.gap = 0;
        }
        return true;
    }

    private int returns(Met met) {
        int returns = 0;
        for (int week = met.enters + 1; week <= course.weeks().size(); week++) {
            returns += met.returns(week) ? 1 : 0;
        }
        // Of those that return as often, the first that entered comes first: it was met most.
        return returns * topics.size() + topics.size() - topics.indexOf(met);
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
