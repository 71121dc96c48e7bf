using System.CommandLine;
using RoutingRules.Cli.Input;
using RoutingRules.Cli.Output;
using RoutingRules.Documents;
using RoutingRules.Engine.Configuration;
using RoutingRules.Planning.NewShows;

namespace RoutingRules.Cli.Commands;

/// <summary><c>new</c>: writes a show to start from.</summary>
internal static class NewCommand
{
    public static Command Create(CliConsole console, CancellationToken cancellation)
    {
        var usual = new StarterOptions
        {
            Console = StarterWords.Consoles[0],
            Amplifier = StarterWords.Amplifier,
            EarRack = StarterWords.EarRack,
            Switch = StarterWords.Switch,
        };
        var title = new Option<string>("--title")
        {
            HelpName = "TEXT",
            Description = "What the show is called.",
            DefaultValueFactory = _ => usual.Title,
        };
        var desk = StarterWords.Console("--console", "The console: small (usually), medium, large, or the id of a profile.");
        var monitorDesk = StarterWords.Console(
            "--monitor-console",
            "A second console for monitors and in-ears, which every line reaches as well: small, medium, large, or the id of a profile."
        );
        var box = StarterWords.Box();
        var boxes = ToolOptions.Number(
            "--boxes",
            1,
            StarterOptions.MostBoxes,
            "How many stage boxes, usually as many as --box names; more are like the last one."
        );
        var mains = ToolOptions.Number(
            "--mains",
            0,
            StarterOptions.MostMains,
            "Main mixes, each to an amplifier: 1 for mono, 2 for left and right (usually), 3 with a centre."
        );
        var subs = Count("--subs", "Mixes of subwoofers, each to an amplifier.");
        var monitors = Count("--monitors", "Monitor mixes, each to an output on stage; usually 2.");
        var inEars = Count("--in-ears", "Stereo in-ear mixes, each to a pack of a rack.");
        var vocals = Count("--vocals", "Microphones for voices; usually 1.");
        var microphones = Count("--microphones", "Microphones for instruments, without phantom power.");
        var direct = Count("--direct-boxes", "Direct boxes or microphones that want phantom power; usually 1.");
        var stereo = Count("--stereo-lines", "Stereo lines, which must not get phantom power; usually 1.");
        var redundant = new Option<bool>("--redundant") { Description = "Close the network to a ring, so that a link may fail." };
        var noPatch = new Option<bool>("--no-patch") { Description = "Leave routes and streams out; 'assign' makes them." };
        var profiles = ToolOptions.Profiles();
        var @out = new Option<string?>("--out")
        {
            HelpName = "FILE",
            Description = "Write to a file that is not there yet; without it the show goes to standard output.",
        };
        var command = new ToolCommand(
            "new",
            "Write a show to start from: so many mixes and lines on such consoles and stage boxes, with amplifiers and ear racks, placed, patched and clean. "
                + "What does not fit is said, with what makes room, and nothing is written.",
            "routing-rules new --title \"Harbour fete\" --out harbour.show.json\nTwo mains, two monitors and three lines on a small console and a "
                + "small stage box.",
            "routing-rules new --title \"Quay festival\" --console medium --monitor-console medium --box large@stage-right --box medium@stage-left "
                + "--monitors 4 --in-ears 4 --vocals 6 --microphones 10 --direct-boxes 4 --stereo-lines 2 --subs 1 --out quay.show.json\nA first real "
                + "show. Then change names, devices, feeds and lines to your own, and check or assign it."
        )
        {
            title,
            desk,
            monitorDesk,
            box,
            boxes,
            mains,
            subs,
            monitors,
            inEars,
            vocals,
            microphones,
            direct,
            stereo,
            redundant,
            noPatch,
            profiles,
            @out,
        };
        command.SetAction(parsed =>
        {
            var engine = EngineSetup.Create(parsed.GetRequiredValue(profiles), LoadedConfig.Usual, console);
            var options = usual with
            {
                Title = parsed.GetRequiredValue(title),
                Console = parsed.GetValue(desk) ?? usual.Console,
                MonitorConsole = parsed.GetValue(monitorDesk),
                Boxes = StarterWords.Boxes(parsed.GetRequiredValue(box), parsed.GetValue(boxes)),
                Mains = Of(parsed, mains, usual.Mains),
                Subs = Of(parsed, subs, usual.Subs),
                Monitors = Of(parsed, monitors, usual.Monitors),
                InEars = Of(parsed, inEars, usual.InEars),
                Vocals = Of(parsed, vocals, usual.Vocals),
                Microphones = Of(parsed, microphones, usual.Microphones),
                PhantomLines = Of(parsed, direct, usual.PhantomLines),
                StereoLines = Of(parsed, stereo, usual.StereoLines),
                IsRedundant = parsed.GetValue(redundant),
                IsPatched = !parsed.GetValue(noPatch),
                OtherConsoles = StarterWords.Consoles,
                OtherBoxes = StarterWords.StageBoxes,
            };
            return Write(Start(engine, options, cancellation), parsed.GetValue(@out), console);
        });
        return command;
    }

    private static Option<long?> Count(string name, string description) => ToolOptions.Number(name, 0, StarterOptions.Most, description);

    private static int Of(ParseResult parsed, Option<long?> option, int usual) => (int)(parsed.GetValue(option) ?? usual);

    private static StarterResult Start(RoutingEngine engine, StarterOptions options, CancellationToken cancellation)
    {
        try
        {
            var result = ShowStarter.Start(engine, options, cancellation);
            return result.Shortage is { } shortage ? throw new UsageException(StarterWords.Explain(shortage, options)) : result;
        }
        catch (ArgumentOutOfRangeException fault) when (fault.ActualValue is int length && (options.Title.Length is 0 or > StarterOptions.LongestTitle))
        {
            throw new UsageException(FormattableString.Invariant($"--title takes 1 to {StarterOptions.LongestTitle} characters, not {length}."));
        }
        catch (ArgumentException fault) when (fault.GetType() == typeof(ArgumentException))
        {
            throw new UsageException(fault.Message);
        }
    }

    private static int Write(StarterResult result, string? path, CliConsole console)
    {
        var show = ShowWriter.ToUtf8(result.Show!);
        if (path is null)
        {
            console.Output.Write(show);
        }
        else
        {
            using var target = OutputFile.Begin(path, [], mayReplace: false);
            target.Content.Write(show);
            target.Commit();
        }

        foreach (var finding in result.Check!.Findings)
        {
            CliRunner.Say(console, $"{finding.Rule} {finding.Name}: {finding.Message}");
        }

        return ExitCode.Clean;
    }
}
