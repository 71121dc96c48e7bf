using System.CommandLine;
using RoutingRules.Answers;
using RoutingRules.Cli.Input;
using RoutingRules.Cli.Output;
using RoutingRules.Model;
using RoutingRules.Reporting;

namespace RoutingRules.Cli.Commands;

/// <summary><c>impact</c>: tells what each loss silences and what can be done about it.</summary>
internal static class ImpactCommand
{
    private static readonly string[] Formats = ["text", "json", "markdown", "html"];

    private static readonly (string Word, LossKind Kind)[] Kinds =
    [
        ("device", LossKind.Device), ("link", LossKind.Link), ("cable", LossKind.Cable), ("way", LossKind.Way), ("power", LossKind.Power), ("point", LossKind.Point),
    ];

    public static Command Create(CliConsole console, CancellationToken cancellation)
    {
        var file = new Argument<string>("FILE") { Description = "The show, patched, or - for standard input." }.NamesNoOption();
        var only = new Option<string[]>("--only")
        {
            HelpName = "KIND",
            Description = "Look only at losses of a kind: device, link, cable, way (a loom), power or point. May be given several times; without it all but points.",
            DefaultValueFactory = _ => [],
        };
        only.Validators.Add(result =>
        {
            foreach (var token in result.Tokens.Where(token => !Kinds.Any(kind => kind.Word == token.Value)))
            {
                result.AddError($"--only takes {string.Join(", ", Kinds.Select(kind => kind.Word))}, not '{token.Value}'.");
            }
        });
        var pairs = new Option<bool>("--pairs") { Description = "Look also for two losses that together silence what neither does alone." };
        var moves = ToolOptions.Number("--moves", 0, 65_535, "How many feeds and lines a plan may plug elsewhere, usually 8.");
        var sets = ToolOptions.Number("--sets", 0, 3, "The largest sets of failures that are looked for behind each protected feed, usually 2.");
        var noRecovery = new Option<bool>("--no-recovery") { Description = "Make no plans; only tell what is lost." };
        var format = new Option<string>("--format")
        {
            HelpName = "FORMAT",
            Description = "How the answer is written, usually text.\ntext: for people at a terminal,\njson: for programs, after impact.schema.json,\nmarkdown: for people in a text that shows tables,\nhtml: a page to print, with a card for each device.",
            DefaultValueFactory = _ => Formats[0],
        };
        format.Validators.Add(result =>
        {
            if (result.Tokens.Count > 0 && !Formats.Contains(result.Tokens[0].Value))
            {
                result.AddError($"'{result.Tokens[0].Value}' is no format of an answer; there are {NameList.Of(Formats)}.");
            }
        });
        var @out = new Option<string?>("--out") { HelpName = "FILE", Description = "Write to a file; without it the answer goes to standard output." };
        var config = ToolOptions.Config();
        var noConfig = ToolOptions.NoConfig();
        var profiles = ToolOptions.Profiles();
        var command = new ToolCommand(
            "impact",
            "Tell what the loss of each device, link, cable, loom or supply silences, and how to bring it back. Nothing is written to the show.",
            "routing-rules impact saturday.show.json\nWhat hurts most, and a card for each device with what to pull, plug and load.",
            "routing-rules impact saturday.show.json --only device --format html --out fallback.html\nCards to print.")
        {
            file, only, pairs, moves, sets, noRecovery, format, @out, config, noConfig, profiles,
        };
        command.SetAction(parsed =>
        {
            var path = parsed.GetRequiredValue(file);
            var loaded = ConfigSetup.Load(new ConfigChoice(parsed.GetValue(config), parsed.GetValue(noConfig), false), [path], console, cancellation);
            var engine = EngineSetup.Create(parsed.GetRequiredValue(profiles), loaded, console);
            using var target = parsed.GetValue(@out) is { } outPath ? OutputFile.Begin(outPath, [path]) : null;
            if (ShowInput.Read(path, console, engine, cancellation) is not { } show)
            {
                return ExitCode.Usage;
            }

            var usual = new ImpactOptions();
            var options = usual with
            {
                Kinds = Kinds.Where(kind => parsed.GetRequiredValue(only).Contains(kind.Word, StringComparer.Ordinal)).Select(kind => kind.Kind).ToValueList(),
                Pairs = parsed.GetValue(pairs),
                Moves = (int)(parsed.GetValue(moves) ?? usual.Moves),
                SetSize = (int)(parsed.GetValue(sets) ?? usual.SetSize),
                Recovery = !parsed.GetValue(noRecovery),
                Assignment = engine.Config.Assignment.ToOptions(),
            };
            var answer = engine.Impact(show, options, cancellation);
            var content = target?.Content ?? console.Output;
            switch (parsed.GetValue(format))
            {
                case "json":
                    ImpactJson.Write(answer, content);
                    break;
                case "markdown":
                    content.Write(Texts.Utf8.GetBytes(ImpactReport.Markdown(answer, show)));
                    break;
                case "html":
                    content.Write(Texts.Utf8.GetBytes(ImpactReport.Html(answer, show)));
                    break;
                default:
                    content.Write(Texts.Utf8.GetBytes(ImpactReport.Text(answer, show)));
                    break;
            }

            target?.Commit();
            return answer.NotArriving.IsEmpty ? ExitCode.Clean : ExitCode.Findings;
        });
        return command;
    }
}
