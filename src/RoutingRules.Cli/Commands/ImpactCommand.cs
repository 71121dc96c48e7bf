using System.CommandLine;
using RoutingRules.Cli.Input;
using RoutingRules.Cli.Output;
using RoutingRules.Model;
using RoutingRules.Planning;
using RoutingRules.Planning.Losses;
using RoutingRules.Reports.Answers;
using RoutingRules.Reports.Names;

namespace RoutingRules.Cli.Commands;

/// <summary><c>impact</c>: tells what each loss silences and what can be done about it.</summary>
internal static class ImpactCommand
{
    private static readonly (string Word, LossKind Kind)[] Kinds =
    [
        ("device", LossKind.Device),
        ("link", LossKind.Link),
        ("cable", LossKind.Cable),
        ("way", LossKind.Way),
        ("power", LossKind.Power),
        ("point", LossKind.Point),
    ];

    public static Command Create(CliConsole console, CancellationToken cancellation)
    {
        var file = new Argument<string>("FILE") { Description = "The show, patched, or - for standard input." }.NamesNoOption();
        var only = new Option<string[]>("--only")
        {
            HelpName = "KIND",
            Description =
                "Look only at losses of a kind: device, link, cable, way (a loom), power or point. May be given several times; without it all but points.",
            DefaultValueFactory = _ => [],
        };
        only.Validators.Add(result =>
        {
            foreach (var token in result.Tokens.Where(token => !Kinds.Any(kind => kind.Word == token.Value)))
            {
                result.AddError($"--only takes {string.Join(", ", Kinds.Select(kind => kind.Word))}, not '{token.Value}'.");
            }
        });
        var pairs = new Option<bool>("--pairs") { Description = "Look also for two losses that together silence what neither does alone, and plan for them." };
        var moves = ToolOptions.Number("--moves", 0, 65_535, "How many feeds and lines a plan may plug elsewhere, usually 8.");
        var sets = ToolOptions.Number("--sets", 0, 3, "The largest sets of failures that are looked for behind each protected feed, usually 2.");
        var noRecovery = new Option<bool>("--no-recovery") { Description = "Make no plans; only tell what is lost." };
        var format = PageOptions.Format(
            ("text", "for people at a terminal"),
            ("json", "for programs, after impact.schema.json"),
            ("markdown", "for people in a text that shows tables"),
            ("html", "a page to print, with a card for each device")
        );
        var @out = PageOptions.Out();
        var names = new NamesOption(NameStyle.Panel);
        var setup = new EngineOptions();
        var command = new ToolCommand(
            "impact",
            "Tell what the loss of each device, link, cable, loom or supply silences, and how to bring it back. Nothing is written to the show.",
            "routing-rules impact saturday.show.json\nWhat hurts most, and a card for each device with what to pull, plug and load.",
            "routing-rules impact saturday.show.json --only device --format html --out fallback.html\nCards to print."
        )
        {
            file,
            only,
            pairs,
            moves,
            sets,
            noRecovery,
            format,
            @out,
            names,
            setup,
        };
        command.SetAction(parsed =>
        {
            var path = parsed.GetRequiredValue(file);
            var (engine, _) = setup.Create(parsed, [path], console, cancellation);
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
                Assignment = AssignmentSetup.Configured(engine),
            };
            var answer = engine.Impact(show, options, cancellation);
            PageOptions.Write(output => Write(parsed.GetValue(format)!, answer, show, () => names.Of(parsed, engine.Resolve(show)), output), target, console);
            return answer.NotArriving.IsEmpty ? ExitCode.Clean : ExitCode.Findings;
        });
        return command;
    }

    private static void Write(string format, ImpactAnswer answer, Show show, Func<PanelNames> names, Stream output)
    {
        if (format == "json")
        {
            ImpactJson.Write(answer, output);
            return;
        }

        output.Write(
            Texts.Utf8.GetBytes(
                PageOptions.Pages(format) switch
                {
                    PageFormat.Markdown => ImpactReport.Markdown(answer, show, names()),
                    PageFormat.Html => ImpactReport.Html(answer, show, names()),
                    _ => ImpactReport.Text(answer, show, names()),
                }
            )
        );
    }
}
