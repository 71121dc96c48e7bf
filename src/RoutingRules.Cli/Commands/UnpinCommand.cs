using System.CommandLine;
using RoutingRules.Cli.Input;
using RoutingRules.Reports.FindingReports;

namespace RoutingRules.Cli.Commands;

/// <summary><c>unpin</c>: lets feeds and lines go of the points they name.</summary>
internal static class UnpinCommand
{
    public static Command Create(CliConsole console, CancellationToken cancellation)
    {
        var file = new Argument<string>("FILE") { Description = "The show, or - for standard input. It is changed only with --in-place." }.NamesNoOption();
        var (only, edit, setup) = (new SubjectOptions(), new EditOptions("freed"), new EngineOptions());
        var command = new ToolCommand(
            "unpin",
            "Let feeds and lines go of the points they name: each may stand at any connector of the same device afterwards, and assign keeps it where it "
                + "is as long as nothing speaks against that. The legs of a split keep their points.",
            "routing-rules unpin saturday.show.json --out free.show.json\nTakes back what pin did, device by device.",
            "routing-rules unpin saturday.show.json --only \"Monitor drums\" --in-place\nLets one feed take another output of its box."
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

            var result = engine.Unpin(input.Show, only.Of(parsed, () => engine.Resolve(input.Show)));
            job.Run(
                input,
                [.. loaded.Files],
                () => new(result.Show, result.Edits, UnpinReport.Heading(result, false), UnpinReport.Text(input.Name, result, job.IsDry)),
                console
            );
            return ExitCode.Clean;
        });
        return command;
    }
}
