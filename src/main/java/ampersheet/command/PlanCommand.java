package ampersheet.command;

import static ampersheet.source.Told.say;

import ampersheet.figure.Figure;
import ampersheet.issue.CourseFigure;
import ampersheet.issue.Forecast;
import ampersheet.issue.Handouts;
import ampersheet.issue.Output;
import ampersheet.problem.Inventory;
import ampersheet.sheet.Plan;
import ampersheet.sheet.ProblemSet;
import ampersheet.sheet.Timetable;
import ampersheet.template.TemplateLibrary;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

@Command(
        name = "plan",
        sortOptions = false,
        description = "command.plan.help",
        footer = {"", "command.plan.footer"})
final class PlanCommand implements Callable<Integer> {
    private static final int MOST_LEARNERS = 999;

    private final Streams streams;

    @Parameters(paramLabel = "PLAN", descriptionKey = "command.plan.help.plan")
    private Path plan;

    @Option(names = "--learners", paramLabel = "N", descriptionKey = "command.plan.help.learners")
    private Integer learners;

    @Option(names = "--no-paper", descriptionKey = "command.plan.help.no-paper")
    private boolean noPaper;

    @Option(names = "--figure", paramLabel = "FILE.svg", descriptionKey = "command.plan.help.figure")
    private Path figure;

    @Option(names = "--written", descriptionKey = "command.plan.help.written")
    private boolean written;

    @Option(names = "--json", descriptionKey = "command.plan.help.as-json")
    private boolean json;

    @Mixin
    private WeekOption week;

    @Mixin
    private OutputOptions output;

    @Mixin
    private PartsOption parts;

    @Mixin
    private TemplateOptions templates;

    @Mixin
    HelpOptions help;

    PlanCommand(Streams streams) {
        this.streams = streams;
    }

    @Override
    public Integer call() {
        if (learners != null && (learners < 1 || learners > MOST_LEARNERS)) {
            throw new WrongUsage(
                    "--learners",
                    say("command.plan.learners", "learners", learners.toString()),
                    say("command.number.expected", "least", "1", "most", Integer.toString(MOST_LEARNERS)),
                    say("command.usual.next", "usual", Integer.toString(Forecast.USUAL_LEARNERS)));
        }
        TemplateLibrary library = templates.library();
        Optional<Timetable> timetable = PlanFile.timetable(plan, library);
        if (written && (timetable.isEmpty() || week.week().isEmpty())) {
            throw new WrongUsage(
                    "--written",
                    say("command.plan.written"),
                    say("command.plan.written.expected"),
                    timetable.isEmpty() ? say("command.leave-out.next") : say("command.first-week.next"));
        }
        if (figure != null && timetable.isEmpty()) {
            throw new WrongUsage(
                    "--figure",
                    say("command.plan.figure"),
                    say("command.course.expected"),
                    say("command.plan.figure.next"));
        }
        if (timetable.isPresent() && week.week().isEmpty()) {
            course(timetable.get(), library);
        } else {
            one(new PlanFile(plan, week, library).issued(), library);
        }
        return CommandTree.FINE;
    }

    private void course(Timetable timetable, TemplateLibrary library) {
        int seats = learners(timetable.course().seats());
        List<Forecast> weeks = new ArrayList<>();
        for (int number = 1; number <= timetable.size(); number++) {
            weeks.add(forecast(timetable.week(number), seats, library));
        }
        if (figure != null) {
            draw(timetable);
        }
        streams.line(
                json
                        ? Json.of(json -> json.text(
                                        "title", timetable.course().common().title())
                                .objects(
                                        "skills",
                                        timetable.skills(),
                                        (at, skill) -> at.text("skill", skill.skill())
                                                .texts(
                                                        "weeks",
                                                        skill.weeks().stream()
                                                                .map(String::valueOf)
                                                                .toList())
                                                .number("templates", skill.templates()))
                                .objects("weeks", weeks, ForecastText::write))
                        : ForecastText.of(timetable, weeks, seats).stripTrailing());
    }

    private void one(Plan read, TemplateLibrary library) {
        if (written) {
            streams.line(read.written().stripTrailing());
            return;
        }
        Forecast forecast = forecast(read, learners(read.portion().seats()), library);
        streams.line(
                json
                        ? Json.of(json -> ForecastText.write(json, forecast))
                        : ForecastText.of(forecast).stripTrailing());
    }

    private int learners(int seats) {
        return learners == null ? Math.min(Forecast.USUAL_LEARNERS, seats) : learners;
    }

    private Forecast forecast(Plan read, int seats, TemplateLibrary library) {
        Optional<Inventory> bins = parts.inventory(plan, read);
        Optional<Handouts.Wish> wish = noPaper ? Optional.empty() : Optional.of(Forecast.usualPaper(read));
        return Forecast.of(ProblemSet.of(read, library, bins), seats, wish);
    }

    private void draw(Timetable timetable) {
        Figure drawn = CourseFigure.of(timetable);
        try (Output to = Output.file(figure, ".svg", output.terms(streams, false, plan, parts.file()))) {
            to.require(List.of(figure));
            to.write(figure, drawn.picture().file());
            to.finish();
        }
    }
}
