using System.Globalization;
using RoutingRules.Model;
using RoutingRules.Profiles;
using RoutingRules.Resolving;
using RoutingRules.Rules;

namespace RoutingRules.Checking.Rules.Feeds;

/// <summary>Reports left and right loudspeaker feeds that sit on a device at the opposite side of the house.</summary>
/// <remarks>One finding for each set, or for each feed without a set; entities are the set, then each feed with its device.</remarks>
public sealed class SideMismatch : Rule<ResolvedShow>
{
    /// <inheritdoc/>
    public override RuleDescriptor Descriptor { get; } =
        new()
        {
            Id = "RR3008",
            Name = "side-mismatch",
            Title = "Left or right feed on the wrong side",
            Family = RuleFamily.Feeds,
            Severity = Severity.Warning,
            Checks =
                "A left loudspeaker feed sounds at house left and a right one at house right: at the amplifiers and powered loudspeakers it gets "
                + "to, else at its output. Only where another place for it stands on that side.",
            Why = "Left and right of the stage and of the house are opposite, and the mix-up turns the picture round for the whole room.",
            Remedy = "Exchange the two sides, or correct the side of the zone: house left is stage right.",
            Source = "stage left is house right: public theatre usage; the left bus feeds house left: common practice, no source",
            Fixability = Fixability.Manual,
        };

    /// <inheritdoc/>
    public override void Check(RuleContext context, ResolvedShow subject)
    {
        var found = new List<(DemandNode Demand, PointRange At, DeviceNode Device)>();
        foreach (var feed in context.Feeds)
        {
            var wanted = WantedSide(feed.Model);
            for (var entry = 0; wanted != ZoneSide.None && entry < feed.Model.To.Count; entry++)
            {
                context.LookedAt();
                var demand = context.Demand(feed, entry);
                if (!demand.Existing.IsNone && Sounds(context, demand, wanted) is var (at, device) && device.Zone?.Side == Opposite(wanted))
                {
                    found.Add((demand, at, device));
                }
            }
        }

        if (found.Count > 0)
        {
            ReportBySet(context, found);
        }
    }

    private static void ReportBySet(RuleContext context, List<(DemandNode Demand, PointRange At, DeviceNode Device)> found)
    {
        var hasSide = new[] { HasPlace(context, ZoneSide.HouseLeft), HasPlace(context, ZoneSide.HouseRight) };
        found.RemoveAll(place => !hasSide[WantedSide(place.Demand.Feed!.Model) == ZoneSide.HouseLeft ? 0 : 1]);
        var groups = found.GroupBy(
            place => place.Demand.Feed!.Model.Set is { } set ? $"set {set}" : string.Create(CultureInfo.InvariantCulture, $"feed {place.Demand.Feed.Index}"),
            StringComparer.Ordinal
        );
        foreach (var group in groups)
        {
            var places = group
                .Select(place =>
                    $"'{place.Demand.Feed!.DisplayName}' ({place.Demand.Feed.Model.Part}) at {place.At}, "
                    + $"{(place.Device.Zone!.Side == ZoneSide.HouseLeft ? "house left (stage right)" : "house right (stage left)")}"
                )
                .ToList();
            var first = group.First().Demand;
            var entities = new List<Entity>();
            if (first.Feed!.Model.Set is { } name)
            {
                entities.Add(Entity.Of("set", name));
            }

            var distinct = group.DistinctBy(place => (place.Demand.Feed, place.Device));
            foreach (var place in distinct.OrderBy(place => place.Demand.Feed!.Model.Id).ThenBy(place => place.Device.Id))
            {
                entities.Add(Entity.Of("feed", place.Demand.Feed!.Model.Id));
                entities.Add(Entity.Of("device", place.Device.Id));
            }

            context.Report($"On the wrong side of the house: {string.Join("; ", places)}.", $"/feeds/{first.Feed.Index}/to/{first.Entry}", [.. entities]);
        }
    }

    /// <summary>The side of the house that a feed belongs to; none for other parts, for pairs and for what the house does not hear.</summary>
    private static ZoneSide WantedSide(Feed feed) =>
        feed.Source.Width != 1 || !(feed.Role == FeedRole.Main || feed.Role == FeedRole.Sub || feed.Role == FeedRole.Fill || feed.Role == FeedRole.Delay)
            ? ZoneSide.None
            : feed.Part switch
            {
                "left" => ZoneSide.HouseLeft,
                "right" => ZoneSide.HouseRight,
                _ => ZoneSide.None,
            };

    private static ZoneSide Opposite(ZoneSide side) => side == ZoneSide.HouseLeft ? ZoneSide.HouseRight : ZoneSide.HouseLeft;

    /// <summary>
    /// Where a feed is heard: at the amplifiers and powered loudspeakers behind its place that stand on a side of the house, one on the right side first.
    /// Without any, at the pinned device, which may be cabled to the output that serves it, else at that output.
    /// </summary>
    private static (PointRange At, DeviceNode Device) Sounds(RuleContext context, DemandNode demand, ZoneSide wanted)
    {
        (PointRange At, DeviceNode Device)? opposite = null;
        foreach (var end in context.Loudspeakers.Behind(demand.Existing))
        {
            var device = context.DeviceOf(end);
            if (device.Zone?.Side == wanted)
            {
                return (context.Address(end, 1), device);
            }

            if (device.Zone?.Side == Opposite(wanted))
            {
                opposite ??= (context.Address(end, 1), device);
            }
        }

        return opposite
            ?? (
                context.Address(demand.Existing, demand.Width),
                demand.Feed!.Model.To[demand.Entry].At is { } at && context.Device(at.Device) is { } pinned ? pinned : context.DeviceOf(demand.Existing)
            );
    }

    /// <summary>True when a device on a side has a line output, or loudspeakers that the network or a cable reaches.</summary>
    private static bool HasPlace(RuleContext context, ZoneSide side)
    {
        foreach (var device in context.Devices)
        {
            foreach (var group in device.Zone?.Side == side ? device.Groups : [])
            {
                if (group.Count > 0 && (group.IsLineOutput || (EndKinds.IsLoudspeaker(device, group) && IsReached(context, device, group))))
                {
                    return true;
                }
            }
        }

        return false;
    }

    private static bool IsReached(RuleContext context, DeviceNode device, GroupNode group)
    {
        foreach (var entry in device.Profile.Routing)
        {
            if (entry.To == group.Id && device.Group(entry.From)?.Kind == PortKind.Receive)
            {
                return true;
            }
        }

        for (var i = 0; i < group.Count; i++)
        {
            var point = device.First(group) + i;
            while (!point.IsNone && !context.IsLooping(point) && context.DeviceOf(point) == device)
            {
                if (context.Via(point) == HopKind.Cable)
                {
                    return true;
                }

                point = context.Upstream(point);
            }
        }

        return group.Kind == PortKind.Receive;
    }
}
