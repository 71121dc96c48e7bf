using RoutingRules.Model;
using RoutingRules.Planning.Losses;
using RoutingRules.Profiles;
using RoutingRules.Resolving;
using RoutingRules.Tests.Promises;
using RoutingRules.Tracing;

namespace RoutingRules.Tests.Planning.Losses;

/// <summary>What a loss silences, found the long way: the thing is deleted from the document, the rest is resolved anew and every point is traced.</summary>
internal static class RemovalOracle
{
    /// <summary>The show without some things. Ends of routes, streams and cables that lay on them name nothing any more.</summary>
    public static Show Without(Show show, IEnumerable<LostThing> things)
    {
        var lost = things.ToList();
        var dark = lost.Where(thing => thing.Kind == LossKind.Power).Select(thing => thing.Id).ToHashSet();
        bool IsLost(LossKind kind, string id) => lost.Exists(thing => thing.Kind == kind && thing.Id == id);
        return show with
        {
            Rig = show.Rig with
            {
                Devices = show
                    .Rig.Devices.Where(device =>
                        !IsLost(LossKind.Device, device.Id.Value) && (device.Power.IsEmpty || !device.Power.All(power => dark.Contains(power.Value)))
                    )
                    .ToValueList(),
                Links = show.Rig.Links.Where(link => !IsLost(LossKind.Link, link.Id.Value)).ToValueList(),
                Cables = show
                    .Rig.Cables.Where(cable =>
                        !IsLost(LossKind.Cable, $"{cable.From} to {cable.To}")
                        && !(cable.Way is { } way && IsLost(LossKind.Way, $"{LossUnitList.LoomOf(way)} at {cable.From.Device}"))
                    )
                    .ToValueList(),
            },
        };
    }

    /// <summary>The outputs, or the internal sinks, that carry a source in one show and not the same one in another.</summary>
    public static IEnumerable<Point> Silenced(ResolvedShow before, ResolvedShow after, PortKind kind)
    {
        for (var point = 0; point < before.Graph.PointCount; point++)
        {
            var at = new PointIndex(point);
            if (
                before.Graph.GroupOf(at).Kind == kind
                && Source(before, before, before.Graph.Address(at)) is { } source
                && Source(before, after, before.Graph.Address(at)) != source
            )
            {
                yield return before.Graph.Address(at);
            }
        }
    }

    /// <summary>The real source that signal reaches a point from, over networks that have a way; null when there is none.</summary>
    public static Point? Source(ResolvedShow before, ResolvedShow after, Point at)
    {
        var point = after.Graph.Find(at);
        if (point.IsNone)
        {
            return null;
        }

        var trace = RoutingEngine.Trace(after, point);
        return
            trace.Start is TraceStart.Source or TraceStart.OpenInput or TraceStart.Selector
            && trace.Upstream.All(hop => hop.Kind != HopKind.Stream || (hop.IsReachable && HasWay(before, after, hop)))
            ? trace.StartAt.At
            : null;
    }

    // A network that lost its last link must not count as one whose links nobody wrote down.
    private static bool HasWay(ResolvedShow before, ResolvedShow after, TraceHop hop)
    {
        var network = before.Network.IndexOf(after.Streams[hop.Index!.Value].Model.Network);
        return !before.Network.HasLinks(network) || after.Network.HasLinks(network);
    }

    public static ResolvedShow Resolve(Show show) => Promise.Resolve(show);
}
