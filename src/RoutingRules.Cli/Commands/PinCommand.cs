using System.CommandLine;
using RoutingRules.Cli.Input;
using RoutingRules.Reports.FindingReports;

namespace RoutingRules.Cli.Commands;

/// <summary><c>pin</c>: writes what stands as points.</summary>
internal static class PinCommand
{
    public static Command Create(CliConsole console, CancellationToken cancellation)
    {
        var file = new Argument<string>("FILE") { Description = "The show, or - for standard input. It is changed only with --in-place." }.NamesNoOption();
        var (only, edit, setup) = (new SubjectOptions(), new EditOptions("pinned"), new EngineOptions());
        var command = new ToolCommand(
            "pin",
            "Write what stands as points: where a feed or a line may be anywhere in a zone or at a device, the show names the place it has now. "
                + "What a show names can be told when it slips; what it leaves open cannot as long as it still fits.",
            "routing-rules pin saturday.show.json --out pinned.show.json\nNames every place, and lists them.",
            "routing-rules pin saturday.show.json --only \"Lead voice\" --dry-run\nSays which place one line would be given, and writes nothing."
        )
        {
            file,
            only,
            edit,
            setup,
        };
        command.SetAction(parsed =>
        {
            var job = edit.Read(parsed, parsed.GetRequiredValue(file));
            var (engine, loaded) = setup.Create(parsed, [job.Path], console, cancellation);
            if (ShowToEdit.Read(job.Path, job.Done, engine, console, cancellation) is not { } input)
            {
                return ExitCode.Usage;
            }

            var result = engine.Pin(input.Show, only.Of(parsed, () => engine.Resolve(input.Show)));
            job.Run(
                input,
                [.. loaded.Files],
                () => new(result.Show, result.Edits, PinReport.Heading(result, false), PinReport.Text(input.Name, result, job.IsDry)),
                console
            );
            return result.Open.IsEmpty ? ExitCode.Clean : ExitCode.Findings;
        });
        return command;
    }
}
