using System.CommandLine;
using RoutingRules.Cli.Input;
using RoutingRules.Cli.Output;
using RoutingRules.Documents;
using RoutingRules.Model;
using RoutingRules.Planning;
using RoutingRules.Planning.RunningOrders;
using RoutingRules.Reports.Answers;
using RoutingRules.Reports.Names;
using RoutingRules.Rules;

namespace RoutingRules.Cli.Commands;

/// <summary><c>changeover</c>: plans the steps from show to show.</summary>
internal static class ChangeoverCommand
{
    public static Command Create(CliConsole console, CancellationToken cancellation)
    {
        var first = new Argument<string>("FILE") { Description = "A running order; or, with a second file, the show that is played." }.NamesNoOption();
        var second = new Argument<string?>("NEXT") { Description = "The show that comes.", Arity = ArgumentArity.ZeroOrOne }.NamesNoOption();
        var format = PageOptions.Format(
            ("text", "for people at a terminal"),
            ("json", "for programs, after changeover.schema.json"),
            ("markdown", "for people in a text that shows tables"),
            ("html", "cards to print")
        );
        var @out = PageOptions.Out();
        var shows = new Option<string?>("--shows")
        {
            HelpName = "FOLDER",
            Description = "With a running order: write the show of each act there as well, to check, print or change.",
        };
        var names = new NamesOption(NameStyle.Panel);
        var setup = new EngineOptions();
        var command = new ToolCommand(
            "changeover",
            "Plan changeovers: steps in a safe order, a card for each place, what can be prepared, the last point to go back; for two shows, or "
                + "for all acts of a running order.",
            "routing-rules changeover friday.run.json --format html --out friday-cards.html --shows acts\nCards for every changeover of the day, "
                + "and the show of each act.",
            "routing-rules changeover band.show.json next-band.show.json\nThe steps from one show to the next."
        )
        {
            first,
            second,
            format,
            @out,
            shows,
            names,
            setup,
        };
        command.SetAction(parsed =>
        {
            string[] paths = parsed.GetValue(second) is { } next ? [parsed.GetRequiredValue(first), next] : [parsed.GetRequiredValue(first)];
            if (paths.Length == 2 && paths[0] == InputDocument.StandardInput && paths[1] == InputDocument.StandardInput)
            {
                throw new UsageException("both shows cannot come from standard input; name a file for one of them.");
            }

            if (paths.Length == 2 && parsed.GetValue(shows) is not null)
            {
                throw new UsageException("--shows is for a running order; two shows are there already.");
            }

            var (engine, loaded) = setup.Create(parsed, paths, console, cancellation);
            using var target = parsed.GetValue(@out) is { } outPath ? OutputFile.Begin(outPath, [.. paths, .. loaded.Files]) : null;
            var how = new Answer(parsed.GetValue(format)!, shows => names.Of(parsed, shows.Select(show => engine.Resolve(show))), target, console);
            return paths.Length == 2 ? Pair(engine, paths, how, cancellation) : Run(engine, paths[0], parsed.GetValue(shows), how, cancellation);
        });
        return command;
    }

    private sealed record Answer(string Format, Func<IEnumerable<Show>, PanelNames> Names, OutputFile? Target, CliConsole Console);

    private static int Pair(RoutingEngine engine, string[] paths, Answer how, CancellationToken cancellation)
    {
        var before = ShowInput.Read(paths[0], how.Console, engine, cancellation);
        var after = ShowInput.Read(paths[1], how.Console, engine, cancellation);
        if (before is null || after is null)
        {
            return ExitCode.Usage;
        }

        var comparison = engine.Compare(before, after, cancellation);
        var plan = engine.PlanChangeover(before, after, null, cancellation);
        Write(
            how,
            output => ChangeoverJson.Write(plan, comparison, before, after, output),
            format => ChangeoverReport.Write(plan, comparison, before, after, format, how.Names([before, after]))
        );
        return CompareCommand.CodeOf(comparison, engine.Config.FailOn);
    }

    private static int Run(RoutingEngine engine, string path, string? folder, Answer how, CancellationToken cancellation)
    {
        if (folder is not null && !Directory.Exists(folder))
        {
            throw new UsageException($"there is no folder '{folder}' for the shows; make it first.");
        }

        if (ShowInput.ReadRun(path, how.Console, engine, cancellation) is not { } run)
        {
            return ExitCode.Usage;
        }

        var plan = engine.PlanRun(run, AssignmentSetup.Configured(engine) with { ExplainUnplaced = true }, cancellation);
        cancellation.ThrowIfCancellationRequested();
        if (folder is not null)
        {
            WriteShows(plan, folder, path, how.Console);
        }

        Write(how, output => ChangeoverJson.Write(plan, output), format => ChangeoverReport.Write(plan, format, how.Names(plan.Acts.Select(act => act.Show))));
        return CodeOf(plan, engine.Config.FailOn);
    }

    /// <summary>All files are whole before the first is put in its place.</summary>
    private static void WriteShows(RunningOrderPlan plan, string folder, string input, CliConsole console)
    {
        var files = new List<OutputFile>();
        try
        {
            foreach (var act in plan.Acts.DistinctBy(act => act.Act.Id))
            {
                var file = OutputFile.Begin(Path.Join(folder, $"{act.Act.Id}.show.json"), [input]);
                files.Add(file);
                file.Content.Write(ShowWriter.ToUtf8(act.Show));
            }

            foreach (var file in files)
            {
                file.Commit();
                CliRunner.Say(console, $"wrote {Path.Join(folder, Path.GetFileName(file.Target))}");
            }
        }
        finally
        {
            files.ForEach(file => file.Dispose());
        }
    }

    private static void Write(Answer how, Action<Stream> json, Func<PageFormat, string> pages) =>
        PageOptions.Write(
            output =>
            {
                if (how.Format == "json")
                {
                    json(output);
                }
                else
                {
                    output.Write(Texts.Utf8.GetBytes(pages(PageOptions.Pages(how.Format))));
                }
            },
            how.Target,
            how.Console
        );

    private static int CodeOf(RunningOrderPlan plan, Severity failOn)
    {
        var findings = plan
            .RunFindings.Concat(plan.Acts.SelectMany(act => act.Check.Findings))
            .Concat(plan.Changeovers.SelectMany(changeover => changeover.Comparison.Hazards));
        return findings.Any(finding => finding.Severity >= failOn) || plan.Acts.Any(act => !act.Unplaced.IsEmpty) ? ExitCode.Findings
            : plan.Acts.All(act => act.Check.Undecided.IsEmpty) ? ExitCode.Clean
            : ExitCode.Undecided;
    }
}
