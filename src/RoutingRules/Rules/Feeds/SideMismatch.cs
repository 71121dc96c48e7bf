using System.Globalization;
using RoutingRules.Model;
using RoutingRules.Resolving;

namespace RoutingRules.Rules;

/// <summary>Reports left and right loudspeaker feeds that sit on a device at the opposite side of the house.</summary>
/// <remarks>One finding for each set, or for each feed without a set; entities are the set, then each feed with its device.</remarks>
public sealed class SideMismatch : Rule<ResolvedShow>
{
    /// <inheritdoc/>
    public override RuleDescriptor Descriptor { get; } = new()
    {
        Id = "RR3008",
        Name = "side-mismatch",
        Title = "Left or right feed on the wrong side",
        Family = RuleFamily.Feeds,
        Severity = Severity.Warning,
        Checks = "A left loudspeaker feed sits at house left and a right one at house right, where a device with a line output stands on that side.",
        Why = "Left and right of the stage and of the house are opposite, and the mix-up turns the picture round for the whole room.",
        Remedy = "Exchange the two sides, or correct the side of the zone: house left is stage right.",
        Source = "stage left is house right: public theatre usage; the left bus feeds house left: common practice, no source",
        Fixability = Fixability.Manual,
        Reads = ModelSlices.Devices | ModelSlices.Routes | ModelSlices.Feeds,
    };

    /// <inheritdoc/>
    public override void Check(RuleContext context, ResolvedShow subject)
    {
        var found = new List<(DemandNode Demand, DeviceNode Device)>();
        foreach (var feed in context.Feeds)
        {
            var wanted = WantedSide(feed.Model);
            for (var entry = 0; wanted != ZoneSide.None && entry < feed.Model.To.Count; entry++)
            {
                var demand = context.Demand(feed, entry);
                if (!demand.Existing.IsNone && Sits(context, demand) is { Zone.Side: var side } device && side == Opposite(wanted))
                {
                    found.Add((demand, device));
                }
            }
        }

        if (found.Count > 0)
        {
            ReportBySet(context, found);
        }
    }

    private static void ReportBySet(RuleContext context, List<(DemandNode Demand, DeviceNode Device)> found)
    {
        var hasSide = new[] { HasLineOutput(context, ZoneSide.HouseLeft), HasLineOutput(context, ZoneSide.HouseRight) };
        found.RemoveAll(place => !hasSide[WantedSide(place.Demand.Feed!.Model) == ZoneSide.HouseLeft ? 0 : 1]);
        var groups = found.GroupBy(
            place => place.Demand.Feed!.Model.Set is { } set ? $"set {set}" : string.Create(CultureInfo.InvariantCulture, $"feed {place.Demand.Feed.Index}"),
            StringComparer.Ordinal);
        foreach (var group in groups)
        {
            var places = group.Select(place =>
                $"'{place.Demand.Feed!.DisplayName}' ({place.Demand.Feed.Model.Part}) at {context.Address(place.Demand.Existing, place.Demand.Width)}, "
                + $"{(place.Device.Zone!.Side == ZoneSide.HouseLeft ? "house left (stage right)" : "house right (stage left)")}").ToList();
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

    /// <summary>The device a feed sits on: the pinned one, which may be cabled to the output that serves it, else the one with the output.</summary>
    private static DeviceNode Sits(RuleContext context, DemandNode demand) =>
        demand.Feed!.Model.To[demand.Entry].At is { } at && context.Device(at.Device) is { } pinned ? pinned : context.DeviceOf(demand.Existing);

    private static bool HasLineOutput(RuleContext context, ZoneSide side)
    {
        foreach (var device in context.Devices)
        {
            if (device.Zone?.Side != side)
            {
                continue;
            }

            foreach (var group in device.Groups)
            {
                if (group.IsLineOutput && group.Count > 0)
                {
                    return true;
                }
            }
        }

        return false;
    }
}
