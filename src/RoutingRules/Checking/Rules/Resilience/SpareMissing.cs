using RoutingRules.Checking.Facts;
using RoutingRules.Checking.Facts.Hearing;
using RoutingRules.Checking.Facts.Resilience;
using RoutingRules.Model;
using RoutingRules.Profiles;
using RoutingRules.Resolving;
using RoutingRules.Rules;

namespace RoutingRules.Checking.Rules.Resilience;

/// <summary>Reports devices from which mains or in-ear feeds leave and that nothing free could stand in for.</summary>
/// <remarks>
/// One finding for each device; the entity is the device. A spare is a free output of the port group the feed leaves from, to which its cable can be moved, or
/// any other that the feed may use. Dead and reserved outputs, those that the device never feeds, and for a
/// feed that is in nobody's ears those that end there, are no spares. What ends in somebody's ears is in-ear whatever its role says.
/// </remarks>
public sealed class SpareMissing : Rule<ResolvedShow>
{
    /// <inheritdoc/>
    public override RuleDescriptor Descriptor { get; } =
        new()
        {
            Id = "RR8003",
            Name = "spare-missing",
            Title = "No spare output",
            Family = RuleFamily.Resilience,
            Severity = Severity.Note,
            Checks =
                "Mains and in-ear feeds leave from outputs beside which a free one is left that could take over, on the same device or another "
                + "that the feed may use.",
            Why = "When a connector or a driver goes during the show, the quickest mend is the next free output; without one somebody loses a mix.",
            Remedy = "Keep one output free, or two side by side for pairs: move a less important feed elsewhere.",
            Source = "common practice, no source",
            Fixability = Fixability.Manual,
        };

    /// <inheritdoc/>
    public override void Check(RuleContext context, ResolvedShow subject)
    {
        var without = new SortedDictionary<int, List<DemandNode>>();
        var inGroup = new Dictionary<(int Device, int Group, int Width, bool IsInEars), bool>();
        var ears = EarFeeds.Of(context);
        foreach (var feed in context.Feeds)
        {
            if (feed.Model.Role != FeedRole.Main && !ears.IsInEar(feed))
            {
                continue;
            }

            for (var entry = 0; entry < feed.Model.To.Count; entry++)
            {
                var demand = context.Demand(feed, entry);
                if (demand.Existing.IsNone || context.GroupOf(demand.Existing).Kind != PortKind.Output)
                {
                    continue;
                }

                context.LookedAt();
                if (!HasSpare(context, demand, inGroup))
                {
                    Add(without, context.DeviceOf(demand.Existing).Index, demand);
                }
            }
        }

        foreach (var (index, demands) in without)
        {
            var device = context.Devices[index];
            context.Report(
                $"Nothing is free at {device.Id} that could take over from "
                    + $"{Wording.List(demands.ConvertAll(demand => $"'{demand.DisplayName}' at {context.Address(demand.Existing, demand.Width)}"))}.",
                $"/rig/devices/{index}",
                [Entity.Of("device", device.Id), .. demands.ConvertAll(demand => Entity.Of("output", context.Address(demand.Existing, demand.Width)))]
            );
        }
    }

    private static bool HasSpare(RuleContext context, DemandNode demand, Dictionary<(int Device, int Group, int Width, bool IsInEars), bool> inGroup)
    {
        var group = (context.DeviceOf(demand.Existing).Index, context.GroupOf(demand.Existing).Index, demand.Width, FreeRuns.IsInEars(context, demand));
        if (!inGroup.TryGetValue(group, out var isThere))
        {
            inGroup.Add(group, isThere = !FreeRuns.InGroup(context, demand).IsNone);
        }

        if (isThere)
        {
            return true;
        }

        foreach (var run in demand.Allowed)
        {
            if (FreeRuns.IsFree(context, run, demand))
            {
                return true;
            }
        }

        return false;
    }

    private static void Add(SortedDictionary<int, List<DemandNode>> without, int device, DemandNode demand)
    {
        if (!without.TryGetValue(device, out var demands))
        {
            without.Add(device, demands = []);
        }

        demands.Add(demand);
    }
}
