using System.CommandLine;
using RoutingRules.Cli.Input;
using RoutingRules.Cli.Output;
using RoutingRules.Configuration;
using RoutingRules.Model;
using RoutingRules.Reporting.Sheets;
using RoutingRules.Resolving;

namespace RoutingRules.Cli.Commands;

/// <summary><c>sheet</c>: prints what the crew patches and checks from.</summary>
internal static class SheetCommand
{
    public static Command Create(CliConsole console, CancellationToken cancellation)
    {
        var file = new Argument<string>("FILE") { Description = "The show, or - for standard input." }.NamesNoOption();
        var device = new Option<string[]>("--device")
        {
            HelpName = "ID",
            Description = "Only this device of the rig; may be given several times.",
            DefaultValueFactory = _ => [],
        };
        var format = Word("--format", "text|markdown|html", ["text", "markdown", "html"], "How it is written: text (usual), markdown, or html for a browser to print.");
        var view = Word("--view", "house|stage", ["house", "stage"], "Whose left and right: the audience's (house, usual) or the performers' (stage).");
        var @out = new Option<string?>("--out") { HelpName = "FILE", Description = "Write to a file; without it the sheet goes to standard output." };
        var profiles = ToolOptions.Profiles();
        var command = new ToolCommand(
            "sheet",
            "Print the sheets of a show: one section for each device, the line-check list, the output check, and what is not patched yet.",
            "routing-rules sheet saturday.show.json --format html --out saturday.html\nA page to open in a browser and print.",
            "routing-rules sheet saturday.show.json --device box-r\nWhat goes where on one box.")
        {
            file, device, format, view, @out, profiles,
        };
        command.SetAction(parsed =>
        {
            var path = parsed.GetRequiredValue(file);
            var engine = EngineSetup.Create(parsed.GetRequiredValue(profiles), LoadedConfig.Usual, console);
            using var target = parsed.GetValue(@out) is { } outPath ? OutputFile.Begin(outPath, [path]) : null;
            if (ShowInput.Read(path, console, engine, cancellation) is not { } show)
            {
                return ExitCode.Usage;
            }

            var resolved = engine.Resolve(show);
            var options = new SheetOptions
            {
                Devices = Devices(parsed.GetRequiredValue(device), resolved),
                View = parsed.GetValue(view) == "stage" ? SheetView.Stage : SheetView.House,
            };
            var sheet = SheetBuilder.Build(resolved, options);
            var text = parsed.GetValue(format) switch
            {
                "markdown" => MarkdownSheetWriter.Write(sheet),
                "html" => HtmlSheetWriter.Write(sheet),
                _ => TextSheetWriter.Write(sheet),
            };
            (target?.Content ?? console.Output).Write(Texts.Utf8.GetBytes(text));
            target?.Commit();
            return ExitCode.Clean;
        });
        return command;
    }

    private static ValueList<Id<Device>> Devices(string[] names, ResolvedShow show)
    {
        foreach (var name in names)
        {
            if (!show.Devices.Any(device => device.Id.Value == name))
            {
                throw new UsageException($"the rig has no device '{name}'; it has {NameList.Of(show.Devices.Select(device => device.Id.Value))}.");
            }
        }

        return names.Select(name => new Id<Device>(name)).ToValueList();
    }

    private static Option<string?> Word(string name, string helpName, string[] words, string description) => new(name)
    {
        HelpName = helpName,
        Description = description,
        CustomParser = result =>
        {
            var word = result.Tokens[0].Value;
            if (!words.Contains(word, StringComparer.Ordinal))
            {
                result.AddError($"{name} takes {string.Join(" or ", words)}, not '{word}'.");
            }

            return word;
        },
    };
}
