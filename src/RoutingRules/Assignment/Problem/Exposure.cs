using RoutingRules.Checking.Facts;
using RoutingRules.Profiles;
using RoutingRules.Resolving;

namespace RoutingRules.Assignment.Problem;

/// <summary>What must not be heard by an audience, and the places from which it would be: those that lead to loudspeakers without any patch.</summary>
/// <remarks>
/// A source is private when every feed that has it is talkback, click or comms. A point leads to a loudspeaker when cables, digital multicores and the
/// routing that devices have by themselves (fixed, factory, processing) bring what it carries there, whatever the patch says today: a device that is
/// reset plays it. At a device at which such a feed is pinned, the user has said so, and nothing is kept away.
/// </remarks>
internal sealed class Exposure
{
    private readonly bool[]? leads;
    private readonly bool[]? isHidden;
    private readonly bool[]? isPrivate;
    private readonly bool[] isTrusted;

    /// <summary>Looks at a rig; where no feed is private nothing is.</summary>
    public Exposure(ResolvedShow show)
    {
        isTrusted = new bool[show.Devices.Count];
        foreach (var demand in show.Demands)
        {
            if (IsPrivate(demand) && demand is { IsPinned: true, Allowed.Count: > 0 })
            {
                isTrusted[show.Graph.DeviceOf(demand.Allowed[0]).Index] = true;
            }
        }

        if (show.Feeds.Any(feed => FeedRoles.IsPrivate(feed.Model.Role)))
        {
            leads = Leading(show);
            isHidden = Hidden(show);
            isPrivate = (bool[])isHidden.Clone();
        }
    }

    /// <summary>True when there is anything to keep away from anywhere.</summary>
    public bool IsAny => leads is not null;

    /// <summary>True for a demand of a feed that is talkback, click or comms.</summary>
    public static bool IsPrivate(DemandNode demand) => demand.Feed is { } feed && FeedRoles.IsPrivate(feed.Model.Role);

    /// <summary>True for a point from which a signal gets to a loudspeaker by itself.</summary>
    public bool Leads(int point) => leads is not null && leads[point];

    /// <summary>True for a receive slot at which nothing private may arrive.</summary>
    public bool IsExposed(SignalGraph graph, int slot) => Leads(slot) && !isTrusted[graph.DeviceOf(new PointIndex(slot)).Index];

    /// <summary>True for a source that nobody but crew and band may hear.</summary>
    public bool IsPrivate(int source) => isPrivate is not null && source >= 0 && isPrivate[source];

    /// <summary>Learns which points private signals start from: the buses, or what a demand is kept on the way from.</summary>
    public void Learn(IReadOnlyList<Demand> demands)
    {
        foreach (var demand in isPrivate is null ? [] : demands.Where(demand => IsPrivate(demand.Node)))
        {
            foreach (var delivery in demand.Candidates.SelectMany(candidate => candidate.Deliveries))
            {
                for (var position = 0; position < delivery.Width; position++)
                {
                    isPrivate![delivery.Source + position] |= isHidden![demand.Node.Feed!.Source.Value + position];
                }
            }
        }
    }

    /// <summary>The buses that feeds have, all of them for nobody but crew and band.</summary>
    private static bool[] Hidden(ResolvedShow show)
    {
        var hidden = new bool[show.Graph.PointCount];
        foreach (var isHeard in (bool[])[false, true])
        {
            foreach (var feed in show.Feeds)
            {
                if (!feed.Source.IsNone && FeedRoles.IsPrivate(feed.Model.Role) != isHeard)
                {
                    hidden.AsSpan(feed.Source.Value, feed.Width).Fill(!isHeard);
                }
            }
        }

        return hidden;
    }

    /// <summary>From each place where loudspeakers play up to what brings signal there by itself; a way that was gone up already ends there.</summary>
    private static bool[] Leading(ResolvedShow show)
    {
        var leads = new bool[show.Graph.PointCount];
        foreach (var device in show.Devices)
        {
            foreach (var group in device.Groups)
            {
                for (var i = 0; Plays(device, group) && i < group.Count; i++)
                {
                    for (var point = device.First(group) + i; !point.IsNone && !leads[point.Value]; point = Before(show.Graph, point))
                    {
                        leads[point.Value] = true;
                    }
                }
            }
        }

        return leads;
    }

    private static bool Plays(DeviceNode device, GroupNode group) =>
        (group.Kind == PortKind.Output && group.Model.Level == SignalLevel.Speaker)
        || (group.Kind == PortKind.Input && (device.Profile.Kind == DeviceKind.Amplifier || device.Profile.Kind == DeviceKind.Loudspeaker))
        || (group.Kind == PortKind.Receive && device.Profile.Kind == DeviceKind.Loudspeaker);

    private static PointIndex Before(SignalGraph graph, PointIndex point) =>
        graph.Via(point) is HopKind.Cable or HopKind.Carrier ? graph.Upstream(point) : graph.FactorySource(point);
}
