using System.CommandLine;
using RoutingRules.Cli.Input;
using RoutingRules.Cli.Output;
using RoutingRules.Model;
using RoutingRules.Reports.Lists;

namespace RoutingRules.Cli.Commands;

/// <summary><c>export</c>: writes feeds or lines as a list to edit elsewhere, or the routes of a device as a channel map.</summary>
internal static class ExportCommand
{
    public static Command Create(CliConsole console, CancellationToken cancellation)
    {
        var file = new Argument<string>("FILE") { Description = "The show, or - for standard input." }.NamesNoOption();
        var list = ToolOptions.Word("--list", ListChoices.Lists, "What is written: the feeds or the lines, one row each, with a column for every member.");
        var separator = ToolOptions.Word("--separator", ListChoices.Separators, "What stands between cells; usually comma, or what the configuration says.");
        var map = ToolOptions.Word(
            "--map",
            ListChoices.Maps,
            "Instead of a list, what is routed inside a device: is-08, a request to activate a map after AMWA IS-08; 1722.1, the mappings of its "
                + "stream ports after IEEE 1722.1."
        );
        var device = new Option<string?>("--device") { HelpName = "ID", Description = "The device that --map is about." };
        var mark = new Option<bool>("--utf8-mark")
        {
            Description = "Begin with a byte order mark, without which some spreadsheets do not take the list for UTF-8.",
        };
        var @out = new Option<string?>("--out") { HelpName = "FILE", Description = "Write to a file; without it the list goes to standard output." };
        var setup = new EngineOptions();
        var command = new ToolCommand(
            "export",
            "Write the feeds or lines of a show as CSV (RFC 4180), to edit in a spreadsheet and read back with import. It is what the document "
                + "asks for; the lists of sheet say how it is patched.\nA text that would begin like a formula begins with an apostrophe, which import "
                + "takes off.",
            "routing-rules export saturday.show.json --list lines --out lines.csv\nThe lines, for the spreadsheet of the crew.",
            "routing-rules export saturday.show.json --map is-08 --device desk --out desk-map.json\nWhat is routed inside the console, for "
                + "equipment that takes such maps."
        )
        {
            file,
            list,
            separator,
            mark,
            map,
            device,
            @out,
            setup,
        };
        command.SetAction(parsed =>
        {
            var path = parsed.GetRequiredValue(file);
            var job = new MapChoice(parsed.GetValue(list), parsed.GetValue(map), parsed.GetValue(device));
            job.Refuse();
            if (job.IsMap && (parsed.GetValue(separator) is not null || parsed.GetValue(mark)))
            {
                throw new UsageException("--separator and --utf8-mark are for lists; leave them away with --map.");
            }

            var (engine, loaded) = setup.Create(parsed, [path], console, cancellation);
            using var target = parsed.GetValue(@out) is { } outPath ? OutputFile.Begin(outPath, [path, .. loaded.Files]) : null;
            if (ShowInput.Read(path, console, engine, cancellation) is not { } show)
            {
                return ExitCode.Usage;
            }

            var content = job.IsMap
                ? job.Write(engine, show)
                :
                [
                    .. parsed.GetValue(mark) ? "\uFEFF"u8 : ""u8,
                    .. Texts.Utf8.GetBytes(Text(show, job.Kind, ListChoices.With(loaded.Config.Lists, parsed.GetValue(separator)))),
                ];
            (target?.Content ?? console.Output).Write(content);
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
            throw new UsageException(UsageException.Reason(fault));
        }
    }
}
