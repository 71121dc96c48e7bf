using System.CommandLine;
using RoutingRules.Cli.Input;
using RoutingRules.Engine.Configuration;
using RoutingRules.Model;
using RoutingRules.Profiles;
using RoutingRules.Reading;
using RoutingRules.Reports.FindingReports;

namespace RoutingRules.Cli.Commands;

/// <summary><c>profiles</c>: which devices are known.</summary>
internal static class ProfilesCommand
{
    public static Command Create(CliConsole console, CancellationToken cancellation)
    {
        var id = new Argument<string?>("ID")
        {
            Description = "A profile's id, to see its connectors, slots and routing.",
            Arity = ArgumentArity.ZeroOrOne,
        }.NamesNoOption();
        var profiles = ToolOptions.Profiles();
        var command = new ToolCommand(
            "profiles",
            "List the device profiles that shows can name, or show one with its port groups and what can be routed to what.",
            "routing-rules profiles\nLists every profile.",
            "routing-rules profiles generic/stage-box-small\nShows one."
        )
        {
            id,
            profiles,
        };
        command.SetAction(parsed =>
        {
            var library = EngineSetup.Create(parsed.GetRequiredValue(profiles), LoadedConfig.Usual, console).Profiles;
            using var output = Texts.Over(console.Output);
            if (parsed.GetValue(id) is not { } wanted)
            {
                ProfileReport.WriteList(library.Ids.Select(known => Readable(known, library.Find(known)!)), output);
                return ExitCode.Clean;
            }

            var profile =
                wanted.Length == 0 ? null
                : library.Find(new Id<DeviceProfile>(wanted)) is { } read ? Readable(new(wanted), read)
                : null;
            ProfileReport.Write(profile ?? throw new UsageException($"there is no profile '{wanted}'; 'routing-rules profiles' lists them all."), output);
            return ExitCode.Clean;
        });
        return command;
    }

    /// <summary>Profiles of files and of the tool itself were read before; those of plugins may be anything.</summary>
    private static DeviceProfile Readable(Id<DeviceProfile> id, ReadResult<DeviceProfile> read) =>
        read.Value
        ?? throw new UsageException(
            $"a plugin brings the profile '{id}', which cannot be read: {read.Findings[0].Message} Leave the plugin out, or ask who wrote it."
        );
}
