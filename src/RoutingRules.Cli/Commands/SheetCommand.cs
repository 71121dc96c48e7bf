using System.CommandLine;
using RoutingRules.Cli.Input;
using RoutingRules.Cli.Output;
using RoutingRules.Engine.Configuration;
using RoutingRules.Model;
using RoutingRules.Reports.Sheets;
using RoutingRules.Reports.Sheets.Contents;
using RoutingRules.Reports.Sheets.Pages;
using RoutingRules.Resolving;

namespace RoutingRules.Cli.Commands;

/// <summary><c>sheet</c>: prints what the crew patches and checks from.</summary>
internal static class SheetCommand
{
    private const int MaxBlankRows = 40;

    public static Command Create(CliConsole console, CancellationToken cancellation)
    {
        var file = new Argument<string>("FILE") { Description = "The show, or - for standard input." }.NamesNoOption();
        var device = Many("--device", "ID", "Only this device of the rig; may be given several times.");
        var zone = Many("--zone", "ID", "Only the devices of this zone; may be given several times. Devices, zones and sides add up.");
        var side = Words("--side", SheetChoices.Sides, "Only the devices on this side; house-left and stage-right are the same.");
        var part = Words("--part", SheetChoices.Parts, "Only this part; may be given several times. Without it, every part.");
        var format = ToolOptions.Word(
            "--format",
            SheetChoices.Formats,
            "How it is written: text (usual), markdown, html for a browser to print, svg for the drawings alone, csv for one list, xlsx for all "
                + "lists.\nIn csv and xlsx a text that would begin like a formula begins with an apostrophe."
        );
        var list = ToolOptions.Word("--list", SheetChoices.Lists, "Which list --format csv writes; usually inputs.");
        var view = ToolOptions.Word("--view", SheetChoices.Views, "Whose left and right: the audience's (house, usual) or the performers' (stage).");
        var since = new Option<string?>("--since")
        {
            HelpName = "OLD.show.json",
            Description = "Mark what is not as it was in this older revision of the show.",
        };
        var large = new Option<bool>("--large") { Description = "Larger type in html." };
        var drawings = new Option<bool>("--drawings")
        {
            Description = "Draw every signal through each device as well; pages of chosen devices always have it.",
        };
        var blank = ToolOptions.Number("--blank-rows", 0, MaxBlankRows, "How many rows at the end of lists stay blank for late extras; usually 3.");
        var @out = new Option<string?>("--out") { HelpName = "FILE", Description = "Write to a file; without it the sheet goes to standard output." };
        var profiles = ToolOptions.Profiles();
        var command = new ToolCommand(
            "sheet",
            "Print the sheets of a show: signal flow, input and output list, one section for each device, line check, output check, packs, "
                + "network, and what is not patched yet.",
            "routing-rules sheet saturday.show.json --format html --out saturday.html\nA page to open in a browser and print.",
            "routing-rules sheet saturday.show.json --format html --since friday.show.json --out saturday.html\nThe same, with what has changed "
                + "since Friday marked.",
            "routing-rules sheet saturday.show.json --zone stage-left --part devices --part walk\nWhat the stage-left patch needs.",
            "routing-rules sheet saturday.show.json --format csv --list outputs --out outputs.csv\nOne list for another program."
        )
        {
            file,
            device,
            zone,
            side,
            part,
            format,
            list,
            view,
            since,
            large,
            drawings,
            blank,
            @out,
            profiles,
        };
        command.SetAction(parsed =>
        {
            var path = parsed.GetRequiredValue(file);
            var sincePath = parsed.GetValue(since);
            if (parsed.GetValue(list) is not null && parsed.GetValue(format) is not "csv")
            {
                throw new UsageException("--list chooses what --format csv writes; give --format csv as well.");
            }

            if (path == InputDocument.StandardInput && sincePath == InputDocument.StandardInput)
            {
                throw new UsageException("standard input holds one show only; name a file for the other.");
            }

            var engine = EngineSetup.Create(parsed.GetRequiredValue(profiles), LoadedConfig.Usual, console);
            using var target = parsed.GetValue(@out) is { } outPath ? OutputFile.Begin(outPath, sincePath is null ? [path] : [path, sincePath]) : null;
            if (ShowInput.Read(path, console, engine, cancellation) is not { } show)
            {
                return ExitCode.Usage;
            }

            var older = sincePath is null ? null : ShowInput.Read(sincePath, console, engine, cancellation);
            if (sincePath is not null && older is null)
            {
                return ExitCode.Usage;
            }

            var sheet = Build(
                engine.Resolve(show),
                new SheetOptions
                {
                    Devices = parsed.GetRequiredValue(device).Select(name => new Id<Device>(name)).ToValueList(),
                    Zones = parsed.GetRequiredValue(zone).Select(name => new Id<Zone>(name)).ToValueList(),
                    Sides = parsed.GetRequiredValue(side).Select(word => SheetChoices.Sides[word]).ToValueList(),
                    Parts = parsed.GetRequiredValue(part).Select(word => SheetChoices.Parts[word]).ToValueList(),
                    View = parsed.GetValue(view) is { } chosen ? SheetChoices.Views[chosen] : SheetView.House,
                    BlankRows = (int)(parsed.GetValue(blank) ?? new SheetOptions().BlankRows),
                    IsLargeType = parsed.GetValue(large),
                    HasDrawings = parsed.GetValue(drawings),
                    Since = older is null ? null : engine.Resolve(older),
                }
            );
            var output = target?.Content ?? console.Output;
            var kind = parsed.GetValue(list) is { } name ? SheetChoices.Lists[name] : SheetListKind.Inputs;
            SheetChoices.Formats[parsed.GetValue(format) ?? "text"](sheet, kind, output);
            target?.Commit();
            return ExitCode.Clean;
        });
        return command;
    }

    private static Sheet Build(ResolvedShow show, SheetOptions options)
    {
        try
        {
            return SheetBuilder.Build(show, options);
        }
        catch (ArgumentException fault) when (fault.ParamName == "options")
        {
            var message = UsageException.Reason(fault);
            throw new UsageException(char.ToLowerInvariant(message[0]) + message[1..]);
        }
    }

    private static Option<string[]> Many(string name, string helpName, string description) =>
        new(name)
        {
            HelpName = helpName,
            Description = description,
            DefaultValueFactory = _ => [],
        };

    private static Option<string[]> Words<T>(string name, IReadOnlyDictionary<string, T> words, string description) =>
        new(name)
        {
            HelpName = string.Join("|", words.Keys),
            Description = description,
            DefaultValueFactory = _ => [],
            CustomParser = result => ToolOptions.Checked(name, words, result),
        };
}
