using System.CommandLine;
using RoutingRules.Cli.Input;
using RoutingRules.Engine.Configuration;
using RoutingRules.Model;
using RoutingRules.Reports.FindingReports;
using RoutingRules.Reports.Names;
using RoutingRules.Resolving;

namespace RoutingRules.Cli.Commands;

/// <summary><c>trace</c>: follows one signal.</summary>
internal static class TraceCommand
{
    public static Command Create(CliConsole console, CancellationToken cancellation)
    {
        var file = new Argument<string>("FILE") { Description = "The show, or - for standard input." }.NamesNoOption();
        var point = new Argument<string>("POINT")
        {
            Description = "The point as device/group/number, such as box/out/5, or by name: \"SR box B4\", or a feed or a line for where it starts.",
        }.NamesNoOption();
        var profiles = ToolOptions.Profiles();
        var names = new NamesOption(NameStyle.Both);
        var command = new ToolCommand(
            "trace",
            "Follow the signal at one point: back to where it comes from, or to where it stops and why, and on to everything it feeds.",
            "routing-rules trace saturday.show.json box/out/5\nWhich mix is on output 5 of the box, and over which slots and streams?",
            "routing-rules trace saturday.show.json desk/aux/3\nWhere does aux 3 come out?",
            "routing-rules trace saturday.show.json \"SR box B4\"\nThe same by what is printed on the panel."
        )
        {
            file,
            point,
            names,
            profiles,
        };
        command.SetAction(parsed =>
        {
            var engine = EngineSetup.Create(parsed.GetRequiredValue(profiles), LoadedConfig.Usual, console);
            if (ShowInput.Read(parsed.GetRequiredValue(file), console, engine, cancellation) is not { } show)
            {
                return ExitCode.Usage;
            }

            var resolved = engine.Resolve(show);
            var index = Find(resolved, new CalledByName(resolved).Point(parsed.GetRequiredValue(point)));
            using var output = Texts.Over(console.Output);
            TraceReport.Write(RoutingEngine.Trace(resolved, index), output, names.Of(parsed, resolved));
            return ExitCode.Clean;
        });
        return command;
    }

    private static PointIndex Find(ResolvedShow show, PointRange range)
    {
        if (show.Graph.Find(range, out var first) == ConnectionState.Connected)
        {
            return first;
        }

        if (show.Graph.Device(range.Device) is not { } device)
        {
            throw new UsageException($"the rig has no device '{range.Device}'; it has {NameList.Of(show.Devices.Select(other => other.Id.Value))}.");
        }

        if (device.Groups.Count == 0)
        {
            throw new UsageException(
                $"there is no usable profile '{device.Model.Profile}' for device '{device.Id}', so its points are unknown; "
                    + "correct the profile id, or give its folder with --profiles."
            );
        }

        throw new UsageException(
            device.Group(range.Group) is { } group
                ? FormattableString.Invariant($"'{range}' is beyond the end: {device.Id}/{group.Id} has the numbers 1 to {group.Count}.")
                : $"device '{device.Id}' has no port group '{range.Group}'; it has {NameList.Of(device.Groups.Select(other => other.Id.Value))}."
        );
    }
}
