using RoutingRules.Model;
using RoutingRules.Profiles;
using RoutingRules.Reports.Lists;
using RoutingRules.Resolving;

namespace RoutingRules.Reports.Riders;

/// <summary>The devices of the house at which a band is plugged and mixed.</summary>
internal sealed class RiderRig
{
    private readonly ResolvedShow show;

    private RiderRig(ResolvedShow show) => this.show = show;

    public required IReadOnlyList<DeviceNode> Boxes { get; init; }

    public required IReadOnlyList<DeviceNode> Consoles { get; init; }

    public required DeviceNode MixConsole { get; init; }

    /// <summary>Racks that send to packs.</summary>
    public required IReadOnlyList<DeviceNode> Racks { get; init; }

    /// <summary>Settles the devices; null where the options and the rig do not say which.</summary>
    public static RiderRig? Of(ResolvedShow show, RiderOptions options, ListProblems problems)
    {
        var boxes = Choose(show, options.Boxes, DeviceKind.StageBox, "stage box", "--box", problems);
        var consoles = Choose(show, options.Consoles, DeviceKind.Console, "console", "--console", problems);
        var mixing = options.MixConsole is { } id ? Choose(show, [id], DeviceKind.Console, "console", "--mix-console", problems) : consoles;
        return boxes is null || consoles is null || mixing is null
            ? null
            : new RiderRig(show)
            {
                Boxes = boxes,
                Consoles = consoles,
                MixConsole = mixing[^1],
                Racks = [.. show.Devices.Where(device => device.Profile.Kind == DeviceKind.TransmitterRack)],
            };
    }

    /// <summary>The channels of a console: its first group of sinks; null when it has none.</summary>
    public static GroupNode? Channels(DeviceNode console) => console.Groups.FirstOrDefault(group => group.Kind == PortKind.Sink);

    /// <summary>The buses for mixes: the group called aux, else the first group of sources; null when there is none.</summary>
    public GroupNode? Buses =>
        MixConsole.Groups.FirstOrDefault(group => group.Kind == PortKind.Source && group.Id.Value == "aux")
        ?? MixConsole.Groups.FirstOrDefault(group => group.Kind == PortKind.Source);

    /// <summary>Who has a channel of a console, apart from a line of a name; null when nobody has.</summary>
    public string? Holder(DeviceNode console, GroupNode channels, int number, string name) =>
        show
            .Lines.FirstOrDefault(line =>
                line.DisplayName != name
                && line.Model.To.Any(to => to.Device == console.Id && to.Group == channels.Id && to.First <= number && number <= to.Last)
            )
            ?.DisplayName;

    /// <summary>True when a feed, apart from one of a name, starts at a bus.</summary>
    public bool IsBusTaken(GroupNode buses, int number, string name) =>
        show.Feeds.Any(feed =>
            feed.DisplayName != name
            && feed.Model.Source.Device == MixConsole.Id
            && feed.Model.Source.Group == buses.Id
            && feed.Model.Source.First <= number
            && number <= feed.Model.Source.Last
        );

    private static List<DeviceNode>? Choose(ResolvedShow show, ValueList<Id<Device>> named, DeviceKind kind, string what, string option, ListProblems problems)
    {
        if (named.IsEmpty)
        {
            var all = show.Devices.Where(device => device.Profile.Kind == kind).ToList();
            if (all.Count == 1)
            {
                return all;
            }

            problems.Add(
                null,
                null,
                all.Count == 0
                    ? $"the show has no {what}"
                    : $"the show has {all.Count} devices that are a {what}: {string.Join(", ", all.Select(device => device.Id))}",
                all.Count == 0 ? "Add one to the rig." : $"Say with {option} which are meant."
            );
            return null;
        }

        var found = named.Select(id => show.Graph.Device(id)).ToList();
        for (var i = 0; i < found.Count; i++)
        {
            if (found[i] is null)
            {
                problems.Add(null, null, $"the show has no device {named[i]}", $"Name with {option} one that it has.");
            }
        }

        return found.Contains(null) ? null : [.. found.Select(device => device!)];
    }
}
