using System.CommandLine;
using RoutingRules.Cli.Output;

namespace RoutingRules.Cli.Commands;

/// <summary><c>new</c>: writes a show to start from.</summary>
internal static class NewCommand
{
    private const int LongestTitle = 200;

    public static Command Create(CliConsole console)
    {
        var title = new Option<string>("--title") { HelpName = "TEXT", Description = "What the show is called.", DefaultValueFactory = _ => "New show" };
        var @out = new Option<string?>("--out")
        {
            HelpName = "FILE",
            Description = "Write to a file that is not there yet; without it the show goes to standard output.",
        };
        var command = new ToolCommand(
            "new",
            "Write a small show to start from: a console, a stage box, two mains, two monitors and three lines, patched and clean.",
            "routing-rules new --title \"Harbour fete\" --out harbour.show.json\nThen change devices, feeds and lines to your own, and check or assign it.")
        {
            title, @out,
        };
        command.SetAction(parsed =>
        {
            var text = parsed.GetRequiredValue(title);
            if (text.Length is 0 or > LongestTitle)
            {
                throw new UsageException(FormattableString.Invariant($"--title takes 1 to {LongestTitle} characters, not {text.Length}."));
            }

            var show = StarterShow.Create(text);
            if (parsed.GetValue(@out) is not { } path)
            {
                console.Output.Write(show);
                return ExitCode.Clean;
            }

            using var target = OutputFile.Begin(path, [], mayReplace: false);
            target.Content.Write(show);
            target.Commit();
            return ExitCode.Clean;
        });
        return command;
    }
}
