using System.CommandLine;
using RoutingRules.Assignment;
using RoutingRules.Cli.Input;
using RoutingRules.Cli.Output;
using RoutingRules.Documents;
using RoutingRules.Engine.DocumentRuns;
using RoutingRules.Model;
using RoutingRules.Reading;
using RoutingRules.Reports.FindingReports;
using RoutingRules.Reports.Names;

namespace RoutingRules.Cli.Commands;

/// <summary><c>assign</c>: computes the patch of a show.</summary>
internal static class AssignCommand
{
    public static Command Create(CliConsole console, CancellationToken cancellation)
    {
        var file = new Argument<string>("FILE") { Description = "The show, or - for standard input. It is never changed itself." }.NamesNoOption();
        var @out = new Option<string?>("--out")
        {
            HelpName = "FILE",
            Description = "Write the completed show to a file and the report to standard output; without it the show goes to standard output.",
        };
        var search = new SearchOptions(
            "Do without a device, a link or a point, such as box-r or box-r/out/5; may be given several times.",
            "How much work to spend; the same number gives the same result on every machine."
        );
        var pin = new Option<bool>("--pin") { Description = "Write every place of the result as a point, so that a later check finds each slip." };
        var format = ToolOptions.Format("How the report is written to standard output, together with --out, usually text.");
        var report = ToolOptions.Report();
        var labels = new Option<bool>("--labels") { Description = "Label points that have no label after the feeds and lines that are placed there." };
        var names = new NamesOption(NameStyle.Both);
        var setup = new EngineOptions();
        var quiet = ToolOptions.Quiet();
        var command = new ToolCommand(
            "assign",
            "Complete the patch of a show: find an output for every feed and an input for every line, and write the streams and routes that carry them.",
            "routing-rules assign saturday.show.json --out saturday-patched.show.json\nWrites the completed show and lists where everything went.",
            "routing-rules assign saturday.show.json --without box-r --out rescue.show.json\nPlans the show again without a dead box, and "
                + "writes down that its connectors are unavailable."
        )
        {
            file,
            @out,
            search,
            pin,
            labels,
            format,
            report,
            names,
            setup,
            quiet,
        };
        command.SetAction(parsed =>
        {
            var path = parsed.GetRequiredValue(file);
            var outPath = parsed.GetValue(@out);
            if (outPath is null && parsed.GetValue(format) is not null)
            {
                throw new UsageException(
                    "--format is for the report, and without --out standard output carries the show; add --out FILE, or use --report FORMAT=FILE."
                );
            }

            var isQuiet = parsed.GetValue(quiet);
            var (engine, loaded) = setup.Create(parsed, [path], console, cancellation, isQuiet);
            var options = search.Of(engine, parsed) with
            {
                ExplainUnplaced = true,
                WriteSettings = true,
                WriteLabels = parsed.GetValue(labels),
                MarkWithout = true,
            };

            var onOutput = outPath is null ? null : parsed.GetValue(format) ?? ReportFormats.All[0];
            var reportOptions = ReportSetup.Options(engine, isQuiet, show => names.Of(parsed, engine.Resolve(show)));
            using var target = outPath is null ? null : OutputFile.Begin(outPath, [path, .. loaded.Files]);
            using var reports = new ReportOutput(onOutput, parsed.GetRequiredValue(report), [path, .. loaded.Files], target, reportOptions, console);
            return Run(new Job(engine, path, outPath, options, parsed.GetValue(pin), isQuiet), target, reports, console, cancellation);
        });
        return command;
    }

    private sealed record Job(RoutingEngine Engine, string Path, string? OutPath, AssignmentOptions Options, bool IsPinned, bool IsQuiet);

    private static int Run(Job job, OutputFile? target, ReportOutput reports, CliConsole console, CancellationToken cancellation)
    {
        var loaded = InputDocument.Load(job.Path, console, cancellation);
        var name = InputDocument.NameOf(job.Path);
        var read = loaded.Problem is { } problem ? new ReadResult<Show> { Findings = [problem] } : ShowReader.Read(loaded.Utf8.Span);
        if (!read.IsUsable)
        {
            return Refuse(DocumentCheck.Unreadable(job.Engine, name, read.Findings), target, reports, console);
        }

        var result = Assign(job, read.Value!, cancellation);
        cancellation.ThrowIfCancellationRequested();
        if (job.IsPinned)
        {
            var pinned = job.Engine.Pin(result.Show).Show;
            result = result with { Show = pinned, Check = job.Engine.Check(pinned, cancellation) };
        }

        var written = ShowWriter.ToUtf8(result.Show);
        var check = DocumentCheck.Of(job.OutPath ?? "standard output", result.Show, result.Check, written).WithOwnWaivers(job.Engine, console.Today(), written);
        reports.Add(result, job.Options.Order);
        reports.Add(check);
        (target?.Content ?? console.Output).Write(written);
        target?.Commit();
        reports.Finish();
        if (job.OutPath is null && !job.IsQuiet)
        {
            Tell(result, check, console);
        }

        var code = result.Unplaced.IsEmpty && result.Status != AssignmentStatus.PinsContradict ? ExitCode.Clean : ExitCode.Findings;
        return ExitCode.Worse(code, CheckCommand.CodeOf(check, job.Engine.Config.FailOn));
    }

    private static AssignmentResult Assign(Job job, Show show, CancellationToken cancellation)
    {
        try
        {
            return job.Engine.Assign(show, job.Options, cancellation);
        }
        catch (ArgumentException fault) when (!job.Options.Without.IsEmpty && fault.GetType() == typeof(ArgumentException))
        {
            throw new UsageException($"--without: {fault.Message}");
        }
        catch (UnsupportedAssignmentException fault)
        {
            throw new UsageException(fault.Message);
        }
    }

    private static int Refuse(DocumentCheck document, OutputFile? target, ReportOutput reports, CliConsole console)
    {
        reports.Add(document);
        reports.Finish();
        if (target is null)
        {
            new TextReport(console.Error).Add(document);
        }

        CliRunner.Say(console, $"'{document.Path}' cannot be read in full, so nothing was assigned; mend what the report names first.");
        return ExitCode.Usage;
    }

    /// <summary>Standard output carries the show, so that the short account goes to standard error.</summary>
    private static void Tell(AssignmentResult result, DocumentCheck check, CliConsole console)
    {
        foreach (var unplaced in result.Unplaced)
        {
            CliRunner.Say(console, $"not placed: {unplaced.Demand}: {unplaced.Reason}");
        }

        var counts = FormattableString.Invariant(
            $"{result.Placements.Count} placed, {result.Unplaced.Count} not placed, {check.Result.Findings.Count} findings"
        );
        CliRunner.Say(console, $"{counts}; use --out FILE or --report FORMAT=FILE for the whole account.");
    }
}
