using System.CommandLine;
using RoutingRules.Cli.Input;
using RoutingRules.Cli.Output;
using RoutingRules.Lists;
using RoutingRules.Model;

namespace RoutingRules.Cli.Commands;

/// <summary><c>export</c>: writes feeds or lines as a list to edit elsewhere.</summary>
internal static class ExportCommand
{
    public static Command Create(CliConsole console, CancellationToken cancellation)
    {
        var file = new Argument<string>("FILE") { Description = "The show, or - for standard input." }.NamesNoOption();
        var list = ToolOptions.Word("--list", ListChoices.Lists, "What is written: the feeds or the lines, one row each, with a column for every member.");
        var separator = ToolOptions.Word("--separator", ListChoices.Separators, "What stands between cells; usually comma, or what the configuration says.");
        var mark = new Option<bool>("--utf8-mark") { Description = "Begin with a byte order mark, without which some spreadsheets do not take the list for UTF-8." };
        var @out = new Option<string?>("--out") { HelpName = "FILE", Description = "Write to a file; without it the list goes to standard output." };
        var config = ToolOptions.Config();
        var noConfig = ToolOptions.NoConfig();
        var command = new ToolCommand(
            "export",
            "Write the feeds or lines of a show as CSV (RFC 4180), to edit in a spreadsheet and read back with import. It is what the document asks for; the lists of sheet say how it is patched.\nA text that would begin like a formula begins with an apostrophe, which import takes off.",
            "routing-rules export saturday.show.json --list lines --out lines.csv\nThe lines, for the spreadsheet of the crew.")
        {
            file, list, separator, mark, @out, config, noConfig,
        };
        command.SetAction(parsed =>
        {
            var path = parsed.GetRequiredValue(file);
            var kind = parsed.GetValue(list) is { } word ? ListChoices.Lists[word] : throw new UsageException("--list is missing; give --list feeds or --list lines.");
            var loaded = ConfigSetup.Load(new ConfigChoice(parsed.GetValue(config), parsed.GetValue(noConfig), false), [path], console, cancellation);
            using var target = parsed.GetValue(@out) is { } outPath ? OutputFile.Begin(outPath, [path, .. loaded.Files]) : null;
            if (ShowInput.Read(path, console, EngineSetup.Create([], loaded, console), cancellation) is not { } show)
            {
                return ExitCode.Usage;
            }

            var text = Text(show, kind, ListChoices.With(loaded.Config.Lists, parsed.GetValue(separator)));
            var output = target?.Content ?? console.Output;
            output.Write(parsed.GetValue(mark) ? "\uFEFF"u8 : ""u8);
            output.Write(Texts.Utf8.GetBytes(text));
            target?.Commit();
            return ExitCode.Clean;
        });
        return command;
    }

    private static string Text(Show show, IntentList list, Configuration.ListsConfig config)
    {
        try
        {
            return ListExport.Write(show, list, config);
        }
        catch (ArgumentException fault)
        {
            throw new UsageException(fault.Message.Split(" (Parameter", 2)[0]);
        }
    }
}
