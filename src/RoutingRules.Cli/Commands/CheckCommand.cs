using System.CommandLine;
using RoutingRules.Cli.Input;
using RoutingRules.Cli.Output;
using RoutingRules.Engine.DocumentRuns;
using RoutingRules.Reports.FindingReports;
using RoutingRules.Reports.Names;
using RoutingRules.Rules;

namespace RoutingRules.Cli.Commands;

/// <summary><c>check</c>: runs the rules on shows.</summary>
internal static class CheckCommand
{
    public static Command Create(CliConsole console, CancellationToken cancellation)
    {
        var paths = new Argument<string[]>("PATH")
        {
            Description =
                "Show files, folders (every *.show.json in them and in their subfolders), zip archives (every *.show.json in them),\nfiles of JSON "
                + "lines (*.jsonl), or - for one or more shows on standard input.",
            Arity = ArgumentArity.OneOrMore,
        }.NamesNoOption();
        var format = ToolOptions.Format("How the result is written to standard output, usually text.");
        var report = ToolOptions.Report();
        var waivers = ToolOptions.Waivers();
        var asOf = ToolOptions.AsOf();
        var baseline = new Option<string?>("--baseline") { HelpName = "FILE", Description = "Do not fail for findings that a baseline knows already." };
        var update = new Option<bool>("--update-baseline") { Description = "Take out of the baseline what is gone. It never grows, unless with --force." };
        var force = new Option<bool>("--force") { Description = "With --update-baseline: also accept everything found now, or begin a baseline." };
        var fixes = new Option<bool>("--fixes")
        {
            Description = "Offer fixes with the findings in json and sarif reports; each is tried first, which takes time.",
        };
        var timings = new Option<bool>("--timings") { Description = "Say on standard error how much work and time each rule took." };
        var names = new NamesOption(NameStyle.Both);
        var setup = new EngineOptions();
        var quiet = ToolOptions.Quiet();
        var command = new ToolCommand(
            "check",
            "Check shows: is every mix patched to where it must go, is nothing missing, doubled, swapped or silent? Nothing is changed.",
            "routing-rules check saturday.show.json\nLists what is wrong, where in the file, and what to do about it.",
            "routing-rules check shows/ --report json=result.json --report html=result.html\nChecks every show in a folder and also keeps the "
                + "result for another program and for people.",
            "routing-rules check 2027.zip\nChecks every show in an archive without unpacking it.",
            "routing-rules check shows/ --waivers waivers.json --baseline baseline.json\nFails only for what nobody has decided to live with."
        )
        {
            paths,
            format,
            report,
            waivers,
            asOf,
            baseline,
            update,
            force,
            fixes,
            timings,
            names,
            setup,
            quiet,
        };
        command.SetAction(parsed =>
        {
            var named = parsed.GetRequiredValue(paths);
            var isQuiet = parsed.GetValue(quiet);
            var choice = new AcceptanceChoice(
                parsed.GetValue(waivers),
                parsed.GetValue(asOf) ?? console.Today(),
                parsed.GetValue(baseline),
                parsed.GetValue(update),
                parsed.GetValue(force)
            );
            var (engine, loaded) = setup.Create(parsed, named, console, cancellation, isQuiet);
            var files = ShowFiles.Expand(named, cancellation);
            using var acceptance = new Acceptance(choice, files, engine, console, cancellation);
            using var reports = new ReportOutput(
                parsed.GetValue(format) ?? ReportFormats.All[0],
                parsed.GetRequiredValue(report),
                [.. files, .. choice.Files, .. loaded.Files],
                acceptance.Target,
                ReportSetup.Options(engine, isQuiet, show => names.Of(parsed, engine.Resolve(show))),
                console
            );
            var clock = parsed.GetValue(timings) ? new Timings() : null;
            var code = Run(files, new Means(engine, clock, parsed.GetValue(fixes), isQuiet), acceptance, reports, console, cancellation);
            reports.Finish();
            acceptance.Finish();
            clock?.Write(console.Error);
            return code;
        });
        return command;
    }

    private sealed record Means(RoutingEngine Engine, Timings? Clock, bool OffersFixes, bool IsQuiet);

    private static int Run(
        IReadOnlyList<string> files,
        Means means,
        Acceptance acceptance,
        ReportOutput reports,
        CliConsole console,
        CancellationToken cancellation
    )
    {
        var code = ExitCode.Clean;
        foreach (var file in files)
        {
            foreach (var document in ShowDocuments.Of(file, console, means.IsQuiet, cancellation))
            {
                cancellation.ThrowIfCancellationRequested();
                Add(acceptance.Apply(file, DocumentCheck.Run(means.Engine, document, means.OffersFixes, means.Clock, acceptance.AsOf, cancellation)));
            }
        }

        if (acceptance.Report() is { } waivers)
        {
            Add(waivers);
        }

        return code;

        void Add(DocumentCheck document)
        {
            reports.Add(document);
            code = ExitCode.Worse(code, CodeOf(document, means.Engine.Config.FailOn));
        }
    }

    /// <summary>The exit code that one document asks for.</summary>
    public static int CodeOf(DocumentCheck document, Severity failOn) =>
        document.Status == DocumentStatus.Unreadable ? ExitCode.Usage
        : document.Result.Worst >= failOn ? ExitCode.Findings
        : document.Result.Undecided.IsEmpty ? ExitCode.Clean
        : ExitCode.Undecided;
}
