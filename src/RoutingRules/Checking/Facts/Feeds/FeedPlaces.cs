using RoutingRules.Model;
using RoutingRules.Profiles;
using RoutingRules.Resolving;
using RoutingRules.Rules;

namespace RoutingRules.Checking.Facts.Feeds;

/// <summary>Questions about where a feed may go and where its source goes.</summary>
internal static class FeedPlaces
{
    /// <summary>True when the feed's source stands for signal that can be followed.</summary>
    public static bool IsFollowable(RuleContext context, FeedNode feed) =>
        feed.SourceState == ConnectionState.Connected
        && feed.Width <= 2
        && context.GroupOf(feed.Source).Kind is PortKind.Source or PortKind.Input or PortKind.Receive;

    /// <summary>True when every device and zone an entry names is there and every device it names has a known profile.</summary>
    public static bool Resolves(RuleContext context, Destination to)
    {
        foreach (var id in to.Devices)
        {
            if (context.Device(id) is not { } device || !HasProfile(device))
            {
                return false;
            }
        }

        foreach (var id in to.Zones)
        {
            var isKnown = false;
            foreach (var zone in context.Rig.Zones)
            {
                isKnown |= zone.Id == id;
            }

            if (!isKnown)
            {
                return false;
            }
        }

        return true;
    }

    /// <summary>True when a device in a zone of the entry has no known profile, so that its outputs cannot be known.</summary>
    public static bool HasUnknownDevice(RuleContext context, Destination to)
    {
        foreach (var device in context.Devices)
        {
            if (!HasProfile(device) && device.Model.Zone is { } zone && Contains(to.Zones, zone))
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>True when a device stands in a zone of the entry.</summary>
    public static bool HasDevice(RuleContext context, ValueList<Id<Zone>> zones)
    {
        foreach (var device in context.Devices)
        {
            if (device.Model.Zone is { } zone && Contains(zones, zone))
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>True when the demand may use the point.</summary>
    public static bool Allows(DemandNode demand, PointIndex point) =>
        Holds(demand.Allowed, point)
        || Holds(demand.EvenRuns, point)
        || (demand.Width == 2 && point.Value > 0 && (Holds(demand.Allowed, point + -1) || Holds(demand.EvenRuns, point + -1)));

    /// <summary>True when the demand may use a run that starts at the point.</summary>
    public static bool AllowsRun(DemandNode demand, PointIndex first) => Holds(demand.Allowed, first) || Holds(demand.EvenRuns, first);

    /// <summary>All points that carry what a source carries, without the source itself, in ascending order.</summary>
    public static List<PointIndex> Reached(RuleContext context, PointIndex source)
    {
        var reached = new List<PointIndex>();
        foreach (var point in context.Downward(source))
        {
            if (point != source)
            {
                reached.Add(point);
            }
        }

        reached.Sort();
        return reached;
    }

    /// <summary>The place an entry asks for, in words.</summary>
    public static string Describe(Destination to)
    {
        if (to.At is { } at)
        {
            return at.ToString();
        }

        var names = new List<string>();
        foreach (var device in to.Devices)
        {
            names.Add(device.Value);
        }

        foreach (var zone in to.Zones)
        {
            names.Add($"zone {zone}");
        }

        return Wording.List(names, "or");
    }

    private static bool HasProfile(DeviceNode device) => device.ProfileState == ProfileState.Found;

    private static bool Contains(ValueList<Id<Zone>> zones, Id<Zone> wanted)
    {
        foreach (var zone in zones)
        {
            if (zone == wanted)
            {
                return true;
            }
        }

        return false;
    }

    private static bool Holds(ValueList<PointIndex> sorted, PointIndex point)
    {
        var low = 0;
        var high = sorted.Count - 1;
        while (low <= high)
        {
            var middle = (low + high) / 2;
            var order = sorted[middle].CompareTo(point);
            if (order == 0)
            {
                return true;
            }

            (low, high) = order < 0 ? (middle + 1, high) : (low, middle - 1);
        }

        return false;
    }
}
