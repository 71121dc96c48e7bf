using System.CommandLine;
using RoutingRules.Cli.Input;
using RoutingRules.Cli.Output;
using RoutingRules.Fixing;
using RoutingRules.Reports.FindingReports;

namespace RoutingRules.Cli.Commands;

/// <summary><c>pin</c>: writes what stands as points.</summary>
internal static class PinCommand
{
    public static Command Create(CliConsole console, CancellationToken cancellation)
    {
        var file = new Argument<string>("FILE") { Description = "The show, or - for standard input. It is changed only with --in-place." }.NamesNoOption();
        var dryRun = new Option<bool>("--dry-run") { Description = "Change nothing; say what would be written." };
        var @out = new Option<string?>("--out")
        {
            HelpName = "FILE",
            Description = "Write the pinned show to a file; without it the show goes to standard output.",
        };
        var inPlace = new Option<bool>("--in-place") { Description = "Write the pinned show over the file itself." };
        var setup = new EngineOptions();
        var command = new ToolCommand(
            "pin",
            "Write what stands as points: where a feed or a line may be anywhere in a zone or at a device, the show names the place it has now. "
                + "What a show names can be told when it slips; what it leaves open cannot as long as it still fits.",
            "routing-rules pin saturday.show.json --out pinned.show.json\nNames every place, and lists them.",
            "routing-rules pin saturday.show.json --dry-run\nSays what would be written, and writes nothing."
        )
        {
            file,
            dryRun,
            @out,
            inPlace,
            setup,
        };
        command.SetAction(parsed =>
        {
            var job = new Job(parsed.GetRequiredValue(file), parsed.GetValue(@out), parsed.GetValue(inPlace), parsed.GetValue(dryRun));
            Refuse(job);
            var (engine, loaded) = setup.Create(parsed, [job.Path], console, cancellation);
            return Run(job, engine, [.. loaded.Files], console, cancellation);
        });
        return command;
    }

    private sealed record Job(string Path, string? OutPath, bool IsInPlace, bool IsDry)
    {
        public bool ShowsText => !IsDry && OutPath is null && !IsInPlace;
    }

    private static void Refuse(Job job)
    {
        var problem =
            (job.OutPath is not null ? 1 : 0) + (job.IsInPlace ? 1 : 0) + (job.IsDry ? 1 : 0) > 1
                ? "--out, --in-place and --dry-run exclude one another; take one of them."
            : job.IsInPlace && job.Path == InputDocument.StandardInput ? "standard input cannot be written in place; use --out FILE."
            : null;
        if (problem is not null)
        {
            throw new UsageException(problem);
        }
    }

    private static int Run(Job job, RoutingEngine engine, IReadOnlyList<string> otherInputs, CliConsole console, CancellationToken cancellation)
    {
        var outPath = job.IsInPlace ? job.Path : job.OutPath;
        if (ShowToEdit.Read(job.Path, "pinned", engine, console, cancellation) is not { } input)
        {
            return ExitCode.Usage;
        }

        using var target = outPath is null ? null : OutputFile.Begin(outPath, job.IsInPlace ? otherInputs : [job.Path, .. otherInputs]);
        var result = engine.Pin(input.Show);
        var edited = result.Edits.IsEmpty ? input.Utf8 : ShowText.Edit(input.Utf8.Span, result.Edits, result.Show).Utf8;
        if (job.ShowsText)
        {
            console.Output.Write(edited.Span);
            CliRunner.Say(console, $"{PinReport.Heading(result, false)}; use --dry-run to see each of them.");
        }
        else
        {
            target?.Content.Write(edited.Span);
            console.Output.Write(Texts.Utf8.GetBytes(PinReport.Text(input.Name, result, job.IsDry)));
            target?.Commit();
        }

        return result.Open.IsEmpty ? ExitCode.Clean : ExitCode.Findings;
    }
}
