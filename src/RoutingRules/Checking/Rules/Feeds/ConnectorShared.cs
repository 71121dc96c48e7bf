using RoutingRules.Checking.Facts;
using RoutingRules.Model;
using RoutingRules.Profiles;
using RoutingRules.Resolving;
using RoutingRules.Rules;

namespace RoutingRules.Checking.Rules.Feeds;

/// <summary>Reports digital connectors of several channels that carry feeds of unlike tasks.</summary>
/// <remarks>
/// Loudspeakers for the audience are alike, and so are recordings and broadcasts, and talkback, click and comms. Analogue connectors of several channels, such
/// as a loom, fan out and are not judged, nor are jacks of a digital multicore. One finding for each connector; entities are its points and the feeds.
/// </remarks>
public sealed class ConnectorShared : Rule<DeviceNode>
{
    /// <inheritdoc/>
    public override RuleDescriptor Descriptor { get; } =
        new()
        {
            Id = "RR3019",
            Name = "connector-shared",
            Title = "One digital connector for unlike tasks",
            Family = RuleFamily.Feeds,
            Severity = Severity.Warning,
            Checks = "The channels of one digital output connector carry feeds of one kind: loudspeakers, ears, monitors, recordings, or the crew.",
            Why = "Whoever pulls the plug for the recorder silences the wedge, and a device at its end can pass the one for the other.",
            Remedy = "Put one of the two feeds on another connector.",
            Source = "common practice, no source; two channels on one connector: AES3 (from memory)",
            Fixability = Fixability.None,
        };

    /// <inheritdoc/>
    public override void Check(RuleContext context, DeviceNode subject)
    {
        context.LookedAt(0);
        foreach (var group in subject.Groups)
        {
            var together = group.Model.ChannelsPerConnector;
            for (var first = 0; IsDigital(group) && first < group.Count; first += together)
            {
                CheckConnector(context, subject.First(group) + first, Math.Min(together, group.Count - first), subject.Index);
            }
        }
    }

    private static void CheckConnector(RuleContext context, PointIndex first, int width, int device)
    {
        var feeds = new List<FeedNode>();
        for (var position = 0; position < width; position++)
        {
            if (context.DemandAt(first + position)?.Feed is { } feed && !feeds.Contains(feed))
            {
                feeds.Add(feed);
            }
        }

        context.LookedAt(feeds.Count > 1 ? 1 : 0);
        if (feeds.Count > 1 && feeds.Exists(feed => Task(feed) != Task(feeds[0])))
        {
            var at = context.Address(first, width);
            feeds.Sort(static (x, y) => x.Model.Id.CompareTo(y.Model.Id));
            context.Report(
                $"{at} is one connector and carries {Wording.List(feeds.ConvertAll(feed => $"'{feed.DisplayName}' ({feed.Model.Role})"))}.",
                $"/rig/devices/{device}",
                [Entity.Of("connector", at), .. feeds.ConvertAll(feed => Entity.Of("feed", feed.Model.Id))]
            );
        }
    }

    private static bool IsDigital(GroupNode group) =>
        group is { Kind: PortKind.Output, Model: { ChannelsPerConnector: > 1, Level: { } level } }
        && level != SignalLevel.Mic
        && level != SignalLevel.Line
        && level != SignalLevel.Speaker
        && level != SignalLevel.Headphone;

    private static string Task(FeedNode feed)
    {
        var role = feed.Model.Role;
        return FeedRoles.IsLoudspeaker(role) ? FeedRole.Main.Value
            : FeedRoles.IsPrivate(role) ? FeedRole.Talkback.Value
            : role == FeedRole.Broadcast ? FeedRole.Record.Value
            : role.Value;
    }
}
