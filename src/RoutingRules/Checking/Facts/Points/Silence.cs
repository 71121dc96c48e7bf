using RoutingRules.Model;
using RoutingRules.Profiles;
using RoutingRules.Resolving;
using RoutingRules.Rules;

namespace RoutingRules.Checking.Facts.Points;

/// <summary>Where silent chains end, and whether another rule already says why.</summary>
internal sealed class Silence(RuleContext context)
{
    private PointSet? explained;

    /// <summary>The one that all rules of a run share.</summary>
    public static Silence Of(RuleContext context) => context.Shared(static asking => new Silence(asking));

    /// <summary>True when nothing real reaches the point. Loops are no silence: they have their own rule.</summary>
    public bool IsSilent(PointIndex point) => context.Origin(point).IsNone && !context.IsLooping(point);

    /// <summary>The last point upstream of a silent point; the point itself when nothing feeds it.</summary>
    public PointIndex End(PointIndex point)
    {
        var end = point;
        foreach (var passed in context.Upward(point))
        {
            end = passed;
        }

        return end;
    }

    /// <summary>
    /// True when the chain of a silent point meets a sink that a second claim would have fed, a connection that another rule says does not connect,
    /// or a device whose profile is unsound.
    /// </summary>
    public bool IsExplained(PointIndex point)
    {
        explained ??= Collect();
        var end = point;
        foreach (var passed in context.Upward(point))
        {
            if (explained.Contains(passed.Value))
            {
                return true;
            }

            end = passed;
        }

        return !context.ProfileProblems(context.DeviceOf(end)).IsEmpty;
    }

    /// <summary>Why a run of silent points is silent, in a clause.</summary>
    public string Why(PointIndex first, int width)
    {
        var end = End(first);
        var together = 1;
        while (together < width && End(first + together) == end + together && context.GroupOf(end + together) == context.GroupOf(end))
        {
            together++;
        }

        return WhyEnd(end, together == width ? width : 1);
    }

    /// <summary>Why a run of ends of chains is empty, in a clause.</summary>
    public string WhyEnd(PointIndex end, int width)
    {
        var at = context.Address(end, width);
        var group = context.GroupOf(end);
        return context.Via(end) == HopKind.Cleared ? $"a route sets {at} to nothing"
            : group is { Kind: PortKind.Receive, IsCarrier: true } ? $"no link brings signal to {at}"
            : group.Kind == PortKind.Receive ? $"no stream fills {at}"
            : $"nothing is routed to {at}";
    }

    private PointSet Collect()
    {
        var sinks = new PointSet(context.PointCount);
        foreach (var conflict in context.Conflicts)
        {
            if (!conflict.OtherFrom.IsNone && !context.Origin(conflict.OtherFrom).IsNone)
            {
                sinks.Add(conflict.Sink.Value);
            }
        }

        foreach (var idle in context.IdleRoutes)
        {
            if (context.Routes[idle.RouteIndex] is { IsNull: false })
            {
                sinks.Add(idle.Sink.Value);
            }
        }

        foreach (var route in context.Routes)
        {
            AddIfBroken(sinks, route.State, route.Model.To);
        }

        foreach (var stream in context.Streams)
        {
            foreach (var receiver in stream.Receivers)
            {
                AddIfBroken(sinks, stream.State == ConnectionState.Connected ? receiver.State : stream.State, receiver.Model.At);
            }
        }

        foreach (var cable in context.Cables)
        {
            AddIfBroken(sinks, cable.State, cable.Model.To);
        }

        foreach (var link in context.Links)
        {
            if (link.State != ConnectionState.Connected)
            {
                AddCarried(sinks, link.Model.From);
                AddCarried(sinks, link.Model.To);
            }
        }

        return sinks;
    }

    private void AddIfBroken(PointSet sinks, ConnectionState state, PointRange to)
    {
        if (state != ConnectionState.Connected && context.Device(to.Device) is { } device && device.Group(to.Group) is { } group)
        {
            for (var number = to.First; number <= to.Last && number <= group.Count; number++)
            {
                sinks.Add(device.First(group).Value + number - 1);
            }
        }
    }

    private void AddCarried(PointSet sinks, PointRange jack)
    {
        foreach (var group in context.Device(jack.Device)?.Groups ?? [])
        {
            if (group is { Kind: PortKind.Receive, Model.Carrier: { } carrier } && carrier.Group == jack.Group && carrier.First == jack.First)
            {
                for (var slot = 0; slot < group.Count; slot++)
                {
                    sinks.Add(context.Device(jack.Device)!.First(group).Value + slot);
                }
            }
        }
    }
}
